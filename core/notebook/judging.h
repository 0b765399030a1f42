// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/notebook/lines.h"
#include "core/notebook/table.h"

namespace wm::notebook {

// The steps by which a notebook is judged, in this order. Each looks at what the ones before have left.

/// What a line may leave to the lines above it.
struct Above {
    std::optional<calendar::Date> date{};
    std::vector<std::size_t> machines{};
};

/// What one reads in the cells of a line, whatever stands on the other lines.
class CellReading {
  public:
    CellReading(const Layout& layout, const Names& names, std::optional<std::size_t> onlyMachine)
        : layout_(layout), names_(names), onlyMachine_(onlyMachine) {}

    void read(const TableLine& cells, const Above& above, Line& line) const;

  private:
    [[nodiscard]] bool readDay(const TableLine& cells, const Above& above, Line& line) const;
    [[nodiscard]] bool readMachine(const TableLine& cells, const Above& above, Line& line) const;
    void readSort(const TableLine& cells, Line& line) const;
    void readHoursCell(const TableLine& cells, Line& line) const;
    void readMeterCell(const TableLine& cells, Line& line) const;
    void readCircumstances(const TableLine& cells, Line& line) const;
    void readJob(const TableLine& cells, Line& line) const;

    const Layout& layout_;
    const Names& names_;
    std::optional<std::size_t> onlyMachine_;
};

/// Dates out of the order of the lines, and after today.
void judgeDates(std::vector<Line>& lines, const Layout& layout, calendar::Date today);

/// Lines that stand there twice, and lines that the file holds already.
void judgeKnown(Notebook& notebook, const picture::Ledger& ledger);

/// Whether the meters can have shown that, and whether the noted hours fit.
void judgeMeters(Notebook& notebook, const picture::Ledger& ledger);

/// Jobs to tasks, and amounts that are a thousand times off.
void judgeJobs(Notebook& notebook, const book::Book& book);

/// A key under which facts of one machine and day lie together.
struct DayKey {
    std::size_t machine = 0;
    calendar::Date date{};
    friend auto operator<=>(const DayKey&, const DayKey&) = default;
};

}  // namespace wm::notebook
