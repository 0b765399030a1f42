// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/picture/ledger.h"

// The tiny garages of tests/data/subject and tests/data/state: facts in a few words each, a line a fact
// (tests/data/subject/README.md). Everything is known by its name.
namespace wm::tale {

using Json = nlohmann::json;

/// One case with the file's garage in front of its own facts.
struct Case {
    std::string theme{};
    std::string name{};
    std::string why{};
    std::vector<Json> facts{};
    std::vector<Json> asks{};
};

/// All cases of tests/data/<folder>/*.json, by file and in their order. Throws with the place of a fault.
std::vector<Case> casesIn(const std::string& folder);

/// "done at about 27.00..29.00 on the meter", in hundredths, told on a day.
struct MeterThen {
    std::int64_t low = 0;
    std::int64_t high = 0;
    calendar::Date toldOn{};
};

/// What the facts of a case are as rows. Facts that no row holds yet (positions, what a move loosens) are
/// left out.
struct Tale {
    picture::Ledger ledger{};  ///< what the program is given
    /// The same without what was struck, for the slow reckoning. What was told instead of another fact has
    /// its place in the order of telling. What the words of a fact say of its time or of its item is written
    /// out (meaning.h).
    picture::Ledger asTold{};
    std::map<std::string, std::int64_t, std::less<>> ids{};  ///< of machines, items and named facts
    std::map<std::int64_t, std::string> names{};             ///< the other way round
    std::map<std::string, TaskId, std::less<>> tasks{};      ///< by "Heron/oil"
    /// By "Heron/head nuts": the position at which a joint sits.
    std::map<std::string, std::string, std::less<>> jointIn{};

    /// Of records from before the file: what the meter is remembered to have shown.
    std::map<RecordId, MeterThen> meterThen{};

    [[nodiscard]] MachineId machine(std::string_view name) const;
    [[nodiscard]] ItemId item(std::string_view name) const;
    [[nodiscard]] std::string nameOf(std::int64_t id) const;
};
Tale taleOf(const std::vector<Json>& facts);

calendar::Date dayOf(const Json& text);
/// The day and its part; what says no part was in the evening.
calendar::Moment momentOf(const Json& fact);
/// "3.50" in hundredths.
std::int64_t hundredths(std::string_view text);

}  // namespace wm::tale
