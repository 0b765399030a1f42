// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_preview.h"

#include <algorithm>
#include <utility>

#include "core/store/store.h"

namespace wm::ui {

using notebook::Choice;
using notebook::Column;
using notebook::Cure;
using notebook::Line;
using notebook::Verdict;

NotebookPreview::NotebookPreview(std::string bytes, std::shared_ptr<const ledger::Book> book,
                                 QSettings& settings)
    : bytes_(std::move(bytes)), book_(std::move(book)), settings_(settings) {
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
    agreement_ = {};
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
    ways_.names[text] = machine;
    remember();
}

void NotebookPreview::forget() {
    ways_ = {};
    remember();
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

void NotebookPreview::say(const Line& line, Choice choice) {
    said_[line.line] = {choice, line.verdict, line.cure, line.remarks};
    agreement_.lines[line.line] = choice;
}

Choice NotebookPreview::choiceFor(const Line& line) const {
    const auto said = agreement_.lines.find(line.line);
    return said == agreement_.lines.end() ? Choice::Open : said->second;
}

LineState NotebookPreview::stateOf(const Line& line) const {
    if (line.inFile)
        return LineState::Known;
    if (line.verdict == Verdict::Refused)
        return LineState::Refused;
    const Choice choice = choiceFor(line);
    if (choice == Choice::LeftOut || (choice == Choice::Cured && line.cure == Cure::LeaveOut))
        return LineState::LeftOut;
    if (line.verdict == Verdict::Taken)
        return LineState::GoesIn;
    return choice == Choice::Cured ? LineState::Cured : LineState::Open;
}

void NotebookPreview::turnCure(const Line& line) {
    if (line.verdict != Verdict::Doubtful || line.cure == Cure::None || line.inFile)
        return;
    say(line, choiceFor(line) == Choice::Cured ? Choice::Open : Choice::Cured);
}

void NotebookPreview::turnLeftOut(const Line& line) {
    if (line.verdict == Verdict::Refused || line.inFile)
        return;
    say(line, choiceFor(line) == Choice::LeftOut ? Choice::Open : Choice::LeftOut);
}

void NotebookPreview::cureKindOf(const Line& line) {
    const auto kind = line.doubts();
    if (!notebook_ || line.verdict != Verdict::Doubtful)
        return;
    for (const Line& each : notebook_->lines)
        if (each.verdict == Verdict::Doubtful && each.cure != Cure::None && !each.inFile &&
            each.doubts() == kind)
            say(each, Choice::Cured);
}

void NotebookPreview::cureAll() {
    if (!notebook_)
        return;
    for (const Line& each : notebook_->lines)
        if (stateOf(each) == LineState::Open && each.cure != Cure::None)
            say(each, Choice::Cured);
}

base::Result<notebook::Taken> NotebookPreview::take(const std::string& name,
                                                    const notebook::Progress& progress) const {
    if (!notebook_)
        return base::refuse(base::Fault::NothingToDo, "notebook");
    return notebook::takeNotebook({*book_, store::randomIds()}, *notebook_, agreement_, name, progress);
}

}  // namespace wm::ui
