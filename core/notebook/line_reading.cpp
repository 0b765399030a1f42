// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/notebook/cell_words.h"
#include "core/notebook/judging.h"
#include "core/notebook/plain_text.h"

namespace wm::notebook {

namespace {

constexpr std::int64_t kMostHoursADay = 24 * 100;
constexpr std::int64_t kMostMinutes = 24 * 60;

void addToNote(Facts& facts, std::string_view what, std::string_view cell) {
    facts.note +=
        (facts.note.empty() ? "" : "; ") + std::string(what) + (what.empty() ? "" : " ") + std::string(cell);
}

// The first figure in a text: "new meter, old one showed 44,4".
std::optional<units::Hours> figureIn(std::string_view text, char decimal) {
    for (const std::string& word : base::split(text, ' ')) {
        std::string_view plain = word;
        while (!plain.empty() && (plain.back() == '.' || plain.back() == ',' || plain.back() == ')' ||
                                  plain.back() == 'h' || plain.back() == ';'))
            plain.remove_suffix(1);
        if (!plain.empty() && plain[0] >= '0' && plain[0] <= '9')
            if (const auto value = readNumber(plain, decimal, 2))
                return units::Hours{*value};
    }
    return std::nullopt;
}

std::string formText(HoursForm form, units::Hours hours, char decimal) {
    if (form == HoursForm::Clock)
        return std::to_string(hours.count() / 100) + ":" + (hours.count() % 100 * 60 / 100 < 10 ? "0" : "") +
               std::to_string(hours.count() % 100 * 60 / 100);
    return hoursIn(hours, decimal);
}

bool anyFormula(const TableLine& cells, const Layout& layout) {
    for (std::size_t at = 0; at < cells.cells.size() && at < layout.columns.size(); ++at)
        if (layout.columns[at] != Column::Unused && layout.columns[at] != Column::Note &&
            isFormula(cells.cells[at]))
            return true;
    return false;
}

std::string firstFormula(const TableLine& cells) {
    for (const std::string& cell : cells.cells)
        if (isFormula(cell))
            return cell;
    return {};
}

bool isTotal(const TableLine& cells) {
    for (std::size_t at = 0; at < std::min<std::size_t>(cells.cells.size(), 3); ++at)
        if (saysTotal(cells.cells[at]))
            return true;
    return false;
}

// A note with the separator in it and no quotes around: what is left over belongs to the note, if that is the
// last column.
TableLine withWholeNote(TableLine cells, const Layout& layout, char separator) {
    const std::size_t columns = layout.columns.size();
    if (cells.cells.size() <= columns || layout.at(Column::Note) != columns - 1)
        return cells;
    for (std::size_t at = columns; at < cells.cells.size(); ++at)
        if (!cells.cells[at].empty())
            cells.cells[columns - 1] += std::string(1, separator) + " " + cells.cells[at];
    cells.cells.resize(columns);
    return cells;
}

}  // namespace

void CellReading::read(const TableLine& given, const Above& above, Line& line) const {
    const TableLine cells = withWholeNote(given, layout_, ',');
    for (std::size_t at = layout_.columns.size(); at < cells.cells.size(); ++at)
        if (!cells.cells[at].empty()) {
            line.remark(Defect::CellsTooMany, std::to_string(cells.cells.size()),
                        std::to_string(layout_.columns.size()));
            break;
        }
    if (anyFormula(cells, layout_)) {
        line.remark(isTotal(cells) ? Defect::Total : Defect::Formula, firstFormula(cells));
        return;
    }
    if (isTotal(cells) && !readDate(cellAt(cells, layout_.at(Column::Date)), layout_.dates)) {
        line.remark(Defect::Total, cells.cells.front());
        return;
    }
    line.facts.note = cellAt(cells, layout_.at(Column::Note));
    line.facts.rider = base::trimmed(cellAt(cells, layout_.at(Column::Rider)));
    const bool machineKnown = readMachine(cells, above, line);
    if (!readDay(cells, above, line) || !machineKnown)
        return;
    readHoursCell(cells, line);
    readMeterCell(cells, line);
    readCircumstances(cells, line);
    readSort(cells, line);
}

bool CellReading::readDay(const TableLine& cells, const Above& above, Line& line) const {
    const std::string_view cell = cellAt(cells, layout_.at(Column::Date));
    if (cell.empty() || saysSame(cell)) {
        if (!above.date) {
            line.remark(Defect::DateUnreadable, std::string(cell));
            return false;
        }
        line.facts.date = *above.date;
        if (!layout_.datesCarryOn && cell.empty())
            line.remark(Defect::DateMissing, {}, dateText(line.facts.date, layout_.dates));
        return true;
    }
    const auto year = above.date ? std::optional(above.date->year()) : std::nullopt;
    const auto read = readDate(cell, layout_.dates, year);
    if (!read) {
        line.remark(Defect::DateUnreadable, std::string(cell));
        return false;
    }
    line.facts.date = read->date;
    const std::string likely = dateText(read->date, layout_.dates);
    if (read->yearAdded)
        line.remark(Defect::NoYear, std::string(cell), likely);
    else if (read->form != layout_.dates)
        line.remark(Defect::DateForm, std::string(cell), likely);
    return true;
}

bool CellReading::readMachine(const TableLine& cells, const Above& above, Line& line) const {
    const auto column = layout_.at(Column::Machine);
    if (onlyMachine_ && !column) {
        line.facts.machines = {*onlyMachine_};
        return true;
    }
    const std::string_view cell = cellAt(cells, column);
    if (base::trimmed(cell).empty() || saysSame(cell)) {
        const bool one = names_.machines().size() == 1;
        if (!one && above.machines.empty()) {
            line.remark(Defect::NameUnknown, std::string(cell));
            return false;
        }
        line.facts.machines = one ? std::vector<std::size_t>{0} : above.machines;
        if (!one && cell.empty() && !layout_.machinesCarryOn)
            line.remark(Defect::NameMissing, {}, names_.machines()[line.facts.machines[0]].name);
        return true;
    }
    const NameReading read = names_.reading(cell);
    line.facts.machines = read.machines;
    std::string likely;
    for (const std::size_t machine : read.machines)
        likely += (likely.empty() ? "" : ", ") + names_.machines()[machine].name;
    switch (read.fit) {
        case NameFit::Same:
        case NameFit::New:
            return true;
        case NameFit::Otherwise:
            line.remark(Defect::NameOtherwise, std::string(cell), likely);
            return true;
        case NameFit::Near:
            line.remark(Defect::NameNear, std::string(cell), likely);
            return true;
        case NameFit::Rare:
            line.remark(Defect::NameRare, std::string(cell), likely);
            return true;
        case NameFit::Two:
            line.remark(Defect::TwoMachines, std::string(cell), likely);
            return true;
        case NameFit::Unknown:
            break;
    }
    line.remark(Defect::NameUnknown, std::string(cell));
    return false;
}

void CellReading::readHoursCell(const TableLine& cells, Line& line) const {
    const std::string_view cell = cellAt(cells, layout_.at(Column::Hours));
    if (cell.empty() || saysUnknown(cell))
        return;
    auto read = readHours(cell, layout_.decimal);
    if (!read) {
        line.remark(Defect::HoursUnreadable, std::string(cell));
        return;
    }
    if (read->hours < units::Hours{}) {
        line.remark(Defect::Negative, std::string(cell));
        return;
    }
    const bool wasNumber = read->form == HoursForm::Number;
    if (wasNumber && layout_.hours == HoursForm::Minutes)
        read->hours = units::Hours{(read->hours.count() + 30) / 60};
    line.facts.hours = read->hours;  // however many: the meter may tell what was meant
    const auto otherwise = read->form != layout_.hours && !wasNumber && read->form != HoursForm::About;
    const bool lost = wasNumber && layout_.hours == HoursForm::Clock;
    if (otherwise || lost) {
        line.remark(Defect::HoursForm, std::string(cell),
                    formText(layout_.hours, read->hours, layout_.decimal));
    }
}

void CellReading::readMeterCell(const TableLine& cells, Line& line) const {
    const std::string_view cell = cellAt(cells, layout_.at(Column::Meter));
    if (cell.empty() || saysUnknown(cell))
        return;
    const auto read = readHours(cell, layout_.decimal);
    const bool clock = read && (read->form == HoursForm::Clock || read->form == HoursForm::Minutes);
    if (!read || clock || read->hours < units::Hours{})
        line.remark(Defect::MeterUnreadable, std::string(cell));
    else
        line.facts.meter = read->hours;
}

void CellReading::readCircumstances(const TableLine& cells, Line& line) const {
    Facts& facts = line.facts;
    const auto unknown = [&](const char* what, std::string_view cell) {
        line.remark(Defect::UnknownWord, std::string(cell));
        addToNote(facts, what, cell);
    };
    if (const auto cell = cellAt(cells, layout_.at(Column::Ground)); !cell.empty() && !saysUnknown(cell)) {
        if (const auto ground = groundNamed(cell))
            facts.ground = *ground;
        else
            unknown("ground:", cell);
    }
    if (const auto cell = cellAt(cells, layout_.at(Column::Starts)); !cell.empty() && !saysUnknown(cell)) {
        if (const auto starts = readNumber(cell, layout_.decimal, 0);
            starts && *starts >= 0 && *starts <= 100)
            facts.starts = *starts;
        else
            unknown("starts:", cell);
    }
    if (const auto cell = cellAt(cells, layout_.at(Column::Distance)); !cell.empty() && !saysUnknown(cell)) {
        if (const auto metres = readNumber(cell, layout_.decimal, 3);
            metres && *metres >= 0 && *metres < 2'000'000)
            facts.distance = units::Metres{*metres};
        else
            unknown("distance:", cell);
    }
    if (const auto cell = cellAt(cells, layout_.at(Column::Wash)); !cell.empty()) {
        if (const auto washing = washingNamed(cell)) {
            facts.washed = *washing != Washing::None;
            facts.pressure = *washing == Washing::Pressure;
        } else {
            unknown("wash:", cell);
        }
    }
    if (const auto cell = cellAt(cells, layout_.at(Column::Crash)); !cell.empty()) {
        const auto crashed = yesOrNo(cell);
        facts.crashed = crashed.value_or(true);
        if (!crashed)
            addToNote(facts, {}, cell);
    }
}

void CellReading::readSort(const TableLine& cells, Line& line) const {
    Facts& facts = line.facts;
    const std::string_view job = cellAt(cells, layout_.at(Column::Job));
    const std::string_view what = cellAt(cells, layout_.at(Column::What));
    const auto doing = doingNamed(what);
    const bool rode = facts.hours || facts.distance || line.has(Defect::HoursUnreadable);
    if (!base::trimmed(job).empty()) {
        facts.job = job;
        readJob(cells, line);
        return;
    }
    if (doing == Doing::NewMeter || (!rode && facts.meter && (!doing || doing == Doing::Reading) &&
                                     (saysNewMeter(facts.note) || saysNewMeter(what)))) {
        facts.sort = FactSort::Reading;
        facts.event = usage::MeterEvent::Replaced;
        facts.before = figureIn(facts.note, layout_.decimal);
        facts.meter = facts.meter.value_or(units::Hours{});
        line.remark(Defect::NewMeter, {},
                    facts.before ? hoursIn(*facts.before, layout_.decimal) : std::string{});
        return;
    }
    if (doing == Doing::Race || doing == Doing::Other)
        facts.kind = doing == Doing::Race ? usage::OutingKind::Race : usage::OutingKind::Other;
    const bool riding = doing == Doing::Practice || doing == Doing::Race || doing == Doing::Other;
    if (rode || riding)
        facts.sort = FactSort::Outing;
    else if (doing == Doing::Crash || (facts.crashed && !facts.meter))
        facts.sort = FactSort::Crash;
    else if (doing == Doing::Wash || (facts.washed && !facts.meter))
        facts.sort = FactSort::Wash;
    else if (facts.meter)
        facts.sort = FactSort::Reading;
    else if (!what.empty() && !doing)
        facts.sort = FactSort::Job;
    else
        line.remark(Defect::NothingSaid);
    if (facts.sort == FactSort::Wash && washingNamed(what) == Washing::Pressure)
        facts.pressure = true;
    if (facts.sort == FactSort::Job) {
        facts.job = what;
        readJob(cells, line);
    } else if (!what.empty() && !doing) {
        line.remark(Defect::UnknownWord, std::string(what));
        addToNote(facts, {}, what);
    }
}

void CellReading::readJob(const TableLine& cells, Line& line) const {
    Facts& facts = line.facts;
    facts.sort = FactSort::Job;
    facts.washed = facts.crashed = false;
    if (const auto cell = cellAt(cells, layout_.at(Column::Minutes)); !cell.empty() && !saysUnknown(cell)) {
        const auto whole = readNumber(cell, layout_.decimal, 0);
        const auto time = readHours(cell, layout_.decimal);
        if (whole && *whole >= 0 && *whole <= kMostMinutes) {
            facts.minutes = units::Minutes{*whole};
        } else if (time && time->hours.count() >= 0 && time->hours.count() <= kMostHoursADay) {
            facts.minutes = units::Minutes{(time->hours.count() * 60 + 50) / 100};
            if (time->form == HoursForm::Number)
                line.remark(Defect::MinutesUnit, std::string(cell), std::to_string(facts.minutes->count()));
        } else {
            line.remark(Defect::UnknownWord, std::string(cell));
            addToNote(facts, "minutes:", cell);
        }
    }
    const std::string_view used = cellAt(cells, layout_.at(Column::Used));
    if (used.empty() || saysUnknown(used))
        return;
    if (auto parts = readUsed(used, layout_.decimal)) {
        for (const UsedPart& part : *parts)
            if (part.unitGuessed)
                line.remark(Defect::UsedUnit, std::string(used),
                            part.name + " " + std::to_string(part.amount) +
                                (part.unit == upkeep::Unit::Gram ? " g" : " ml"));
        facts.used = std::move(*parts);
    } else {
        line.remark(Defect::UsedUnreadable, std::string(used));
        addToNote(facts, "used:", used);
    }
}

}  // namespace wm::notebook
