// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/fastening/hand_tight.h"
#include "core/items/fittings.h"
#include "core/outlook/chances.h"
#include "core/picture/ledger.h"
#include "core/stock/on_hand.h"
#include "core/upkeep/countdown.h"
#include "core/upkeep/subject.h"
#include "core/usage/exposure.h"
#include "core/weekend/plan.h"

namespace wm::book {

/// One task on one machine, with how it stands. Pointers are into the ledger, which the book keeps alive.
struct DueLine {
    MachineId machine{};
    const upkeep::TaskVersion* task = nullptr;
    std::optional<ItemId> item{};  ///< whose clock it is: what sits in the task's position today
    std::optional<items::Fittings::Left> empty{};  ///< or what went from it, and since when it is empty
    /// The empty position without which the job can't be done: its own, or that of a joint that it needs.
    std::optional<std::string> waitsFor{};
    upkeep::Countdown countdown{};
    outlook::Standing standing{};
    const upkeep::Deferral* deferral = nullptr;
    const upkeep::Record* last = nullptr;
    bool picked = false;
};

/// The limit that a line is about: what makes it due, or is expected to; nullptr without limits.
const upkeep::LimitState* decidingLimit(const DueLine& line);

struct OpenSnag {
    const upkeep::Snag* snag = nullptr;
    const upkeep::Deferral* deferral = nullptr;
    bool picked = false;
};

struct JointsThen;

struct OpenJoint {
    const fastening::JointVersion* joint = nullptr;
    fastening::HandTight state{};
};

/// Everything that follows from a ledger on one day, worked out when asked for and kept. Not for sharing
/// between threads. All pages, the sheet and the headless verbs read this and nothing else.
class Book {
  public:
    Book(std::shared_ptr<const picture::Ledger> ledger, calendar::Date today);
    /// The same book, sooner: takes over from an earlier one what the rows that came since leave as it was.
    Book(std::shared_ptr<const picture::Ledger> ledger, calendar::Date today, const Book& before);
    /// The same book with another outlook for one machine, to be looked at beside this one; nothing is
    /// stored.
    [[nodiscard]] Book supposing(MachineId machine, const outlook::Supposing& what) const;
    ~Book();
    Book(Book&&) noexcept;
    Book& operator=(Book&&) noexcept;

    [[nodiscard]] const picture::Ledger& ledger() const;
    [[nodiscard]] calendar::Date today() const;

    /// Machines that are still here on `today`, by name.
    [[nodiscard]] std::vector<const items::Machine*> machines() const;
    /// The facts of a machine's use that count.
    [[nodiscard]] const usage::UseFacts& use(MachineId machine) const;
    [[nodiscard]] const std::vector<usage::Atom>& atoms(MachineId machine) const;  ///< stated past in front
    [[nodiscard]] const std::vector<usage::Atom>& atoms(ItemId item) const;
    [[nodiscard]] usage::Exposure life(MachineId machine) const;  ///< up to today
    [[nodiscard]] usage::Exposure life(ItemId item) const;
    [[nodiscard]] usage::Exposure lifeAt(MachineId machine, calendar::Moment when) const;
    [[nodiscard]] usage::Exposure lifeAt(ItemId item, calendar::Moment when) const;
    /// What the hour meter shows now, if it was ever read.
    [[nodiscard]] std::optional<units::Hours> meterNow(MachineId machine) const;
    [[nodiscard]] const items::Fittings& fittings() const;
    [[nodiscard]] upkeep::Whereabouts whereabouts() const;
    /// A record of the ledger as it is meant: with the part of the day and the item that it does not name.
    [[nodiscard]] const upkeep::Record& placed(const upkeep::Record& record) const;
    /// The part of its day in which a job was done, one that is not recorded yet too: the meter decides.
    [[nodiscard]] calendar::DayPart partByMeter(const upkeep::Record& record) const;
    /// The position of the task that a record is of; empty for the machine as a whole.
    [[nodiscard]] std::string_view placeOfJob(const upkeep::Record& record) const;
    [[nodiscard]] const outlook::Ahead& ahead(MachineId machine) const;
    [[nodiscard]] const outlook::Odds& odds(MachineId machine) const;  ///< the same, asked for chances

    /// Versions in force today, active ones only, in order of name.
    [[nodiscard]] std::vector<const upkeep::TaskVersion*> tasks(MachineId machine) const;
    [[nodiscard]] std::vector<const fastening::JointVersion*> joints(MachineId machine) const;
    [[nodiscard]] std::vector<const weekend::StepVersion*> steps(MachineId machine) const;
    [[nodiscard]] const upkeep::TaskVersion* task(TaskId task) const;  ///< version of today, active or not
    [[nodiscard]] const fastening::JointVersion* joint(JointId joint) const;
    [[nodiscard]] const fastening::JointVersion* joint(MachineId machine, std::string_view code) const;
    [[nodiscard]] const weekend::StepVersion* step(MachineId machine, std::string_view code) const;

    /// All tasks of a machine with their standing: overdue first, then what falls due first, safety before
    /// the rest at equal urgency, no record last (safety first, hidden ones before those that are felt).
    [[nodiscard]] const std::vector<DueLine>& due(MachineId machine) const;
    [[nodiscard]] const DueLine* dueLine(TaskId task) const;
    /// What the clock of a line counts. If its last record is from before its item was tracked, what carried
    /// the item then stands in the place of the past that it came with.
    [[nodiscard]] std::vector<usage::Atom> atomsOf(const DueLine& line) const;
    [[nodiscard]] std::vector<items::Carriage> carriagesOf(const DueLine& line) const;
    /// How the machine gets to the flag of its next event: what is in hand, whether it all holds, what goes
    /// first. The chance of a task alone is in its standing.
    [[nodiscard]] const outlook::Chances& chances(MachineId machine) const;
    [[nodiscard]] std::vector<upkeep::FollowUp> followUps(MachineId machine) const;
    /// The joints of a machine as work, looks and moves left them (joints_then.h).
    [[nodiscard]] const JointsThen& jointsThen(MachineId machine) const;
    [[nodiscard]] std::vector<OpenJoint> handTight(MachineId machine) const;
    [[nodiscard]] std::vector<OpenSnag> snags(MachineId machine) const;
    [[nodiscard]] const std::vector<stock::OnHand>& shelf() const;
    [[nodiscard]] const stock::OnHand* onHand(StockLineId line) const;

    /// Records of a machine or item, newest first, struck ones included if asked for.
    [[nodiscard]] std::vector<const upkeep::Record*> records(MachineId machine, bool withStruck) const;
    [[nodiscard]] std::vector<const upkeep::Record*> records(ItemId item) const;
    /// The last values of one measurement of a task's subject, newest first, at most `most`.
    [[nodiscard]] std::vector<std::pair<const upkeep::Record*, const upkeep::Measured*>> lastMeasured(
        TaskId task, std::string_view name, std::size_t most) const;

    /// What was picked for the weekend on a machine, as jobs to plan, in due order (snags last).
    [[nodiscard]] std::vector<weekend::Job> pickedJobs(MachineId machine) const;
    /// The joints that a job and the access steps that are off for it open or put a wrench on.
    [[nodiscard]] std::vector<const fastening::JointVersion*> jointsOpened(
        const upkeep::TaskVersion& task, const std::vector<std::string>& steps) const;
    /// The first work window that is not over, or nullptr.
    [[nodiscard]] const weekend::WorkWindow* nextWindow() const;

  private:
    struct Parts;
    using Tasks = std::vector<const upkeep::TaskVersion*>;
    [[nodiscard]] DueLine lineOf(const upkeep::TaskVersion& task, const Tasks& ofMachine) const;
    [[nodiscard]] std::vector<upkeep::MeasuredValue> valuesFor(const upkeep::Subject& subject,
                                                               const upkeep::TaskVersion& task,
                                                               const Tasks& ofMachine) const;
    [[nodiscard]] bool isCompletion(const upkeep::Record& record) const;
    [[nodiscard]] std::vector<const upkeep::Record*> recordsFor(const upkeep::Subject& subject,
                                                                std::string_view code) const;
    [[nodiscard]] std::vector<usage::Atom> atomsFor(const upkeep::Subject& subject,
                                                    const upkeep::Record* last) const;
    [[nodiscard]] std::vector<const upkeep::Record*> statedOf(MachineId machine) const;
    [[nodiscard]] std::optional<items::Carriage> untrackedSince(ItemId item,
                                                                const upkeep::Record& last) const;
    [[nodiscard]] std::optional<calendar::Moment> notedFrom(const upkeep::Subject& subject,
                                                            const upkeep::Record* last) const;
    friend class DemandsOf;
    [[nodiscard]] std::vector<usage::Atom> riddenHere(MachineId machine) const;
    [[nodiscard]] outlook::Chances chancesOf(MachineId machine) const;
    std::unique_ptr<Parts> parts_;
};

}  // namespace wm::book
