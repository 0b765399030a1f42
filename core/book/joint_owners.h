// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

// What is inside an item goes with it: the rules are in tests/data/state/README.md.

/// Whose a joint is: an item's, in which it sits, or a machine's own. An item's joint is the same on every
/// machine that carries the item, by its code.
struct JointOwner {
    std::optional<ItemId> item{};
    std::optional<MachineId> machine{};  ///< of a machine's own
    std::string code{};
    friend auto operator<=>(const JointOwner&, const JointOwner&) = default;
};

/// Tells whose each joint was, when. The book must outlive it.
class JointOwners {
  public:
    explicit JointOwners(const Book& book);

    /// On the evening of the book's day. Nothing: nobody's, for what it sat in is out and went on or was
    /// scrapped.
    [[nodiscard]] std::optional<JointOwner> now(const fastening::JointVersion& joint) const;
    /// At a moment, after the moves that were told before `entered`. `record`: of the job that touched it;
    /// one on a spare was done on that spare's joints.
    [[nodiscard]] std::optional<JointOwner> then(const fastening::JointVersion& joint, calendar::Moment when,
                                                 base::Entered entered, const upkeep::Record* record) const;

    /// What it sat in was off by then, and lay beside the machine: the head nuts of an engine on the bench.
    [[nodiscard]] bool liesBeside(const fastening::JointVersion& joint, calendar::Moment when,
                                  base::Entered entered) const;
    /// The empty position with which it was out then (`outWith`).
    [[nodiscard]] std::optional<std::string> outThen(const fastening::JointVersion& joint,
                                                     calendar::Moment when, base::Entered entered) const;

  private:
    using Fittings = items::Fittings;
    [[nodiscard]] std::optional<JointOwner> ownerAt(const Fittings& fittings,
                                                    const fastening::JointVersion& joint,
                                                    calendar::Moment when) const;
    [[nodiscard]] std::optional<ItemId> itemAt(const Fittings& fittings, MachineId machine,
                                               const std::string& wanted, calendar::Moment when) const;
    [[nodiscard]] std::optional<ItemId> firstToldOf(MachineId machine, const std::string& wanted,
                                                    calendar::Moment after) const;
    [[nodiscard]] std::optional<ItemId> itemOfJob(const upkeep::Record& record, const std::string& position,
                                                  calendar::Moment when) const;
    [[nodiscard]] const Fittings& fittingsBefore(calendar::Moment when, base::Entered entered) const;

    const Book& book_;
    std::map<calendar::Moment, base::Entered> movedAt_;  ///< with the last that was told of it
    mutable std::map<std::pair<calendar::Moment, base::Entered>, std::unique_ptr<Fittings>> before_;
};

/// The position of a machine that stands empty at a moment, and in which a joint sits, or which (or a part of
/// which) a step frees that opens the joint: nothing is there to be torqued. The outermost one.
std::optional<std::string> outWith(const Book& book, const fastening::JointVersion& joint,
                                   calendar::Moment when);
/// The same at a job, unless it is on something that lies on the bench: that is in the vice.
std::optional<std::string> outAtJob(const Book& book, const fastening::JointVersion& joint,
                                    const upkeep::Record& record);
/// The joints that a job then opens with these access steps off, but for those that are out by then.
std::vector<const fastening::JointVersion*> jointsToTorque(const Book& book, const upkeep::TaskVersion& task,
                                                           const std::vector<std::string>& steps,
                                                           calendar::Moment when);
/// The empty position that a job waits for, because one of the joints that it is about is out; on the book's
/// day.
std::optional<std::string> waitsFor(const Book& book, const upkeep::TaskVersion& task);

}  // namespace wm::book
