// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "tests/core/slow/bench_places.h"

// Whose joint it is: what is inside an item goes with it, the rest stays with the machine.
namespace wm::tale {

/// A place that was emptied by the very work that loosened a joint.
struct EmptiedBy {
    HostAndPlace spot{};     ///< straight in its host
    HostAndPlace place{};    ///< machine and path, as they were then
    bool goesAlong = false;  ///< the joint sits in something in which the spot is too
};

/// A confirmation since the joint was last loose.
struct Tightening {
    std::size_t number = 0;
    std::string with{};    ///< "" = no tool was named
    std::string torque{};  ///< of the joint by the table of that machine
};

/// What is known of one joint.
struct JointThen {
    bool isLoose = false;
    std::size_t touched = 0;               ///< number of the last fact that loosened or confirmed it
    std::size_t loosened = 0;              ///< number of the fact since which it is loose
    std::optional<std::size_t> torqued{};  ///< number of the last confirmation
    std::vector<Tightening> tightenings{};
    std::optional<EmptiedBy> outBy{};
    std::string openedOn{};  ///< the day of its last opening, and how often it was ridden by then
    std::size_t ridesThen = 0;
    std::size_t rides = 0;
    std::string saidOn{};  ///< the machine whose table it was touched by
    std::string within{};  ///< the way from its owner to where it sits, through what was never tracked
};

/// Owner (an item, or the machine itself) and code.
using JointOf = std::pair<std::string, std::string>;

class BenchJoints {
  public:
    BenchJoints(const Cards& cards, const Sitting& sitting) : cards_(cards), sitting_(sitting) {}

    std::map<JointOf, JointThen> all{};

    /// The position with which a joint of a machine is out: where it sits, one that a step with it frees, or
    /// a whole of these, that was emptied.
    [[nodiscard]] std::optional<std::string> goneWith(const std::string& machine,
                                                      const std::string& code) const;
    /// The place with which a joint on a machine is out because the work that emptied it loosened the joint.
    [[nodiscard]] std::optional<std::string> outByWork(const JointOf& joint,
                                                       const std::string& machine) const;
    /// Whose joint a code is on a machine now. Where its place is empty, it is what came out of there and
    /// lies unfitted; if that is somewhere else by now, nobody's.
    [[nodiscard]] std::optional<JointOf> jointOf(const std::string& machine, const std::string& code) const;
    /// The same where nothing holds it on the machine, of what sits in an item that lies unfitted and can be
    /// torqued on the bench.
    [[nodiscard]] std::optional<JointOf> onBench(const std::string& machine, const std::string& code) const;
    [[nodiscard]] JointThen then(const std::string& machine, const std::string& code) const;
    /// What sits on a machine and is loose there, and since which fact.
    [[nodiscard]] std::map<JointOf, std::size_t> looseOn(const std::string& machine) const;
    [[nodiscard]] bool isOn(const JointOf& joint, const std::string& machine) const;
    /// The place of a machine from which an item came, or what it sits in, if it lies beside the machine
    /// since.
    [[nodiscard]] std::optional<HostAndPlace> cameOutOf(const std::string& owner) const;
    /// By its name in the table of the machine, or by the one that it had where it was touched.
    [[nodiscard]] std::string words(const JointOf& joint, const std::string& machine, bool withTorque) const;

    /// What it loosened, if anything.
    std::optional<JointOf> loosen(const std::string& machine, const std::string& code, const std::string& day,
                                  std::size_t number);
    /// The same, unless it was opened and torqued that day and not ridden since: that is one opening.
    std::optional<JointOf> open(const std::string& machine, const std::string& code, const std::string& day,
                                std::size_t number);
    /// An item left a place with the work that loosened these joints: the loose ones are out with it, but for
    /// what sits in the item.
    void goOut(const std::set<JointOf>& loosened, const std::string& item, const EmptiedBy& by);
    /// What was out and is filled again is hand-tight.
    void comeBack();
    /// All joints of the code that sit on the machine, or the one on the bench; false if nothing is fitted
    /// where it sits and nothing lies on the bench.
    bool confirm(const std::string& machine, const std::string& code, const Json& fact, std::size_t number);
    void ride(const std::string& machine);
    /// The first item that is told of a place: what was done there before is its own, if it had no other
    /// place before, and went with something that nobody tracked, if it had.
    void trackFirst(const HostAndPlace& place, const std::string& item, bool hadAnotherPlace);

  private:
    [[nodiscard]] std::optional<std::string> emptiedOnTheWay(const std::string& machine,
                                                             const std::string& path) const;
    [[nodiscard]] std::optional<std::string> unfittedFrom(const HostAndPlace& place) const;
    [[nodiscard]] bool isEmptyOnBench(const std::string& machine, const std::string& freed,
                                      const std::string& in) const;
    /// What an item is in, up to the outermost; itself first.
    [[nodiscard]] std::vector<std::string> wholesOf(const std::string& item) const;
    void touch(const JointOf& joint, const std::string& machine, std::size_t number);

    const Cards& cards_;
    const Sitting& sitting_;
};

}  // namespace wm::tale
