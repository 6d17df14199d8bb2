// SPDX-License-Identifier: Apache-2.0
//
// The catalogue of everything the program may complain about. A code is a promise to whoever tests
// for it, so codes are only ever added; docs/errors.md explains each with an example and its cure,
// and a test compares the two.
#include "engine/diagnostic/diagnostic.hpp"

#include <algorithm>

namespace loafwright {

std::string_view name_of(Severity severity) {
    switch (severity) {
    case Severity::error:
        return "error";
    case Severity::warning:
        return "warning";
    case Severity::note:
        return "note";
    }
    return "error";
}

const std::vector<DiagnosticCode>& diagnostic_codes() {
    static const std::vector<DiagnosticCode> codes = {
        {"address_too_long", "an address does not fit into a short code"},
        {"address_unreadable", "the address of a request cannot be read"},
        {"address_unusable", "the server cannot listen at the address"},
        {"answer_unknown", "an answer was given to a question that this text does not ask"},
        {"answer_unreadable", "an answer could not be understood"},
        {"at_night",
         "hands-on work falls between 22:30 and 06:30 and nobody has said when they sleep"},
        {"body_too_long", "what was sent is longer than is taken there"},
        {"both_start_and_eat_by", "a start and a time to eat were both given"},
        {"correction_misplaced", "a correction is for nothing that was read in this text"},
        {"dough_unweighed", "nothing that the verb counts on has a weight in the recipe"},
        {"dough_waits_long",
         "a dough waits longer than it likes, because nothing else was possible"},
        {"file_damaged", "a file is broken or ends before its end"},
        {"file_locked", "a file opens with a password only"},
        {"file_missing", "the named file does not exist or is a folder"},
        {"file_too_long", "a PDF, a photo or a web page is longer than is read"},
        {"file_unreadable", "the named file exists but cannot be read"},
        {"flour_by_volume",
         "the flour of a recipe is measured by volume, so its weight is uncertain"},
        {"font_missing", "the typeface of the page is not on this system"},
        {"grams_assumed", "the numbers of a list have no unit and were read as grams"},
        {"handwriting", "a page is written by hand and was not read"},
        {"host_unknown", "a request names a host that is not this server"},
        {"import_unreadable", "the text to bring in is no export, or something in it is wrong"},
        {"internal", "a fault of ours"},
        {"json_unreadable", "a file is not JSON"},
        {"key_missing", "a file lacks a key that it needs"},
        {"key_unknown", "a file has a key that means nothing here"},
        {"kind_untaken", "a file is of a kind that no words are taken from"},
        {"leaven_does_not_fit", "a dough cannot be made with a leaven, or without the one it has"},
        {"leaven_unusual", "a dough has more or less leaven than breads of its kind"},
        {"letters_missing", "letters of the page are in no typeface of this system"},
        {"method_unknown", "an address does not take the method of a request"},
        {"no_recipe_found", "no step could be read in the text"},
        {"no_words_found", "no words could be read in a picture"},
        {"nobody_there", "work or a bake falls into a time when nobody is there"},
        {"not_here", "there is nothing at the address of a request"},
        {"number_unsure", "a number in a photo may have been read wrongly"},
        {"one_bread_at_a_time",
         "more than one recipe was given to read, or beside another size or yeast"},
        {"origin_unknown", "a page from elsewhere wanted to change something"},
        {"page_no_words", "a web page has no words of a recipe"},
        {"page_not_text", "what should be a web page is not text"},
        {"page_several", "a web page has several recipes, and the first was taken"},
        {"page_too_long", "a web page is longer than eight mebibytes"},
        {"page_too_tangled", "a web page has more parts than a page of words has"},
        {"photo_unknown", "what was sent is no picture that is kept"},
        {"picture_too_large", "a picture has more pixels than can be read"},
        {"port_taken", "another program listens at the address"},
        {"project_unreadable", "a project file is not in the format that was named"},
        {"raised_otherwise",
         "another yeast was asked for, and the dough has nothing to swap for it"},
        {"reader_missing", "what reads PDFs and photos is not installed"},
        {"reading_gave_up", "reading a file took more time or memory than it may"},
        {"reading_stopped", "reading a file was stopped before its end"},
        {"request_unreadable", "what came is no request, or broke off"},
        {"richness_unusual", "a dough has more fat or sugar than breads of its kind"},
        {"said_twice", "one thing is said in two ways, and only one of them may stand"},
        {"salt_unusual", "a dough has more or less salt than breads of its kind"},
        {"settings_unreadable", "a settings file is not TOML"},
        {"store_damaged", "what was kept is no longer what it was"},
        {"store_full", "there is no room left to keep something"},
        {"store_newer", "what is kept was written by a newer program"},
        {"store_read_only", "what is kept may only be read"},
        {"store_unreachable", "the place where things are kept cannot be reached"},
        {"symptom_unknown", "the words tell of no sign that is known on a bread"},
        {"text_binary", "the file holds bytes that are not text"},
        {"text_empty", "the text has no words"},
        {"text_not_utf8", "the text is not valid UTF-8"},
        {"text_other_language", "the text does not look like English"},
        {"text_too_long", "the text is longer than one mebibyte"},
        {"time_past", "a window or a claim of the day is over and was left out"},
        {"time_skipped", "the wanted time does not exist: the clocks go forward over it"},
        {"time_unreadable", "a time could not be understood"},
        {"times_differ", "the head of a recipe gives other times than its method"},
        {"token_missing", "a request came without the token of this server"},
        {"token_wrong", "a token is not the one of this server"},
        {"too_busy", "more was sent at the same time than there is room for"},
        {"too_many_breads", "more than a dozen recipes were given for one day"},
        {"too_many_pages", "a file has more pages than a recipe"},
        {"too_many_tries", "too many wrong tokens came within a minute"},
        {"units_disagree", "the same amount stands twice in the text and the two differ"},
        {"unwritable", "a file could not be written"},
        {"usage", "the command line could not be understood"},
        {"value_out_of_range", "a number, a time or a length is outside what makes sense"},
        {"value_unknown", "a word is none of those that may stand there"},
        {"value_wrong_kind", "a value is of the wrong kind"},
        {"water_unusual", "a dough has more or less water than breads of its kind"},
        {"yeast_unusual", "a dough has more or less yeast than breads of its kind"},
        {"zone_unknown", "the named time zone does not exist"},
        {"zone_unset", "no time zone was given or found, UTC was used"},
    };
    return codes;
}

bool is_known_code(std::string_view code) {
    const auto& codes = diagnostic_codes();
    return std::any_of(
        codes.begin(), codes.end(), [code](const DiagnosticCode& row) { return row.code == code; });
}

bool has_errors(const Diagnostics& diagnostics) {
    return std::any_of(diagnostics.begin(), diagnostics.end(), [](const Diagnostic& diagnostic) {
        return diagnostic.severity == Severity::error;
    });
}

std::string one_line(const Diagnostic& diagnostic) {
    std::string line;
    if (!diagnostic.where.empty()) {
        line += diagnostic.where + ": ";
    }
    line += diagnostic.what;
    if (!diagnostic.do_this.empty()) {
        line += ". " + diagnostic.do_this;
    }
    return line;
}

} // namespace loafwright
