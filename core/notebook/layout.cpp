// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/layout.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/notebook/cell_words.h"
#include "core/notebook/used.h"
#include "core/words/folding.h"

namespace wm::notebook {

namespace {

constexpr std::size_t kLinesToTellBy = 2'000;

struct HeaderWord {
    std::string_view stem;
    Column column;
};

// In order: the first that fits decides, so what is more particular stands further up. A stem with a "=" in
// front must be the whole header.
constexpr std::array kHeaderWords{HeaderWord{"=km", Column::Distance},
                                  HeaderWord{"=h", Column::Hours},
                                  HeaderWord{"=hm", Column::Meter},
                                  HeaderWord{"=bh", Column::Meter},
                                  HeaderWord{"=min", Column::Minutes},
                                  HeaderWord{"=mc", Column::Machine},
                                  HeaderWord{"zahler", Column::Meter},
                                  HeaderWord{"hour meter", Column::Meter},
                                  HeaderWord{"hourmeter", Column::Meter},
                                  HeaderWord{"engine hours", Column::Meter},
                                  HeaderWord{"betriebsstunden", Column::Meter},
                                  HeaderWord{"motorstunden", Column::Meter},
                                  HeaderWord{"compteur", Column::Meter},
                                  HeaderWord{"contaore", Column::Meter},
                                  HeaderWord{"horometro", Column::Meter},
                                  HeaderWord{"meter", Column::Meter},
                                  HeaderWord{"reading", Column::Meter},
                                  HeaderWord{"counter", Column::Meter},
                                  HeaderWord{"mechanic", Column::Unused},
                                  HeaderWord{"mechaniker", Column::Unused},
                                  HeaderWord{"date", Column::Date},
                                  HeaderWord{"datum", Column::Date},
                                  HeaderWord{"fecha", Column::Date},
                                  HeaderWord{"=data", Column::Date},
                                  HeaderWord{"=tag", Column::Date},
                                  HeaderWord{"=day", Column::Date},
                                  HeaderWord{"=jour", Column::Date},
                                  HeaderWord{"=when", Column::Date},
                                  HeaderWord{"=wann", Column::Date},
                                  HeaderWord{"=dia", Column::Date},
                                  HeaderWord{"minut", Column::Minutes},
                                  HeaderWord{"machine", Column::Machine},
                                  HeaderWord{"maschine", Column::Machine},
                                  HeaderWord{"bike", Column::Machine},
                                  HeaderWord{"motorrad", Column::Machine},
                                  HeaderWord{"motorcycle", Column::Machine},
                                  HeaderWord{"fahrzeug", Column::Machine},
                                  HeaderWord{"macchina", Column::Machine},
                                  HeaderWord{"maquina", Column::Machine},
                                  HeaderWord{"=moto", Column::Machine},
                                  HeaderWord{"laufe", Column::Starts},
                                  HeaderWord{"starts", Column::Starts},
                                  HeaderWord{"motos", Column::Starts},
                                  HeaderWord{"manches", Column::Starts},
                                  HeaderWord{"departs", Column::Starts},
                                  HeaderWord{"starten", Column::Starts},
                                  HeaderWord{"salidas", Column::Starts},
                                  HeaderWord{"partenze", Column::Starts},
                                  HeaderWord{"heats", Column::Starts},
                                  HeaderWord{"ground", Column::Ground},
                                  HeaderWord{"boden", Column::Ground},
                                  HeaderWord{"untergrund", Column::Ground},
                                  HeaderWord{"surface", Column::Ground},
                                  HeaderWord{"terrain", Column::Ground},
                                  HeaderWord{"terreno", Column::Ground},
                                  HeaderWord{"suelo", Column::Ground},
                                  HeaderWord{"conditions", Column::Ground},
                                  HeaderWord{"=sol", Column::Ground},
                                  HeaderWord{"wash", Column::Wash},
                                  HeaderWord{"wasch", Column::Wash},
                                  HeaderWord{"lavage", Column::Wash},
                                  HeaderWord{"lavado", Column::Wash},
                                  HeaderWord{"lavaggio", Column::Wash},
                                  HeaderWord{"crash", Column::Crash},
                                  HeaderWord{"sturz", Column::Crash},
                                  HeaderWord{"chute", Column::Crash},
                                  HeaderWord{"caduta", Column::Crash},
                                  HeaderWord{"caida", Column::Crash},
                                  HeaderWord{"rider", Column::Rider},
                                  HeaderWord{"fahrer", Column::Rider},
                                  HeaderWord{"pilot", Column::Rider},
                                  HeaderWord{"=who", Column::Rider},
                                  HeaderWord{"=wer", Column::Rider},
                                  HeaderWord{"used", Column::Used},
                                  HeaderWord{"parts", Column::Used},
                                  HeaderWord{"teile", Column::Used},
                                  HeaderWord{"material", Column::Used},
                                  HeaderWord{"verbrauch", Column::Used},
                                  HeaderWord{"pieces", Column::Used},
                                  HeaderWord{"piezas", Column::Used},
                                  HeaderWord{"ricambi", Column::Used},
                                  HeaderWord{"consum", Column::Used},
                                  HeaderWord{"=job", Column::Job},
                                  HeaderWord{"jobs", Column::Job},
                                  HeaderWord{"work", Column::Job},
                                  HeaderWord{"=task", Column::Job},
                                  HeaderWord{"arbeit", Column::Job},
                                  HeaderWord{"wartung", Column::Job},
                                  HeaderWord{"service", Column::Job},
                                  HeaderWord{"maintenance", Column::Job},
                                  HeaderWord{"travail", Column::Job},
                                  HeaderWord{"travaux", Column::Job},
                                  HeaderWord{"entretien", Column::Job},
                                  HeaderWord{"trabajo", Column::Job},
                                  HeaderWord{"lavoro", Column::Job},
                                  HeaderWord{"what was done", Column::Job},
                                  HeaderWord{"=done", Column::Job},
                                  HeaderWord{"note", Column::Note},
                                  HeaderWord{"remark", Column::Note},
                                  HeaderWord{"comment", Column::Note},
                                  HeaderWord{"kommentar", Column::Note},
                                  HeaderWord{"bemerkung", Column::Note},
                                  HeaderWord{"notiz", Column::Note},
                                  HeaderWord{"anmerkung", Column::Note},
                                  HeaderWord{"remarque", Column::Note},
                                  HeaderWord{"=nota", Column::Note},
                                  HeaderWord{"notas", Column::Note},
                                  HeaderWord{"observa", Column::Note},
                                  HeaderWord{"distance", Column::Distance},
                                  HeaderWord{"strecke", Column::Distance},
                                  HeaderWord{"kilomet", Column::Distance},
                                  HeaderWord{"hours", Column::Hours},
                                  HeaderWord{"stunden", Column::Hours},
                                  HeaderWord{"fahrzeit", Column::Hours},
                                  HeaderWord{"dauer", Column::Hours},
                                  HeaderWord{"heures", Column::Hours},
                                  HeaderWord{"duree", Column::Hours},
                                  HeaderWord{"horas", Column::Hours},
                                  HeaderWord{"time", Column::Hours},
                                  HeaderWord{"duration", Column::Hours},
                                  HeaderWord{"=ore", Column::Hours},
                                  HeaderWord{"=std", Column::Hours},
                                  HeaderWord{"=hrs", Column::Hours},
                                  HeaderWord{"=zeit", Column::Hours},
                                  HeaderWord{"ridden", Column::Hours},
                                  HeaderWord{"what", Column::What},
                                  HeaderWord{"kind", Column::What},
                                  HeaderWord{"type", Column::What},
                                  HeaderWord{"=typ", Column::What},
                                  HeaderWord{"=art", Column::What},
                                  HeaderWord{"=was", Column::What},
                                  HeaderWord{"=quoi", Column::What},
                                  HeaderWord{"tipo", Column::What},
                                  HeaderWord{"activity", Column::What},
                                  HeaderWord{"aktivitat", Column::What},
                                  HeaderWord{"session", Column::What},
                                  HeaderWord{"outing", Column::What}};

// The facts about one column that its content tells.
struct Content {
    std::size_t filled = 0;
    std::size_t dates = 0;
    std::size_t numbers = 0;
    std::size_t grounds = 0;
    std::size_t doings = 0;
    std::size_t washings = 0;
    std::size_t used = 0;
    std::size_t known = 0;    ///< names of machines
    std::size_t repeats = 0;  ///< cells whose text stood further up already
    std::size_t rises = 0;    ///< numbers not under the one before
    double sum = 0;
    std::size_t letters = 0;
};

Content contentOf(const Table& table, std::size_t column, const std::set<std::string>& machines) {
    Content content;
    std::set<std::string> seen;
    double last = 0;
    for (std::size_t at = 0; at < std::min(table.lines.size(), kLinesToTellBy); ++at) {
        const std::string_view cell = cellAt(table.lines[at], column);
        if (cell.empty())
            continue;
        ++content.filled;
        content.letters += cell.size();
        const std::string plain = words::folded(cell);
        content.repeats += seen.insert(plain).second ? 0U : 1U;
        content.known += machines.contains(plain) ? 1U : 0U;
        const bool isDate = looksLikeDate(cell) || (cell.size() == 5 && readDate(cell, DateForm::DayFirst));
        content.dates += isDate ? 1U : 0U;
        if (const auto hours = readHours(cell, cell.find(',') == std::string_view::npos ? '.' : ',')) {
            const double value = static_cast<double>(hours->hours.count()) / 100;
            ++content.numbers;
            content.rises += value >= last ? 1U : 0U;
            content.sum += value;
            last = value;
            continue;
        }
        content.grounds += groundNamed(cell) ? 1U : 0U;
        content.doings += doingNamed(cell) ? 1U : 0U;
        content.washings += washingNamed(cell).value_or(Washing::None) != Washing::None ? 1U : 0U;
        content.used += readsAsUsed(cell) ? 1U : 0U;
    }
    return content;
}

bool most(std::size_t part, std::size_t of) {
    return of > 0 && part * 10 >= of * 7;
}

Column columnHolding(const Content& c) {
    if (most(c.dates, c.filled))
        return Column::Date;
    if (most(c.known, c.filled))
        return Column::Machine;
    if (most(c.numbers, c.filled)) {
        const double mean = c.sum / static_cast<double>(c.numbers);
        return mean > 12 ? Column::Meter : Column::Hours;
    }
    if (most(c.used, c.filled))
        return Column::Used;
    if (most(c.grounds, c.filled))
        return Column::Ground;
    if (most(c.washings, c.filled))
        return Column::Wash;
    if (most(c.doings, c.filled))
        return Column::What;
    if (c.filled > 3 && c.repeats * 10 >= c.filled * 7 && c.letters < c.filled * 25)
        return Column::Machine;
    return c.filled > 0 ? Column::Note : Column::Unused;
}

void set(Layout& layout, std::size_t at, Column column) {
    const bool taken = column != Column::Unused && layout.at(column).has_value();
    layout.columns[at] = taken ? Column::Unused : column;
}

void guessByContent(Layout& layout, const Table& table, const std::set<std::string>& machines) {
    for (std::size_t at = 0; at < layout.columns.size(); ++at)
        if (layout.columns[at] == Column::Unused && (at >= table.header.size() || table.header[at].empty()))
            set(layout, at, columnHolding(contentOf(table, at, machines)));
    // A header nobody knows, over the only column that can be what every line needs.
    for (const Column needed : {Column::Date, Column::Machine, Column::Meter, Column::Hours})
        for (std::size_t at = 0; at < layout.columns.size() && !layout.at(needed); ++at)
            if (layout.columns[at] == Column::Unused &&
                columnHolding(contentOf(table, at, machines)) == needed)
                layout.columns[at] = needed;
    // What reads like hours but is far more than a day's riding is what the meter showed.
    const auto hours = layout.at(Column::Hours);
    if (hours && !layout.at(Column::Meter)) {
        const Content content = contentOf(table, *hours, machines);
        if (content.numbers > 2 && content.sum / static_cast<double>(content.numbers) > 14 &&
            content.rises * 10 > content.numbers * 6 && !layout.at(Column::Job))
            layout.columns[*hours] = Column::Meter;
    }
}

char decimalOf(const Layout& layout, const Table& table) {
    std::map<char, std::size_t> seen;
    for (const Column column : {Column::Hours, Column::Meter, Column::Distance})
        for (std::size_t at = 0; at < std::min(table.lines.size(), kLinesToTellBy); ++at) {
            const std::string_view cell = cellAt(table.lines[at], layout.at(column));
            const auto mark = cell.find_last_of(".,");
            const bool ends =
                mark != std::string_view::npos && mark + 3 >= cell.size() && mark + 1 < cell.size();
            if (ends && isPlainNumber(cell.substr(mark + 1)))
                ++seen[cell[mark]];
        }
    if (seen[','] == seen['.'])
        return table.separator == ',' ? '.' : ',';
    return seen[','] > seen['.'] ? ',' : '.';
}

// What decides between day and month first: a figure over twelve, else the order of the lines.
void findDates(Layout& layout, const Table& table) {
    std::map<DateForm, std::size_t> seen;
    std::size_t fallsByDay = 0;
    std::size_t fallsByMonth = 0;
    std::size_t apart = 0;
    bool dotted = false;
    std::optional<ReadDate> lastDay;
    std::optional<ReadDate> lastMonth;
    for (std::size_t at = 0; at < std::min(table.lines.size(), kLinesToTellBy); ++at) {
        const std::string_view cell = cellAt(table.lines[at], layout.at(Column::Date));
        const auto byDay = readDate(cell, DateForm::DayFirst);
        const auto byMonth = readDate(cell, DateForm::MonthFirst);
        if (!byDay || !byMonth)
            continue;
        dotted = dotted || cell.find('.') != std::string_view::npos;
        if (byDay->bothWays)
            ++apart;
        else
            ++seen[byDay->form];
        fallsByDay += lastDay && byDay->date < lastDay->date ? 1U : 0U;
        fallsByMonth += lastMonth && byMonth->date < lastMonth->date ? 1U : 0U;
        lastDay = byDay;
        lastMonth = byMonth;
    }
    const std::size_t decided = seen[DateForm::DayFirst] + seen[DateForm::MonthFirst] + apart;
    if (decided <= std::max(seen[DateForm::YearFirst], seen[DateForm::Serial])) {
        layout.dates =
            seen[DateForm::Serial] > seen[DateForm::YearFirst] ? DateForm::Serial : DateForm::YearFirst;
        return;
    }
    const std::size_t day = seen[DateForm::DayFirst];
    const std::size_t month = seen[DateForm::MonthFirst];
    const bool monthFirst = day != month ? month > day : !dotted && fallsByMonth < fallsByDay;
    layout.dates = monthFirst ? DateForm::MonthFirst : DateForm::DayFirst;
    layout.datesUnsure = apart > 0 && day == month && !dotted && fallsByDay == fallsByMonth;
}

void findHours(Layout& layout, const Table& table) {
    std::map<HoursForm, std::size_t> seen;
    for (std::size_t at = 0; at < std::min(table.lines.size(), kLinesToTellBy); ++at)
        if (const auto read = readHours(cellAt(table.lines[at], layout.at(Column::Hours)), layout.decimal))
            ++seen[read->form];
    for (const auto& [form, count] : seen)
        if (count > seen[layout.hours])
            layout.hours = form;
    // A column of whole figures around ninety is minutes, whatever its header says.
    double sum = 0;
    std::size_t numbers = 0;
    for (const TableLine& line : table.lines) {
        const auto whole = readNumber(cellAt(line, layout.at(Column::Hours)), layout.decimal, 0);
        numbers += whole ? 1U : 0U;
        sum += whole ? static_cast<double>(*whole) : 0;
    }
    if (layout.hours == HoursForm::Number && numbers * 10 > seen[HoursForm::Number] * 8 && numbers > 3 &&
        sum / static_cast<double>(numbers) > 24)
        layout.hours = HoursForm::Minutes;
}

bool oftenEmpty(const Layout& layout, const Table& table, Column column) {
    std::size_t empty = 0;
    for (const TableLine& line : table.lines)
        empty += cellAt(line, layout.at(column)).empty() ? 1U : 0U;
    return layout.at(column) && empty > 2 && empty * 20 >= table.lines.size();
}

}  // namespace

std::optional<std::size_t> Layout::at(Column column) const {
    const auto found = std::find(columns.begin(), columns.end(), column);
    return found == columns.end() ? std::nullopt
                                  : std::optional(static_cast<std::size_t>(found - columns.begin()));
}

Column columnNamed(std::string_view header) {
    const std::string name = words::folded(header);
    if (name.empty())
        return Column::Unused;
    for (const HeaderWord& word : kHeaderWords)
        if (word.stem.starts_with('=') ? name == word.stem.substr(1)
                                       : name.find(word.stem) != std::string::npos)
            return word.column;
    return Column::Unused;
}

void findForms(Layout& layout, const Table& table) {
    layout.decimal = decimalOf(layout, table);
    findDates(layout, table);
    findHours(layout, table);
    layout.machinesCarryOn = oftenEmpty(layout, table, Column::Machine);
    layout.datesCarryOn = oftenEmpty(layout, table, Column::Date);
}

Layout guessLayout(const Table& table, const std::vector<std::string>& machines) {
    Layout layout;
    layout.columns.resize(table.header.size());
    std::set<std::string> known;
    for (const std::string& name : machines)
        known.insert(words::folded(name));
    for (std::size_t at = 0; at < table.header.size(); ++at)
        set(layout, at, columnNamed(table.header[at]));
    guessByContent(layout, table, known);
    findForms(layout, table);
    return layout;
}

std::string headerKey(const Table& table) {
    std::string key;
    for (const std::string& name : table.header)
        key += words::folded(name) + ';';
    return key.size() == table.header.size() ? std::string{} : key;
}

std::string_view cellAt(const TableLine& line, std::optional<std::size_t> column) {
    return column && *column < line.cells.size() ? std::string_view(line.cells[*column]) : std::string_view{};
}

}  // namespace wm::notebook
