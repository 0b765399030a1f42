// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "tests/core/slow/tale.h"

// What the slow state remembers while it goes through the facts: the cards, and what sits where.
namespace wm::tale {

using HostAndPlace = std::pair<std::string, std::string>;  ///< machine or item, position

/// Facts of a day in the order in which they happened: what was told of the morning, the riding, the rest; of
/// one of these in the order of telling, a correction at the place of what it corrects. What was struck is
/// left out, and what is after `on`. A job whose meter figure is lower than what an outing of that day left
/// was done before the riding; the figures of jobs and outings are readings.
std::vector<Json> inOrder(const std::vector<Json>& facts, calendar::Date on);
bool isMove(const Json& fact);
std::string movedItem(const Json& fact);

struct JointCard {
    std::string name{};
    std::string torque{};   ///< "" = blank
    std::string in{};       ///< path of the position at which it sits; "" = it is the machine's own
    bool isUnsaid = false;  ///< nobody ever said where it sits
};

struct Cards {
    explicit Cards(const std::vector<Json>& facts);

    std::map<std::string, std::string> kindOf{};  ///< of items
    std::set<std::string> isNew{};                ///< items
    std::set<std::string> machines{};
    std::map<HostAndPlace, Json> positions{};    ///< by machine and path
    std::map<HostAndPlace, JointCard> joints{};  ///< by machine and code
    std::map<HostAndPlace, Json> steps{};        ///< by machine and code
    /// Of tools, in hundredths of a newton metre, where it is known.
    std::map<std::string, std::pair<std::int64_t, std::int64_t>> ranges{};

    [[nodiscard]] std::set<std::string> jointsOf(const std::string& machine, const Json& stepCodes) const;
    /// The steps that free a position.
    [[nodiscard]] Json freeing(const std::string& machine, const std::string& path) const;
    /// They, and all that they need: what has to be off for a move there.
    [[nodiscard]] Json opening(const std::string& machine, const std::string& path) const;
};

struct Sitting {
    std::map<std::string, HostAndPlace> at{};         ///< items that are fitted
    std::map<std::string, Json> lastMove{};           ///< of every item that ever moved
    std::map<HostAndPlace, std::string> lastIn{};     ///< who sat there last
    std::map<std::string, HostAndPlace> cameFrom{};   ///< where an item that is off sat last
    std::map<HostAndPlace, std::string> emptiedOn{};  ///< places that were tracked and are empty

    void move(const Json& fact);
    /// Machine and path, through any depth.
    [[nodiscard]] std::optional<HostAndPlace> root(const std::string& item, const Cards& cards) const;
    [[nodiscard]] std::optional<HostAndPlace> rootOf(const HostAndPlace& place, const Cards& cards) const;
    [[nodiscard]] std::optional<std::string> sitsAt(const HostAndPlace& place) const;
};

}  // namespace wm::tale
