// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/ids.h"
#include "core/base/row.h"
#include "core/calendar/date.h"

namespace wm::sheet {

struct SheetJob {
    std::optional<TaskId> task{};  ///< exactly one of task and snag
    std::optional<SnagId> snag{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("task", self.task);
        visit("snag", self.snag);
    }
    friend bool operator==(const SheetJob&, const SheetJob&) = default;
};

/// A job sheet that left the program on paper, by its number.
struct IssuedSheet {
    static constexpr std::string_view kTable = "issued_sheet";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    SheetId id{};
    base::Entered entered = 0;
    std::int64_t number = 0;
    MachineId machine{};
    calendar::Date date{};  ///< of issue
    std::string target{};   ///< what it is for, in words: the event
    std::vector<SheetJob> jobs{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("number", self.number);
        visit("machine", self.machine);
        visit("date", self.date);
        visit("target", self.target);
        visit("jobs", self.jobs);
        visit("note", self.note);
    }
    friend bool operator==(const IssuedSheet&, const IssuedSheet&) = default;
};

}  // namespace wm::sheet
