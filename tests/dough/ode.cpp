// SPDX-License-Identifier: Apache-2.0
#include "tests/dough/ode.hpp"

#ifdef LOAFWRIGHT_SUNDIALS
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <algorithm>
#include <memory>
#endif

namespace loafwright::dough {

#ifdef LOAFWRIGHT_SUNDIALS

namespace {

struct Equation {
    Curve curve = Curve::gas;
    Stay stay;
    double begins = 0.0;
};

// Our own rate (its values are checked against the published table), but nothing of our solution.
int slopes(realtype t, N_Vector state, N_Vector change, void* data) {
    const auto& equation = *static_cast<const Equation*>(data);
    const double lasts = equation.stay.lasts.count();
    const double share = lasts > 0.0 ? std::clamp((t - equation.begins) / lasts, 0.0, 1.0) : 1.0;
    const double place = equation.stay.place_first.degrees() * (1.0 - share) +
                         equation.stay.place_last.degrees() * share;
    const realtype* y = N_VGetArrayPointer(state);
    realtype* dy = N_VGetArrayPointer(change);
    const double rate = rate_of(equation.curve, Celsius(y[0]));
    dy[0] = (place - y[0]) / equation.stay.time_constant.count();
    dy[1] = rate;
    dy[2] = rate / rate_of(equation.curve, Celsius(27.0)) / 60.0;
    dy[3] = (1.0 + 0.08 * y[2]) * dy[2];
    return 0;
}

class Solver {
public:
    Solver(Celsius start, Equation& equation) {
        SUNContext_Create(nullptr, &context_);
        state_ = N_VNew_Serial(4, context_);
        N_VConst(0.0, state_);
        N_VGetArrayPointer(state_)[0] = start.degrees();
        memory_ = CVodeCreate(CV_BDF, context_);
        matrix_ = SUNDenseMatrix(4, 4, context_);
        linear_ = SUNLinSol_Dense(state_, matrix_, context_);
        good_ = CVodeInit(memory_, slopes, 0.0, state_) == CV_SUCCESS &&
                CVodeSStolerances(memory_, 1e-9, 1e-9) == CV_SUCCESS &&
                CVodeSetUserData(memory_, &equation) == CV_SUCCESS &&
                CVodeSetLinearSolver(memory_, linear_, matrix_) == CV_SUCCESS &&
                CVodeSetMaxNumSteps(memory_, 200000) == CV_SUCCESS;
    }
    Solver(const Solver&) = delete;
    Solver& operator=(const Solver&) = delete;
    ~Solver() {
        CVodeFree(&memory_);
        SUNLinSolFree(linear_);
        SUNMatDestroy(matrix_);
        N_VDestroy(state_);
        SUNContext_Free(&context_);
    }

    bool run(double from, double to) {
        double reached = from;
        return good_ && CVodeReInit(memory_, from, state_) == CV_SUCCESS &&
               CVodeSetStopTime(memory_, to) == CV_SUCCESS &&
               CVode(memory_, to, state_, &reached, CV_NORMAL) >= 0;
    }
    [[nodiscard]] OdeAnswer answer() const {
        const realtype* y = N_VGetArrayPointer(state_);
        return {Celsius(y[0]), y[1], y[3]};
    }

private:
    SUNContext context_ = nullptr;
    N_Vector state_ = nullptr;
    void* memory_ = nullptr;
    SUNMatrix matrix_ = nullptr;
    SUNLinearSolver linear_ = nullptr;
    bool good_ = false;
};

} // namespace

std::optional<OdeAnswer> integrated(const TemperatureHistory& history, Minutes until, Curve curve) {
    Equation equation{curve, {}, 0.0};
    Solver solver(history.start, equation);
    for (std::size_t i = 0; i < history.stays.size() && equation.begins < until.count(); ++i) {
        equation.stay = history.stays[i];
        const bool last = i + 1 == history.stays.size();
        const double end =
            last ? until.count()
                 : std::min(until.count(), equation.begins + equation.stay.lasts.count());
        if (end > equation.begins && !solver.run(equation.begins, end)) {
            return std::nullopt;
        }
        equation.begins = end;
    }
    return solver.answer();
}

bool has_sundials() {
    return true;
}

#else

std::optional<OdeAnswer> integrated(const TemperatureHistory&, Minutes, Curve) {
    return std::nullopt;
}

bool has_sundials() {
    return false;
}

#endif

} // namespace loafwright::dough
