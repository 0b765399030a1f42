// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "tests/core/slow/bench_joints.h"

namespace wm::tale {

/// Something to be asked: riding while these joints were loose.
struct RiddenOpen {
    std::string machine{};
    std::string words{};
    std::map<JointOf, std::size_t> loosened{};  ///< joints, and since which fact they were loose
};

/// A position that was moved at, and whether the joints that hold it were seen to since.
struct MovedAt {
    std::string machine{};
    std::string path{};
    std::string day{};
    std::size_t number = 0;
};

/// The whole bench, through the facts up to an evening.
class BenchWalk {
  public:
    BenchWalk(const Cards& cards, const std::vector<Json>& facts, calendar::Date on);
    BenchWalk(const BenchWalk&) = delete;  // its joints look at where things sit in it
    BenchWalk& operator=(const BenchWalk&) = delete;

    Sitting sitting{};
    BenchJoints joints;
    std::vector<RiddenOpen> ridden{};
    std::vector<MovedAt> unasked{};  ///< moves that nobody asked about
    std::vector<MovedAt> outAndBack{};
    std::map<HostAndPlace, Json> sentFrom{};  ///< by machine and path: the job that sent out what sat there
    std::vector<std::pair<std::string, std::string>> neverTouched{};  ///< machine, question
    /// What was loose on the machine that an item came from, of what nobody said where it sits: item,
    /// machine.
    std::map<HostAndPlace, std::set<std::string>> cameWith{};
    std::vector<Json> facts{};  ///< in order

  private:
    void take(const Json& fact);
    void job(const Json& fact);
    void confirm(const std::string& machine, const std::string& code, const Json& fact);
    void move(const Json& fact);
    void leave(const HostAndPlace& from, const Json& fact);
    /// What it loosened.
    std::set<JointOf> moveAt(const HostAndPlace& place, const Json& fact, bool isOneQuestion);
    void ride(const std::string& machine, const std::string& words);
    void reading(const Json& fact);
    [[nodiscard]] bool isOutAndBack(const Json& fact) const;
    [[nodiscard]] bool isOnlyTracking(const Json& fact) const;

    const Cards& cards_;
    std::size_t number_ = 0;  ///< of the fact that is being taken
};

}  // namespace wm::tale
