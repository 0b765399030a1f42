// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "tests/core/slow/bench_places.h"

namespace wm::tale {

/// What is known of one joint.
struct JointThen {
    bool isLoose = false;
    std::size_t touched = 0;               ///< number of the last fact that loosened or confirmed it
    std::size_t loosened = 0;              ///< number of the fact since which it is loose
    std::optional<std::size_t> torqued{};  ///< number of the last confirmation
    std::string torquedWith{};
    std::string openedOn{};  ///< the day of its last opening, and how often it was ridden by then
    std::size_t ridesThen = 0;
};

/// Something to be asked: riding while these joints were loose.
struct RiddenOpen {
    std::string words{};
    std::map<std::string, std::size_t> loosened{};  ///< joints, and since which fact they were loose
};

/// A position that was moved at, and whether the joints that hold it were seen to since.
struct MovedAt {
    std::string path{};
    std::string day{};
    std::size_t number = 0;
};

/// One machine, through the facts up to an evening.
class BenchWalk {
  public:
    BenchWalk(const std::vector<Json>& facts, std::string machine, calendar::Date on);

    std::map<std::string, JointThen> joints{};
    Sitting sitting{};
    std::vector<RiddenOpen> ridden{};
    std::vector<MovedAt> unasked{};  ///< moves that nobody asked about
    std::vector<MovedAt> outAndBack{};
    std::map<std::string, Json> sentFrom{};   ///< by path: the job that sent out what sat there
    std::vector<std::string> neverTouched{};  ///< questions about confirmations
    std::vector<Json> facts{};                ///< in order

  private:
    void take(const Json& fact);
    void job(const Json& fact);
    void move(const Json& fact);
    void moveAt(const std::string& path, const Json& fact);
    void ride(const std::string& words);
    void reading(const Json& fact);
    void loosen(const std::string& joint, const std::string& day);
    void open(const std::set<std::string>& which, const std::string& day);
    void confirm(const std::string& joint, const Json& fact);
    [[nodiscard]] bool isOutAndBack(const Json& fact) const;
    [[nodiscard]] bool isOnlyTracking(const Json& fact) const;
    [[nodiscard]] std::map<std::string, std::size_t> looseNow() const;

    const Cards cards_;
    const std::string machine_;
    std::size_t number_ = 0;  ///< of the fact that is being taken
    std::size_t rides_ = 0;
};

}  // namespace wm::tale
