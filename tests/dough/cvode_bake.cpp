// SPDX-License-Identifier: Apache-2.0
#include "tests/dough/cvode_bake.hpp"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace loafwright::dough {

namespace {

struct Problem {
    CvodeBake bake;
    double target_c = 0.0;
    double c_wet = 0.0;
    double c_dry = 0.0;
    double begin = 0.0; // of the plateau, J/kg
    double end = 0.0;
    double dx = 0.0;
    std::vector<double> area;     // m^exponent, of the face outside each cell
    std::vector<double> contents; // of each cell
    std::vector<double> temperature;
    std::vector<double> conductivity;

    explicit Problem(const CvodeBake& given, double target)
        : bake(given), target_c(target), area(given.cells), contents(given.cells),
          temperature(given.cells), conductivity(given.cells) {
        c_wet = (1.0 - bake.water) * 1500.0 + bake.water * 4180.0;
        c_dry = (1.0 - bake.water) * 1500.0 + 0.03 * 4180.0;
        begin = c_wet * bake.boiling_c;
        end = begin + (bake.water - 0.03) * 2.257e6;
        dx = bake.half_m / static_cast<double>(bake.cells);
        const double n = bake.exponent;
        for (std::size_t i = 0; i < bake.cells; ++i) {
            const double inside = static_cast<double>(i) * dx;
            const double outside = static_cast<double>(i + 1) * dx;
            area[i] = std::pow(outside, n);
            contents[i] = (std::pow(outside, n + 1.0) - std::pow(inside, n + 1.0)) / (n + 1.0);
        }
    }

    [[nodiscard]] double dried(double h) const {
        return std::max(0.0, std::min(1.0, (h - begin) / (end - begin)));
    }

    [[nodiscard]] double celsius(double h) const {
        if (h < begin) {
            return h / c_wet;
        }
        return h < end ? bake.boiling_c : bake.boiling_c + (h - end) / c_dry;
    }

    [[nodiscard]] double core(const double* h) const {
        return celsius(h[0]) + (celsius(h[0]) - celsius(h[1])) / 8.0;
    }

    // The surface lets through what it receives: Newton's method until nothing moves.
    [[nodiscard]] double surface(double conductance, double inside) const {
        const double sigma = bake.emissivity * 5.670374419e-8;
        const double oven_k = bake.oven_c + 273.15;
        double k = inside + 273.15;
        for (int i = 0; i < 20; ++i) {
            const double gain = bake.transfer_w_m2k * (oven_k - k) +
                                sigma * (oven_k * oven_k * oven_k * oven_k - k * k * k * k) -
                                conductance * (k - 273.15 - inside);
            const double slope = bake.transfer_w_m2k + 4.0 * sigma * k * k * k + conductance;
            k += gain / slope;
            if (std::abs(gain / slope) < 1e-9) {
                break;
            }
        }
        return k - 273.15;
    }

    void rates(const double* h, double* rate) {
        const std::size_t last = bake.cells - 1;
        for (std::size_t i = 0; i <= last; ++i) {
            temperature[i] = celsius(h[i]);
            const double wet =
                0.20 + bake.vapour_factor / (1.0 + std::exp(-0.1 * (temperature[i] - 80.0)));
            const double f = dried(h[i]);
            conductivity[i] = (1.0 - f) * wet + f * 0.05;
        }
        double from_inside = 0.0;
        for (std::size_t i = 0; i <= last; ++i) {
            double to_outside = 0.0;
            if (i < last) {
                const double k = 2.0 / (1.0 / conductivity[i] + 1.0 / conductivity[i + 1]);
                to_outside = k * area[i] * (temperature[i] - temperature[i + 1]) / dx;
            } else {
                const double g = conductivity[i] / (dx / 2.0);
                to_outside = g * area[i] * (temperature[i] - surface(g, temperature[i]));
            }
            rate[i] = (from_inside - to_outside) / (bake.density_kg_m3 * contents[i]);
            from_inside = to_outside;
        }
    }
};

int rates_of(realtype, N_Vector y, N_Vector rate, void* data) {
    static_cast<Problem*>(data)->rates(N_VGetArrayPointer(y), N_VGetArrayPointer(rate));
    return 0;
}

int target_of(realtype, N_Vector y, realtype* over, void* data) {
    const Problem& problem = *static_cast<Problem*>(data);
    *over = problem.core(N_VGetArrayPointer(y)) - problem.target_c;
    return 0;
}

void must(int code, const char* what) {
    if (code < 0) {
        throw std::runtime_error(what);
    }
}

// Everything SUNDIALS hands out, given back at the end.
struct Solver {
    SUNContext context = nullptr;
    N_Vector y = nullptr;
    SUNMatrix matrix = nullptr;
    SUNLinearSolver linear = nullptr;
    void* memory = nullptr;

    explicit Solver(std::size_t cells) {
        const auto size = static_cast<sunindextype>(cells);
        must(SUNContext_Create(nullptr, &context), "SUNContext_Create");
        y = N_VNew_Serial(size, context);
        matrix = SUNBandMatrix(size, 1, 1, context);
        linear = SUNLinSol_Band(y, matrix, context);
        memory = CVodeCreate(CV_BDF, context);
    }
    ~Solver() {
        CVodeFree(&memory);
        SUNLinSolFree(linear);
        SUNMatDestroy(matrix);
        N_VDestroy(y);
        SUNContext_Free(&context);
    }
    Solver(const Solver&) = delete;
    Solver& operator=(const Solver&) = delete;
    Solver(Solver&&) = delete;
    Solver& operator=(Solver&&) = delete;
};

} // namespace

CvodeCourse
bake_by_cvode(const CvodeBake& bake, double minutes, double target_c, double tolerance) {
    Problem problem(bake, target_c);
    Solver solver(bake.cells);
    double* h = N_VGetArrayPointer(solver.y);
    std::fill_n(h, bake.cells, problem.c_wet * bake.start_c);
    must(CVodeInit(solver.memory, rates_of, 0.0, solver.y), "CVodeInit");
    must(CVodeSStolerances(solver.memory, tolerance, tolerance * problem.begin), "tolerances");
    must(CVodeSetUserData(solver.memory, &problem), "CVodeSetUserData");
    must(CVodeSetLinearSolver(solver.memory, solver.linear, solver.matrix), "linear solver");
    must(CVodeSetMaxNumSteps(solver.memory, 10000000), "CVodeSetMaxNumSteps");
    must(CVodeRootInit(solver.memory, 1, target_of), "CVodeRootInit");
    const double limit_s = minutes > 0.0 ? 60.0 * minutes : 36000.0;
    must(CVodeSetStopTime(solver.memory, limit_s), "CVodeSetStopTime");
    CvodeCourse course;
    double now_s = 0.0;
    while (now_s < limit_s) {
        const int code = CVode(solver.memory, limit_s, solver.y, &now_s, CV_NORMAL);
        must(code, "CVode");
        if (code == CV_ROOT_RETURN && course.core_minutes == 0.0) {
            course.core_minutes = now_s / 60.0;
            if (minutes <= 0.0) {
                break;
            }
        }
    }
    double all = 0.0;
    for (std::size_t i = 0; i < bake.cells; ++i) {
        course.dried += problem.contents[i] * problem.dried(h[i]);
        all += problem.contents[i];
    }
    course.dried /= all;
    course.core_c = problem.core(h);
    CVodeGetNumSteps(solver.memory, &course.steps);
    CVodeGetNumRhsEvals(solver.memory, &course.rate_calls);
    return course;
}

} // namespace loafwright::dough
