// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "app/open_garage.h"
#include "app/verb.h"

namespace wm::app {

namespace {

Answer<void> runCheck(const Call& call) {
    auto garage = Garage::open(call, store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    const std::vector<QString> findings = garage->file().check();
    if (call.has("json")) {
        auto list = nlohmann::ordered_json::array();
        for (const QString& finding : findings)
            list.push_back(finding.toStdString());
        print(call.console(), {{"sound", findings.empty()}, {"findings", list}});
    } else {
        for (const QString& finding : findings)
            call.console().out << finding << '\n';
        if (findings.empty())
            call.console().out << "The file is sound: " << garage->file().ledger()->rows().size()
                               << " rows.\n";
    }
    if (!findings.empty())
        return fail(Exit::Found,
                    "The file has faults: go back to one of the backups beside it, or export what can "
                    "still be read.");
    return {};
}

}  // namespace

VerbSpec checkVerb() {
    return {"check",        "See whether the file is sound.",           {{"FILE", "The file."}},
            {jsonOption()}, "  witnessmark check garage.witnessmark\n", runCheck};
}

}  // namespace wm::app
