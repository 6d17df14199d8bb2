// SPDX-License-Identifier: Apache-2.0
//
// The list of the tables, in the order in which a Knowledge holds them.

#include "engine/knowledge/generate/tables.hpp"

#include "engine/knowledge/generate/table_rows.hpp"

namespace loafwright::generate {

const std::vector<TableWriter>& table_writers() {
    static const std::vector<TableWriter> writers{{"ingredients", ingredients},
                                                  {"units", units},
                                                  {"oven_words", oven_words},
                                                  {"warmth_words", warmth_words},
                                                  {"stage_defaults", stage_defaults},
                                                  {"cues", cues},
                                                  {"normal", normal},
                                                  {"cautions", cautions},
                                                  {"kit", kit},
                                                  {"ahead", ahead},
                                                  {"lexicon", lexicon},
                                                  {"process", process},
                                                  {"remedies", remedies},
                                                  {"skills", skills},
                                                  {"learning", learning},
                                                  {"fault_causes", fault_causes},
                                                  {"fault_symptoms", fault_symptoms},
                                                  {"fault_links", fault_links},
                                                  {"fault_evidence", fault_evidence},
                                                  {"formula_ranges", formula_ranges},
                                                  {"tin_fill", tin_fill}};
    return writers;
}

} // namespace loafwright::generate
