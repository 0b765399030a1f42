// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/notebook/habits.h"

#include <algorithm>
#include <array>
#include <map>
#include <random>

namespace wm::notebook {

namespace {

using Random = std::mt19937;

std::size_t below(Random& random, std::size_t most) {
    return std::uniform_int_distribution<std::size_t>(0, most - 1)(random);
}

constexpr std::array<const char*, 2> kMachines{"Avocet 300", "Dunlin 85"};

const std::map<std::string, std::array<const char*, 7>> kHeaders{
    {"en", {"Date", "Bike", "What", "Hours", "Hour meter", "Wash", "Remarks"}},
    {"de", {"Datum", "Motorrad", "Was", "Fahrzeit", "Zählerstand", "Wäsche", "Bemerkung"}},
    {"fr", {"Jour", "Moto", "Type", "Durée", "Compteur", "Lavage", "Remarque"}},
    {"it", {"Data", "Moto", "Tipo", "Ore", "Contaore", "Lavaggio", "Nota"}},
    {"es", {"Fecha", "Moto", "Tipo", "Horas", "Horómetro", "Lavado", "Observaciones"}}};
const std::map<std::string, std::array<const char*, 4>> kWords{
    {"en", {"practice", "race", "jet wash", "wash"}},
    {"de", {"Training", "Rennen", "Hochdruck", "gewaschen"}},
    {"fr", {"entraînement", "course", "haute pression", "lavage"}},
    {"it", {"allenamento", "gara", "alta pressione", "lavaggio"}},
    {"es", {"entrenamiento", "carrera", "presión", "lavado"}},
    {"none", {"practice", "race", "pressure", "wash"}}};

// One ride in cells: date, machine, what, hours, meter, wash, note.
using Cells = std::array<std::string, 7>;

std::string two(int value) {
    return (value < 10 ? "0" : "") + std::to_string(value);
}

std::string dateCell(calendar::Date date, const std::string& form) {
    constexpr std::array<const char*, 12> kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                  "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    if (form == "d.m.y")
        return two(date.day()) + "." + two(date.month()) + "." + std::to_string(date.year());
    if (form == "d/m/y")
        return std::to_string(date.day()) + "/" + std::to_string(date.month()) + "/" +
               std::to_string(date.year() % 100);
    if (form == "m/d/y")
        return std::to_string(date.month()) + "/" + std::to_string(date.day()) + "/" +
               std::to_string(date.year());
    if (form == "serial")
        return std::to_string(date.daysSinceEpoch() + 25'569);
    if (form == "y-m-d time")
        return date.iso() + " 00:00:00";
    if (form == "d month y")
        return std::to_string(date.day()) + " " + kMonths[static_cast<std::size_t>(date.month() - 1)] + " " +
               std::to_string(date.year());
    return date.iso();
}

std::string number(std::int64_t hundredths, char decimal) {
    return std::to_string(hundredths / 100) + decimal + std::to_string(hundredths / 10 % 10);
}

std::string hoursCell(std::int64_t hundredths, const Habit& habit) {
    const std::int64_t minutes = (hundredths * 60 + 50) / 100;
    if (habit.hours == "clock")
        return std::to_string(minutes / 60) + ":" + two(static_cast<int>(minutes % 60));
    if (habit.hours == "minutes")
        return std::to_string(minutes);
    return number(hundredths, habit.decimal) + (habit.hours == "unit" ? " h" : "");
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return text;
}

struct Ride {
    Meant meant{};
    Cells cells{};
};

std::vector<Ride> season(const Habit& habit, Random& random) {
    std::vector<Ride> rides;
    std::array<std::int64_t, 2> meter{1450, 9120};
    const auto& words = kWords.at(habit.language);
    auto date = *calendar::makeDate(2025, 3, 1);
    for (int week = 0; week < 38; ++week, date = date.plusDays(7))
        for (std::size_t machine = 0; machine < 2; ++machine) {
            if (below(random, 10) < 2)
                continue;
            const auto hours = static_cast<std::int64_t>(6 + below(random, 24)) * 10;
            meter[machine] += hours;
            if (below(random, 100) < 6)
                meter[machine] += static_cast<std::int64_t>(4 + below(random, 12)) * 10;
            Meant meant{kMachines[machine], date, hours};
            if (below(random, 10) < 8)
                meant.meter = meter[machine] + (below(random, 5) == 0 ? 10 : 0);
            meter[machine] = meant.meter.value_or(meter[machine]);
            const std::string note = below(random, 5) != 0 ? ""
                                     : habit.commasInNotes ? "long, hot day, new grips"
                                                           : "front pushed a little";
            rides.push_back({meant,
                             {dateCell(date, habit.dates),
                              habit.otherCase ? lower(kMachines[machine]) : kMachines[machine],
                              words[below(random, 4) == 0 ? 1 : 0], hoursCell(hours, habit),
                              meant.meter ? number(*meant.meter, habit.decimal) : "",
                              below(random, 3) == 0   ? words[2]
                              : below(random, 3) == 0 ? words[3]
                                                      : "",
                              note}});
        }
    return rides;
}

void swapFigures(std::string& cell) {
    for (std::size_t at = 0; at + 1 < cell.size(); ++at)
        if (cell[at] != cell[at + 1] && cell[at] >= '0' && cell[at] <= '9' && cell[at + 1] >= '0' &&
            cell[at + 1] <= '9') {
            std::swap(cell[at], cell[at + 1]);
            return;
        }
}

// Does what a hand does to one line; false if this line does not lend itself to it.
bool plant(Ride& ride, const std::string& defect, const Habit& habit) {
    Cells& cells = ride.cells;
    Meant& meant = ride.meant;
    if (defect == "figures swapped" && meant.meter && *meant.meter > 2000) {
        const std::string before = cells[4];
        swapFigures(cells[4]);
        if (cells[4] == before)
            return false;
    } else if (defect == "mark lost" && meant.meter) {
        std::erase(cells[4], habit.decimal);
    } else if (defect == "year ahead") {
        cells[0] = dateCell(*calendar::makeDate(2035, meant.date.month(), std::min(meant.date.day(), 28)),
                            habit.dates);
        meant.date = *calendar::makeDate(2025, meant.date.month(), std::min(meant.date.day(), 28));
    } else if (defect == "other date form") {
        cells[0] =
            dateCell(meant.date, habit.dates == "y-m-d" || habit.dates == "y-m-d time" ? "d.m.y" : "y-m-d");
    } else if (defect == "day and month swapped" && meant.date.day() <= 12 &&
               std::abs(meant.date.day() - meant.date.month()) > 1) {
        cells[0] = dateCell(*calendar::makeDate(2025, meant.date.day(), meant.date.month()), habit.dates);
    } else if (defect == "name mistyped") {
        cells[1].erase(2, 1);
    } else if (defect == "other spelling" && !habit.otherCase) {
        cells[1] = lower(cells[1]) + " ";
    } else if (defect == "two machines" && !meant.meter) {
        cells[1] = std::string(kMachines[0]) + " + " + kMachines[1];
    } else if (defect == "hours with unit" && habit.hours == "number") {
        cells[3] += "h";
    } else if (defect == "hours tenfold" && habit.hours == "number" && meant.meter && meant.hours >= 100) {
        cells[3] = std::to_string(meant.hours / 10);
    } else if (defect == "hours unreadable") {
        cells[3] = "see phone";
    } else if (defect == "formula") {
        cells[4] = "=E7+2";
    } else if (defect == "no date") {
        cells[0] = "some day";
    } else {
        return false;
    }
    meant.defect = defect;
    return true;
}

void plantAll(std::vector<Ride>& rides, const Habit& habit, Random& random) {
    const std::array<const char*, 13> kDefects{"figures swapped", "year ahead",   "other date form",
                                               "name mistyped",   "mark lost",    "day and month swapped",
                                               "other spelling",  "two machines", "hours with unit",
                                               "hours tenfold",   "formula",      "hours unreadable",
                                               "no date"};
    // Every fourth line at most, and none at the very ends, so that a defect is to be seen by its neighbours.
    std::size_t at = 4 + below(random, 3);
    const std::size_t first = below(random, kDefects.size());
    for (std::size_t defect = 0; defect < kDefects.size(); ++defect)
        for (std::size_t tries = 0; tries < 6 && at + 4 < rides.size(); ++tries)
            if (plant(rides[at++], kDefects[(first + defect) % kDefects.size()], habit)) {
                at += 3;
                break;
            }
    const std::size_t twice = rides.size() - 3;
    Ride again = rides[twice];
    if (again.meant.defect.empty()) {
        again.meant.defect = "twice";
        rides.insert(rides.begin() + static_cast<std::ptrdiff_t>(twice) + 1, again);
    }
}

std::string quoted(const std::string& cell, const Habit& habit, bool last) {
    const bool bareComma = habit.separator == ',' && last && habit.commasInNotes;
    if (bareComma || (cell.find(habit.separator) == std::string::npos && cell.find('"') == std::string::npos))
        return cell;
    return '"' + cell + '"';
}

std::string lineText(const Cells& cells, const Habit& habit) {
    std::vector<std::string> order(cells.begin(), cells.end());
    if (habit.dateLast)
        std::swap(order[0], order[5]);
    if (habit.strangeColumn)
        order.insert(order.begin() + 2, "7");
    if (habit.blankColumn)
        order.insert(order.begin() + 3, "");
    std::string text;
    for (std::size_t at = 0; at < order.size(); ++at)
        text += (at == 0 ? "" : std::string(1, habit.separator)) +
                quoted(order[at], habit, at + 1 == order.size());
    return text;
}

std::string headerText(const Habit& habit) {
    const auto& names = kHeaders.at(habit.language);
    Cells cells;
    std::copy(names.begin(), names.end(), cells.begin());
    std::string text = lineText(cells, habit);
    const std::string strange = std::string(1, habit.separator) + "7";
    if (const auto at = text.find(strange); habit.strangeColumn && at != std::string::npos)
        text.replace(at + 1, 1, "Box");
    return text;
}

// UTF-8 of at most two bytes a letter, as the words above are.
std::string encoded(const std::string& text, const std::string& encoding) {
    if (encoding == "utf-8")
        return text;
    if (encoding == "marked")
        return "\xEF\xBB\xBF" + text;
    std::string out = encoding == "utf-16le" ? "\xFF\xFE" : encoding == "utf-16be" ? "\xFE\xFF" : "";
    for (std::size_t at = 0; at < text.size(); ++at) {
        auto point = static_cast<unsigned char>(text[at]) + 0U;
        if (point >= 0xC0)
            point = (point & 0x1FU) << 6U | (static_cast<unsigned char>(text[++at]) & 0x3FU);
        if (encoding == "utf-16be")
            out += static_cast<char>(point >> 8U);
        out += static_cast<char>(point & 0xFFU);
        if (encoding == "utf-16le")
            out += static_cast<char>(point >> 8U);
    }
    return out;
}

// Of two lines that are the same, the second in the file is the one too many.
void reverse(std::vector<Ride>& rides) {
    std::reverse(rides.begin(), rides.end());
    for (std::size_t at = 0; at + 1 < rides.size(); ++at)
        if (rides[at].meant.defect == "twice") {
            std::swap(rides[at].meant.defect, rides[at + 1].meant.defect);
            return;
        }
}

}  // namespace

MadeNotebook makeNotebook(const Habit& habit, std::uint32_t seed) {
    Random random(seed);
    std::vector<Ride> rides = season(habit, random);
    plantAll(rides, habit, random);
    if (habit.newestFirst)
        reverse(rides);
    if (habit.machineOnce)
        for (std::size_t at = rides.size(); at-- > 1;)
            if (rides[at].cells[1] == rides[at - 1].cells[1])
                rides[at].cells[1].clear();
    MadeNotebook made;
    std::string text;
    std::size_t line = 1;
    if (habit.language != "none") {
        text += headerText(habit) + habit.newline;
        ++line;
    }
    for (const Ride& ride : rides) {
        text += lineText(ride.cells, habit) + habit.newline;
        made.lines.push_back(ride.meant);
        made.numbers.push_back(line++);
    }
    if (habit.totalAtTheEnd) {
        text += lineText({"Total", "", "", "=SUM(D2:D60)", "", "", ""}, habit) + habit.newline;
        made.lines.push_back({.defect = "total"});
        made.numbers.push_back(line);
    }
    made.bytes = encoded(text, habit.encoding);
    return made;
}

std::vector<Habit> habits() {
    std::vector<Habit> habits;
    const auto add = [&](const auto& change) {
        Habit habit;
        change(habit);
        habits.push_back(habit);
    };
    for (const char* encoding : {"utf-8", "marked", "utf-16le", "utf-16be", "windows-1252"})
        add([&](Habit& h) {
            h.encoding = encoding;
            h.language = "de";
            h.newline = "\r\n";
        });
    for (const char* dates : {"d/m/y", "m/d/y", "y-m-d", "serial", "y-m-d time", "d month y"})
        add([&](Habit& h) {
            h.dates = dates;
            h.separator = ',';
            h.decimal = '.';
        });
    for (const char* hours : {"clock", "minutes", "unit"})
        add([&](Habit& h) {
            h.hours = hours;
            h.separator = '\t';
        });
    for (const char* language : {"fr", "it", "es", "none"})
        add([&](Habit& h) {
            h.language = language;
            h.blankColumn = language[0] == 'f';
            h.strangeColumn = language[0] == 'i';
        });
    add([](Habit& h) { h.newestFirst = true; });
    add([](Habit& h) { h.totalAtTheEnd = h.otherCase = true; });
    add([](Habit& h) { h.machineOnce = true; });
    add([](Habit& h) {
        h.separator = ',';
        h.decimal = '.';
        h.commasInNotes = true;
        h.dates = "m/d/y";
    });
    add([](Habit& h) { h.separator = ','; });  // decimal commas in quotes
    add([](Habit& h) {
        h.separator = '|';
        h.dateLast = h.blankColumn = true;
    });
    return habits;
}

}  // namespace wm::notebook
