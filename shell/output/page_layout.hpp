// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/sheet/compose.hpp"
#include "shell/output/page_options.hpp"
#include "shell/output/short_code.hpp"
#include "shell/output/type_setting.hpp"

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

namespace loafwright::output {

/// What a text is for; its size follows from it.
enum class Role {
    eat_time,
    title,
    lead, // "Eat at", "Begin"
    begin_time,
    stage_number,
    stage_time,
    stage_title,
    act_time,
    act,
    day, // the day above the first stage of it
    length,
    cue,
    label,
    body,
    column_head,
    day_line
};

/// A text with its top left corner at x, y; no line of it wider than `width`, below zero for one
/// line. All lengths here are points (1/72 in) from the top left corner of the paper.
struct Words {
    Role role = Role::body;
    double x = 0.0;
    double y = 0.0;
    double width = -1.0;
    std::size_t most_lines = 1; // more end in "…"
    std::string text;
    Face face;
    Extent extent;
};

struct Stroke {
    double x = 0.0;
    double y = 0.0;
    double to_x = 0.0;
    double to_y = 0.0;
    double points = 0.5;
};

/// A box to tick.
struct Square {
    double x = 0.0;
    double y = 0.0;
    double side = 0.0;
};

/// How a stretch of the day line is told apart without colour.
enum class Fill { solid, hatched, open };

struct Bar {
    double x = 0.0;
    double y = 0.0;
    double width = 0.0;
    double height = 0.0;
    Fill fill = Fill::open;
};

/// A short code; x, y is the corner of its modules, the quiet zone lies around it.
struct CodeMark {
    double x = 0.0;
    double y = 0.0;
    double module_points = 0.0;
    ShortCode code;
};

using Mark = std::variant<Words, Stroke, Square, Bar, CodeMark>;

/// What a part is to somebody who has it read out.
enum class PartKind { title, heading, paragraph, item, drawing };

/// Marks that belong together, in reading order.
struct Part {
    PartKind kind = PartKind::paragraph;
    std::vector<Mark> marks;
    std::string bookmark; // empty for none
    std::string link;     // where it leads; empty for nowhere
};

struct LaidPage {
    std::vector<Part> parts;
};

/// Where everything stands. The order of pages, parts and marks is the reading order.
///
/// Invariants: every mark lies inside the paper; times and titles are 20 pt at least, those of acts
///             and of folds too, cues 13 pt, everything 10 pt (large print: 18 pt).
struct PageLayout {
    std::string title;
    double width = 0.0;
    double height = 0.0;
    std::vector<LaidPage> pages;
    std::size_t reminders_left_out = 0;
    std::size_t notes_left_out = 0;
    std::size_t questions_left_out = 0;
    std::size_t normal_left_out = 0; // of so many breads what is normal at each stage
    std::size_t unknown_letters = 0; // that no font of this system has
    std::size_t cut_texts = 0;       // that were too long for their place and end in "…"
};

/// Lays the breads out, each on pages of its own.
///
/// Needs:    at least one sheet; `setter` of options.family.
/// Promises: a bread is put on one page in usual print, on two at most in large print, as long as
///           it can be: type goes down to the least sizes, then the day line is left out, reminders
///           follow one another, lines move closer, and reminders, questions and notes give way,
///           the least important first, and come back where a line has room for them; what is left
///           out is counted on the page. A shared clock gives up what the pages of its breads have
///           too. What still does not fit goes on overleaf with everything back in place. The same
///           input gives the same layout.
/// Never:    draws, asks the clock.
PageLayout
lay_out(const std::vector<Sheet>& sheets, const PageOptions& options, const TypeSetter& setter);

} // namespace loafwright::output
