// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "app/open_garage.h"
#include "app/verb.h"

namespace wm::app {

namespace {

void list(const Call& call, const std::vector<QString>& findings) {
    if (!call.has("json")) {
        for (const QString& finding : findings)
            call.console().out << finding << '\n';
        return;
    }
    auto array = nlohmann::ordered_json::array();
    for (const QString& finding : findings)
        array.push_back(finding.toStdString());
    print(call.console(), {{"sound", findings.empty()}, {"findings", array}});
}

// A damaged file is not opened; which of its rows are not as they were written can be said all the same.
void listAltered(const Call& call, const store::OpenReport& report) {
    if (report.outcome != store::OpenOutcome::Altered && report.outcome != store::OpenOutcome::Corrupt)
        return;
    if (const store::Facts facts = store::factsOf(call.word(0)); !facts.altered.empty())
        list(call, facts.altered);
}

Answer<void> runCheck(const Call& call) {
    store::OpenReport report;
    auto garage = Garage::open(call, store::OpenFor::ReadingOnly, report);
    if (!garage) {
        listAltered(call, report);
        return tl::unexpected(garage.error());
    }
    const std::vector<QString> findings = garage->file().check();
    list(call, findings);
    if (!findings.empty())
        return fail(Exit::Found,
                    "The file has faults: go back to one of the backups beside it, or export what can "
                    "still be read.");
    if (!call.has("json"))
        call.console().out << "The file is sound: " << garage->file().ledger()->rows().size() << " rows.\n";
    return {};
}

}  // namespace

VerbSpec checkVerb() {
    return {"check",        "See whether the file is sound.",           {{"FILE", "The file."}},
            {jsonOption()}, "  witnessmark check garage.witnessmark\n", runCheck};
}

}  // namespace wm::app
