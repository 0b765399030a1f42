// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

namespace wm::store::schema1 {

namespace {

struct Searched {
    const char* table;
    const char* text;  ///< an expression over the row, with %. in place of "new."
};

// Facts alone: they are never changed, so there is nothing to follow but entry and undo.
const Searched kSearched[] = {
    {"move", "%.position || ' ' || %.note"},
    {"setting", "%.name || ' ' || %.value || ' ' || %.note"},
    {"hour_reading", "%.note"},
    {"distance_reading", "%.note"},
    {"outing", "%.note"},
    {"wash", "%.note"},
    {"crash", "%.note"},
    {"snag", "%.what"},
    {"issued_sheet", "%.target || ' ' || %.note"},
    {"record", "%.code || ' ' || %.what || ' ' || %.data || ' ' || %.note"},
    {"snag_end", "%.how"},
    {"deferral", "%.reason"},
    {"follow_up_answer", "%.what || ' ' || %.note"},
    {"joint_mark", "%.note"},
    {"stock_order", "%.note"},
    {"stock_move", "%.note"},
    {"strike", "%.reason"},
};

std::string filled(const char* text) {
    std::string result;
    for (const char* at = text; *at != '\0'; ++at)
        result += *at == '%' ? std::string("new") : std::string(1, *at);
    return result;
}

}  // namespace

// Words of facts by the fact's id. It keeps its own copy of the text, so a fact can be taken out of the index
// without saying again what stood there.
std::vector<std::string> search() {
    std::vector<std::string> statements = {
        R"(CREATE VIRTUAL TABLE search USING fts5(text, tokenize = "unicode61 remove_diacritics 2"))"};
    for (const Searched& each : kSearched) {
        const std::string table = each.table;
        const std::string text = filled(each.text);
        statements.push_back("CREATE TRIGGER " + table + "_into_search AFTER INSERT ON " + table +
                             " WHEN trim(" + text + ") <> '' BEGIN INSERT INTO search (rowid, text) VALUES " +
                             "(new.id, " + text + "); END");
        statements.push_back("CREATE TRIGGER " + table + "_out_of_search AFTER DELETE ON " + table +
                             " BEGIN DELETE FROM search WHERE rowid = old.id; END");
    }
    return statements;
}

}  // namespace wm::store::schema1
