// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "tests/core/slow/tale.h"

// Whether a machine is whole on an evening, reckoned from the words of tests/data/state/README.md alone: the
// facts are gone through from the first to the last, day by day.
namespace wm::tale {

/// Each list in order of its text.
struct State {
    std::vector<std::string> open{};  ///< access steps
    std::vector<std::string> handTight{};
    std::vector<std::string> out{};  ///< loosened, and out with what came off; says nothing of whole or not
    std::vector<std::string> missing{};
    std::vector<std::string> away{};
    std::vector<std::string> inDoubt{};
    std::vector<std::string> questions{};
    friend bool operator==(const State&, const State&) = default;
    [[nodiscard]] bool isWhole() const {
        return open.empty() && handTight.empty() && missing.empty() && away.empty() && inDoubt.empty();
    }
};

State slowState(const std::vector<Json>& facts, const std::string& machine, calendar::Date on);
/// "yes", "no: nothing fitted there".
std::string slowMayConfirm(const std::vector<Json>& facts, const std::string& machine,
                           const std::string& joint, calendar::Date on);
/// "yes", "yes, from Kite", "no: kind", "no: taken", "no: retired".
std::string slowMayFit(const std::vector<Json>& facts, const std::string& item, const std::string& to,
                       const std::string& at, calendar::Date on);

}  // namespace wm::tale
