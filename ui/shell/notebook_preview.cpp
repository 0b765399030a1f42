// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_preview.h"

#include <algorithm>
#include <utility>

#include "core/base/text.h"
#include "core/notebook/totals.h"
#include "core/store/store.h"
#include "core/verbs/together.h"
#include "ui/entry/starters.h"

namespace wm::ui {

using notebook::Choice;
using notebook::Column;
using notebook::Cure;
using notebook::Line;
using notebook::Verdict;

NotebookPreview::NotebookPreview(std::string bytes, std::shared_ptr<const book::Book> book,
                                 QSettings& settings)
    : bytes_(std::move(bytes)), file_(std::move(book)), book_(file_), settings_(settings) {
    const auto machines = book_->machines();
    if (machines.size() == 1)
        onlyMachine_ = machines.front()->id;
}

std::vector<std::string> NotebookPreview::machineNames() const {
    std::vector<std::string> names;
    for (const auto* machine : book_->machines())
        names.push_back(machine->name);
    return names;
}

std::optional<base::Error> NotebookPreview::open(const notebook::Progress& progress) {
    auto table = notebook::readTable(bytes_, progress);
    if (!table)
        return refusal_ = table.error();
    table_ = *std::move(table);
    findLayout();
    return std::nullopt;
}

std::optional<base::Error> NotebookPreview::setSeparator(char separator, const notebook::Progress& progress) {
    auto table = notebook::readTable(bytes_, progress, separator);
    if (!table)
        return table.error();
    table_ = *std::move(table);
    said_.clear();
    agreement_.allCures = false;
    agreement_.lines.clear();
    findLayout();
    return std::nullopt;
}

void NotebookPreview::findLayout() {
    headerKey_ = notebook::headerKey(table_);
    ways_ = recallNotebook(settings_, headerKey_);
    if (ways_.columns.size() != table_.header.size())
        ways_.columns.clear();
    applyWays();
}

void NotebookPreview::applyWays() {
    layout_ = notebook::guessLayout(table_, machineNames());
    if (!ways_.columns.empty()) {
        layout_.columns = ways_.columns;
        notebook::findForms(layout_, table_);
    }
    if (ways_.decimal)
        layout_.decimal = *ways_.decimal;
    if (ways_.dates) {
        layout_.dates = *ways_.dates;
        layout_.datesUnsure = false;
    }
}

void NotebookPreview::remember() {
    rememberNotebook(settings_, headerKey_, ways_);
    applyWays();
}

void NotebookPreview::setColumn(std::size_t at, Column column) {
    std::vector<Column> columns = layout_.columns;
    if (at >= columns.size() || columns[at] == column)
        return;
    // A figure is read from one column alone: the one that was said last.
    if (column != Column::Unused)
        std::replace(columns.begin(), columns.end(), column, Column::Unused);
    columns[at] = column;
    ways_.columns = std::move(columns);
    remember();
}

void NotebookPreview::setDecimal(char decimal) {
    ways_.decimal = decimal;
    remember();
}

void NotebookPreview::setDates(notebook::DateForm form) {
    ways_.dates = form;
    remember();
}

void NotebookPreview::setMeaning(const std::string& text, std::optional<MachineId> machine) {
    if (schedules_.erase(std::string(base::trimmed(text))) > 0)
        suppose();
    ways_.names[text] = machine;
    remember();
}

void NotebookPreview::forget() {
    ways_ = {};
    schedules_.clear();
    suppose();
    remember();
}

void NotebookPreview::setBook(std::shared_ptr<const book::Book> book) {
    file_ = std::move(book);
    suppose();
}

void NotebookPreview::setSchedule(const std::string& machine, exchange::Starter starter) {
    ways_.names.erase(machine);
    schedules_.insert_or_assign(std::string(base::trimmed(machine)), std::move(starter));
    suppose();
    remember();
}

std::string NotebookPreview::scheduleOf(const std::string& machine) const {
    const auto at = schedules_.find(std::string(base::trimmed(machine)));
    return at == schedules_.end() ? std::string() : at->second.name;
}

std::vector<std::string> NotebookPreview::withoutSchedule() const {
    std::vector<std::string> names;
    if (!notebook_)
        return names;
    const auto totals = notebook::totalsOf(*notebook_, agreement_);
    for (std::size_t at = 0; at < totals.size(); ++at)
        if (!notebook_->machines[at].id && totals[at].lines > 0)
            names.push_back(notebook_->machines[at].name);
    return names;
}

// The first day of a machine in the notebook, as far as it was read; today if it was not.
calendar::Date NotebookPreview::firstDayOf(const std::string& machine) const {
    calendar::Date first = file_->today();
    if (notebook_)
        for (const Line& line : notebook_->lines)
            for (const std::size_t at : line.facts.machines)
                if (line.verdict == Verdict::Taken && notebook_->machines[at].name == machine)
                    first = std::min(first, line.facts.date);
    return first;
}

// The picture of the file with the machines and schedules that come with the notebook.
void NotebookPreview::suppose() {
    std::erase_if(schedules_, [this](const auto& each) {
        const auto machines = file_->machines();
        return std::any_of(machines.begin(), machines.end(),
                           [&](const items::Machine* machine) { return machine->name == each.first; });
    });
    added_ = {};
    agreement_.newcomers.clear();
    std::vector<store::Verb> verbs;
    for (const auto& [name, starter] : schedules_) {
        const items::Machine card{
            .name = name, .starter = starter.name, .since = firstDayOf(name), .pastHigh = {}};
        verbs.emplace_back(
            [card](const verbs::VerbContext& context) { return verbs::saveMachine(context, card); });
        verbs.push_back(adoptStarter(name, starter));
    }
    const auto added = verbs::together({}, std::move(verbs))({*file_, store::randomIds()});
    if (!added) {
        schedules_.clear();
        book_ = file_;
        return;
    }
    added_ = *added;
    book_ = added_.rows.empty()
                ? file_
                : std::make_shared<const book::Book>(
                      std::make_shared<const picture::Ledger>(file_->ledger().with(added_)), file_->today());
    for (const auto* machine : book_->machines())
        if (schedules_.contains(machine->name))
            agreement_.newcomers.insert(machine->id);
}

void NotebookPreview::judge(const notebook::Progress& progress) {
    auto judged = notebook::readNotebook(
        table_, *book_, {.layout = layout_, .machine = onlyMachine_, .meant = ways_.names}, progress);
    if (!judged) {
        notebook_.reset();
        refusal_ = judged.error();
        return;
    }
    notebook_ = *std::move(judged);
    refusal_.reset();
    agreement_.lines.clear();
    for (const Line& line : notebook_->lines) {
        const auto at = said_.find(line.line);
        if (at != said_.end() && at->second.verdict == line.verdict && at->second.cure == line.cure &&
            at->second.remarks == line.remarks)
            agreement_.lines[line.line] = at->second.choice;
    }
}

void NotebookPreview::say(const Line& line, notebook::Choice choice) {
    said_[line.line] = {choice, line.verdict, line.cure, line.remarks};
    agreement_.lines[line.line] = choice;
}

notebook::Choice NotebookPreview::choiceFor(const Line& line) const {
    const auto said = agreement_.lines.find(line.line);
    return said == agreement_.lines.end() ? notebook::Choice::Open : said->second;
}

LineState NotebookPreview::stateOf(const Line& line) const {
    if (line.inFile)
        return LineState::Known;
    if (line.verdict == Verdict::Refused)
        return LineState::Refused;
    const notebook::Choice choice = choiceFor(line);
    if (choice == notebook::Choice::LeftOut ||
        (choice == notebook::Choice::Cured && line.cure == Cure::LeaveOut))
        return LineState::LeftOut;
    if (line.verdict == Verdict::Taken)
        return LineState::GoesIn;
    return choice == notebook::Choice::Cured ? LineState::Cured : LineState::Open;
}

void NotebookPreview::turnCure(const Line& line) {
    if (line.verdict != Verdict::Doubtful || line.cure == Cure::None || line.inFile)
        return;
    say(line, choiceFor(line) == notebook::Choice::Cured ? notebook::Choice::Open : notebook::Choice::Cured);
}

void NotebookPreview::turnLeftOut(const Line& line) {
    if (line.verdict == Verdict::Refused || line.inFile)
        return;
    say(line,
        choiceFor(line) == notebook::Choice::LeftOut ? notebook::Choice::Open : notebook::Choice::LeftOut);
}

void NotebookPreview::cureKindOf(const Line& line) {
    const auto kind = line.doubts();
    if (!notebook_ || line.verdict != Verdict::Doubtful)
        return;
    for (const Line& each : notebook_->lines)
        if (each.verdict == Verdict::Doubtful && each.cure != Cure::None && !each.inFile &&
            each.doubts() == kind)
            say(each, notebook::Choice::Cured);
}

void NotebookPreview::cureAll() {
    if (!notebook_)
        return;
    for (const Line& each : notebook_->lines)
        if (stateOf(each) == LineState::Open && each.cure != Cure::None)
            say(each, notebook::Choice::Cured);
}

base::Result<notebook::Taken> NotebookPreview::take(const std::string& name,
                                                    const notebook::Progress& progress) const {
    if (!notebook_)
        return base::refuse(base::Fault::NothingNew, "notebook");
    auto taken = notebook::takeNotebook({*book_, store::randomIds()}, *notebook_, agreement_, name, progress);
    if (taken)
        taken->change.rows.insert(taken->change.rows.begin(), added_.rows.begin(), added_.rows.end());
    return taken;
}

}  // namespace wm::ui
