// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/ids.h"
#include "core/base/names.h"
#include "core/base/row.h"
#include "core/calendar/date.h"

namespace wm::outlook {

enum class EventKind : std::uint8_t { Race, Practice };

/// Which machine goes to an event, and who rides it.
struct Entry {
    MachineId machine{};
    std::optional<PersonId> rider{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("machine", self.machine);
        visit("rider", self.rider);
    }
    friend bool operator==(const Entry&, const Entry&) = default;
};

/// A race or practice day ahead, from `first` to `last` (the same day if it is one).
struct Event {
    static constexpr std::string_view kTable = "event";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    EventId id{};
    std::string name{};
    std::string place{};
    EventKind kind = EventKind::Race;
    calendar::Date first{};
    calendar::Date last{};
    bool calledOff = false;
    std::vector<Entry> entries{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("name", self.name);
        visit("place", self.place);
        visit("kind", self.kind);
        visit("first_day", self.first);
        visit("last_day", self.last);
        visit("called_off", self.calledOff);
        visit("entries", self.entries);
        visit("note", self.note);
    }
    friend bool operator==(const Event&, const Event&) = default;
};

}  // namespace wm::outlook

namespace wm::base {
template <>
struct Names<outlook::EventKind> {
    static constexpr std::array<std::string_view, 2> names{"race", "practice"};
};
}  // namespace wm::base
