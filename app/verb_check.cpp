// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "app/open_garage.h"
#include "app/verb.h"
#include "ui/words/oddity_words.h"

namespace wm::app {

namespace {

template <class Lines>
nlohmann::ordered_json asJson(const Lines& lines) {
    auto array = nlohmann::ordered_json::array();
    for (const QString& line : lines)
        array.push_back(line.toStdString());
    return array;
}

template <class Lines>
void print(const Call& call, const Lines& lines) {
    for (const QString& line : lines)
        call.console().out << line << '\n';
}

// What is wrong; and what is no fault: texts that are read as something harmless, and what no verb would have
// taken.
void list(const Call& call, const std::vector<QString>& findings, const std::vector<QString>& replaced = {},
          const QStringList& odd = {}) {
    if (!call.has("json"))
        return print(call, findings);
    nlohmann::ordered_json answer{{"sound", findings.empty()}, {"findings", asJson(findings)}};
    if (!replaced.empty())
        answer["replaced"] = asJson(replaced);
    if (!odd.empty())
        answer["odd"] = asJson(odd);
    print(call.console(), answer);
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
    const std::vector<QString> replaced = garage->file().replacedTexts();
    const QStringList odd = findings.empty() ? ui::oddityLines(garage->book()) : QStringList();
    list(call, findings, replaced, odd);
    if (!findings.empty())
        return fail(Exit::Found,
                    "The file has faults: go back to one of the backups beside it, or export what can "
                    "still be read.");
    if (call.has("json"))
        return {};
    call.console().out << "The file is sound: " << garage->file().ledger()->rows().size() << " rows.\n";
    if (!replaced.empty())
        call.console().out << "An earlier version took signs here that no text may hold; something harmless "
                              "is read in their place:\n";
    print(call, replaced);
    if (!odd.empty())
        call.console().out << "What no verb would have taken without a question, so look at each:\n";
    print(call, odd);
    return {};
}

}  // namespace

VerbSpec checkVerb() {
    return {"check",        "See whether the file is sound.",           {{"FILE", "The file."}},
            {jsonOption()}, "  witnessmark check garage.witnessmark\n", runCheck};
}

}  // namespace wm::app
