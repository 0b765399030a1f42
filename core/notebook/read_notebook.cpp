// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/read_notebook.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/notebook/judging.h"

namespace wm::notebook {

using base::Fault;
using base::refuse;
using base::Result;

namespace {

constexpr std::size_t kLinesBetweenReports = 2'000;
constexpr std::size_t kShareOfCells = 2;  ///< reading the cells is half of the way, judging them the other
constexpr std::size_t kStepsAfterCells = 4;

std::vector<NamedMachine> machinesOf(const book::Book& book) {
    std::vector<NamedMachine> machines;
    for (const auto& machine : book.ledger().all<items::Machine>())
        machines.push_back({machine.name, machine.id});
    return machines;
}

// Only a note may break its line.
void putOnOneLine(Table& table, const Layout& layout) {
    const auto note = layout.at(Column::Note);
    for (TableLine& line : table.lines)
        for (std::size_t at = 0; at < line.cells.size() && at < layout.columns.size(); ++at)
            if (at != note && line.cells[at].find('\n') != std::string::npos)
                line.cells[at] = base::onOneLine(line.cells[at]);
}

std::vector<std::string_view> machineCells(const Table& table, const Layout& layout) {
    std::vector<std::string_view> cells;
    if (const auto column = layout.at(Column::Machine))
        for (const TableLine& line : table.lines)
            cells.push_back(cellAt(line, column));
    return cells;
}

// Which machine a notebook without a machine column is about.
std::optional<std::size_t> onlyMachine(const std::vector<NamedMachine>& machines,
                                       std::optional<MachineId> wanted) {
    for (std::size_t at = 0; at < machines.size(); ++at)
        if (wanted ? machines[at].id == wanted : machines.size() == 1)
            return at;
    return std::nullopt;
}

Result<void> checkColumns(const Layout& layout, bool machineKnown) {
    if (!layout.at(Column::Date))
        return refuse(Fault::NoDates, "notebook");
    if (!layout.at(Column::Machine) && !machineKnown)
        return refuse(Fault::NoMachine, "notebook");
    for (const Column column : {Column::Hours, Column::Meter, Column::Distance, Column::Job, Column::Wash})
        if (layout.at(column))
            return {};
    return refuse(Fault::NoFigures, "notebook");
}

void judgeGone(Notebook& notebook, const book::Book& book) {
    for (Line& line : notebook.lines) {
        if (!line.readable())
            continue;
        for (const std::size_t at : line.facts.machines) {
            const auto id = notebook.machines[at].id;
            const auto* machine = id ? book.ledger().find<items::Machine>(*id) : nullptr;
            if (machine != nullptr && machine->goneOn && line.facts.date > *machine->goneOn) {
                line.remark(Defect::BeforeGone, dateText(line.facts.date, notebook.layout.dates),
                            dateText(*machine->goneOn, notebook.layout.dates));
                break;
            }
        }
    }
}

// What a yes does to each doubtful line, once all has been said about it.
void findCures(Notebook& notebook) {
    for (Line& line : notebook.lines) {
        if (line.verdict != Verdict::Doubtful)
            continue;
        if (line.has(Defect::Twice) || line.has(Defect::OtherwiseInFile)) {
            line.cure = Cure::LeaveOut;
            continue;
        }
        // A meter figure for two machines is one machine's; nobody can say whose.
        const bool open =
            line.has(Defect::CellsTooMany) || (line.has(Defect::TwoMachines) && line.facts.meter);
        const bool far = std::any_of(line.remarks.begin(), line.remarks.end(), [](const Remark& remark) {
            return remark.defect == Defect::DateFar && remark.likely.empty();
        });
        line.cure = open || far ? Cure::None : Cure::AsLikely;
    }
}

// The steps after the cells; false if the mechanic stopped between two of them.
bool judge(Notebook& notebook, const book::Book& book, const Progress& progress) {
    const std::size_t lines = notebook.lines.size();
    std::size_t steps = 0;
    const auto goesOn = [&] {
        ++steps;
        return !progress || lines < kLinesBetweenReports ||
               progress(lines + lines * steps / kStepsAfterCells, lines * kShareOfCells);
    };
    judgeDates(notebook.lines, notebook.layout, book.today());
    judgeGone(notebook, book);
    if (!goesOn())
        return false;
    judgeKnown(notebook, book.ledger());
    if (!goesOn())
        return false;
    judgeMeters(notebook, book.ledger());
    if (!goesOn())
        return false;
    judgeJobs(notebook, book);
    findCures(notebook);
    return goesOn();
}

}  // namespace

Result<Notebook> readNotebook(Table table, const book::Book& book, const ReadingWishes& wishes,
                              const Progress& progress) {
    Notebook notebook{.encoding = table.encoding, .separator = table.separator};
    std::vector<NamedMachine> known = machinesOf(book);
    std::vector<std::string> names;
    for (const NamedMachine& machine : known)
        names.push_back(machine.name);
    notebook.layout = wishes.layout && wishes.layout->columns.size() == table.header.size()
                          ? *wishes.layout
                          : guessLayout(table, names);
    putOnOneLine(table, notebook.layout);
    const auto only = onlyMachine(known, wishes.machine);
    if (auto fine = checkColumns(notebook.layout, only.has_value()); !fine)
        return tl::unexpected(fine.error());
    const Names read(std::move(known), machineCells(table, notebook.layout), wishes.meant);
    notebook.machines = read.machines();
    notebook.spellings = read.spellings();
    notebook.header = table.header;
    notebook.headerKey = headerKey(table);

    const CellReading reading(notebook.layout, read, only);
    notebook.lines.reserve(table.lines.size());
    Above above;
    for (TableLine& cells : table.lines) {
        Line line{.line = cells.line};
        reading.read(cells, above, line);
        line.cells = std::move(cells.cells);
        notebook.lines.push_back(std::move(line));
        if (!notebook.lines.back().has(Defect::DateUnreadable) && notebook.lines.back().readable())
            above.date = notebook.lines.back().facts.date;
        if (!notebook.lines.back().facts.machines.empty())
            above.machines = notebook.lines.back().facts.machines;
        if (progress && notebook.lines.size() % kLinesBetweenReports == 0 &&
            !progress(notebook.lines.size(), table.lines.size() * kShareOfCells))
            return refuse(Fault::Stopped, "notebook");
    }
    return judge(notebook, book, progress) ? Result<Notebook>(std::move(notebook))
                                           : refuse(Fault::Stopped, "notebook");
}

}  // namespace wm::notebook
