// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/verbs/baseline_verb.h"
#include "tests/core/slow/tale.h"
#include "tests/core/verbs/bench.h"

namespace wm::tale {

/// The used machine of a file in tests/data/day_one, with the schedule of its starter, said by verbs: nothing
/// is recorded of any job yet.
class DayOne : public verbs::Bench {
  public:
    enum class Jobs : std::uint8_t { AsShipped, AllOn };  ///< a starter may have some switched off
    DayOne(const std::string& starter, const Json& machine, Jobs jobs);

    /// Nobody knows: says nothing.
    void answer(const Json& answer);
    [[nodiscard]] TaskId task(const std::string& code) const;
    [[nodiscard]] MachineId machine() const { return machine_; }

  private:
    MachineId machine_{};
};

/// "3.30", "0..?..60.00", "6", days as their age on `today`; nothing where nobody knows.
struct KnownEnds {
    std::optional<std::int64_t> low{};
    std::optional<std::int64_t> best{};
    std::optional<std::int64_t> high{};
    friend bool operator==(const KnownEnds&, const KnownEnds&) = default;
};
KnownEnds endsIn(const std::string& text, bool inHundredths);
/// The same of days: the earliest is the high end.
KnownEnds agesIn(const std::string& text, calendar::Date today);

}  // namespace wm::tale
