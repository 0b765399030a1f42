// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/book/book.h"
#include "core/picture/ledger.h"

namespace wm::verbs {

// Every user action is one of these. A verb checks what it is given against the book and answers with the
// change to write, or says what is wrong and where; it writes nothing itself. Drafts carry typed text as it
// was typed only for names and notes; numbers and dates are parsed where they are typed (core/units,
// core/calendar).
//
// Common errors: Unknown (a machine, item, task that is not there), InFuture (a fact after book.today()),
// BeforeItsTime (before the machine or item existed), Empty / NotText / TooLong (names and notes).

/// `rows[...].entered` are numbered from book.ledger().nextEntered(); ids come from `newId`.
struct Pen {
    const book::Book& book;
    base::IdSource newId;
};

// `isNew`: the verb gives the id; else the row of this id is overwritten (Unknown if it is not there).
// Definitions (task, step, joint): a wording without a stable id (value 0) is a new one and is given one;
// with an id it is a new wording from `validFrom` on. A `validFrom` left at its default means today. An empty
// code is made from the name.

// -- people, machines, items
base::Result<picture::Change> nameGarage(const Pen& pen, std::string name,
                                         std::optional<calendar::Date> pinnedToday);
base::Result<picture::Change> savePerson(const Pen& pen, items::Person person, bool isNew);  ///< Duplicate
/// A machine that is new, or whose model or year was put right, takes over the joints that its model shares.
base::Result<picture::Change> saveMachine(const Pen& pen, items::Machine machine,
                                          bool isNew);  ///< Duplicate, OutOfOrder
base::Result<picture::Change> saveItem(const Pen& pen, items::Item item, bool isNew);  ///< OutOfOrder
/// A new item and its first fitting in one go.
base::Result<picture::Change> addItemFitted(const Pen& pen, items::Item item, items::Move move);
base::Result<picture::Change> moveItem(const Pen& pen, items::Move move);  ///< errors of Fittings::check
/// Takes off what sits at the position and fits `move.item` there: one verb, two moves.
base::Result<picture::Change> swapItem(const Pen& pen, items::Move move, items::MoveKind oldGoesTo);
base::Result<picture::Change> noteSetting(const Pen& pen, items::Setting setting);

// -- use. An outing may bring its meter reading and its wash: one verb, one line for undo.
struct OutingDraft {
    usage::Outing outing{};
    std::optional<units::Hours> meterAfter{};
    bool washed = false;
    bool pressureWashed = false;
    bool crashed = false;
    bool handTightSeen = false;  ///< the mechanic has answered the hand-tight list: ridden so, he knows
};
/// MustAnswer if joints of the machine are hand-tight and that was not answered; the answer is noted on each
/// of them as a mark RiddenOpen, by the rider; TooLarge for more than 24 h
/// a day.
base::Result<picture::Change> logOuting(const Pen& pen, OutingDraft draft);
base::Result<picture::Change> logReading(const Pen& pen, usage::HourReading reading);
base::Result<picture::Change> logDistance(const Pen& pen, usage::DistanceReading reading);
base::Result<picture::Change> logWash(const Pen& pen, usage::Wash wash);
base::Result<picture::Change> logCrash(const Pen& pen, usage::Crash crash);

// -- upkeep
struct JobDraft {
    upkeep::Record record{};  ///< machine, task or snag, date, uses, measured ...; the verb fills item,
                              ///< version, code and the stated total time. A given item stays only where
                              ///< the task's position held none
    std::vector<JointId>
        confirmed{};          ///< joints tightened and checked; the others that were opened become hand-tight
    bool opensJoints = true;  ///< false: nothing was taken apart (looked fine, baseline)
    std::vector<std::pair<std::int64_t, std::string>>
        answers{};                 ///< follow-ups that this job settles: origin, words
    std::optional<ToolId> tool{};  ///< what the confirmed joints were tightened with
};
/// Writes the record, takes what was used from the shelf, opens and closes joints, ends the snag, notes the
/// meter if it is newer than the last reading, and takes the job out of the weekend. A Baseline may be dated
/// before the machine was known; it takes nothing from the shelf and opens nothing.
/// Errors: those of usage::checkReading in "meter", NotPositive (a use), WrongUnit (a measurement),
/// NothingToDo (the snag has ended), Duplicate (the same job on the same day at the same meter).
base::Result<picture::Change> recordJob(const Pen& pen, JobDraft draft);
base::Result<picture::Change> addSnag(const Pen& pen, upkeep::Snag snag);
base::Result<picture::Change> endSnag(const Pen& pen, upkeep::SnagEnd end);
/// It must have an end (Empty "until_date"), after today. ReasonNeeded for a safety task or snag without one;
/// while a safety deferral still runs, another one needs other words (ReasonNeeded, `given` the old ones).
base::Result<picture::Change> defer(const Pen& pen, upkeep::Deferral deferral);
base::Result<picture::Change> answerFollowUp(const Pen& pen, upkeep::FollowUpAnswer answer);
/// A new task or a new wording; the code of a known task stays. NotPositive, OutOfOrder, Duplicate (code on
/// this machine), Unknown (access step, joint, task, shelf line), WrongUnit, Cycle, Empty (a source, if
/// confirmed).
base::Result<picture::Change> saveTask(const Pen& pen, upkeep::TaskVersion wording);
/// Cycle; Inconsistent "active" if a step is put away that something still needs (`given` what).
base::Result<picture::Change> saveStep(const Pen& pen, weekend::StepVersion wording);
/// Several wordings at once, as a starter schedule brings them; `text` for undo.
base::Result<picture::Change> adoptSchedule(const Pen& pen, MachineId machine, std::string text,
                                            std::vector<weekend::StepVersion> steps,
                                            std::vector<fastening::JointVersion> joints,
                                            std::vector<upkeep::TaskVersion> tasks);

// -- fastening
/// A torque needs its source (Empty). OutOfOrder (range). With model years (sharedFrom, sharedTo) the wording
/// goes to every machine of this maker and model in them, in the same verb; one whose own last wording is for
/// itself alone keeps that. Empty "model" or "year" if the machine's card does not say them, OutOfOrder
/// "shared_from" if its year is not among them.
base::Result<picture::Change> saveJoint(const Pen& pen, fastening::JointVersion wording);
/// A whole chart of one machine in one go; faults are named under "joints[3].".
base::Result<picture::Change> saveJoints(const Pen& pen, MachineId machine,
                                         std::vector<fastening::JointVersion> wordings);
/// TooLarge "moved_count" if more moved than the joint has; Inconsistent for what can't be said of this kind
/// of mark.
base::Result<picture::Change> markJoints(const Pen& pen, std::vector<fastening::JointMark> marks);
base::Result<picture::Change> saveTool(const Pen& pen, fastening::Tool tool,
                                       bool isNew);  ///< Duplicate, OutOfOrder
/// Inconsistent "left_within" if it came good and left bad; Duplicate if this day has one of this tool.
base::Result<picture::Change> recordCalibration(const Pen& pen, fastening::Calibration calibration);

// -- shelf
base::Result<picture::Change> saveStockLine(const Pen& pen, stock::StockLine line,
                                            bool isNew);  ///< Duplicate part number
/// A new line together with what is there already (`counted`, 0 = nothing). Errors of saveStockLine and
/// countStock.
base::Result<picture::Change> addStockLine(const Pen& pen, stock::StockLine line, std::int64_t counted);
base::Result<picture::Change> saveLot(const Pen& pen, stock::Lot lot, bool isNew);
/// A purchase may bring a new lot (it is given its id, line and, if it has none, day of receipt). Used and
/// Lost go out whatever the sign of the amount; Bought must be positive.
base::Result<picture::Change> moveStock(const Pen& pen, stock::StockMove move,
                                        std::optional<stock::Lot> newLot);
/// What a stock-take found in one container, or of the whole line without one: what is missing is taken as
/// stock::drawFrom says.
base::Result<picture::Change> countStock(const Pen& pen, StockLineId line, std::optional<LotId> lot,
                                         std::int64_t counted,
                                         calendar::Date date);  ///< NothingToDo if it agrees
base::Result<picture::Change> orderStock(const Pen& pen, stock::StockOrder order);

// -- ahead
base::Result<picture::Change> saveEvent(const Pen& pen, outlook::Event event, bool isNew);
base::Result<picture::Change> saveWindow(const Pen& pen, weekend::WorkWindow window, bool isNew);
base::Result<picture::Change> pick(const Pen& pen, MachineId machine, std::optional<TaskId> task,
                                   std::optional<SnagId> snag, bool picked);
base::Result<picture::Change> issueSheet(const Pen& pen,
                                         weekend::IssuedSheet sheet);  ///< number is given by the verb

// -- taking back
/// Takes a fact back; it stays readable. What a record or outing brought in the same go (stock moves, joint
/// marks, reading, wash, end of a snag, answers) is struck with it. ReasonNeeded; Unknown if there is no such
/// fact (definitions and cards are changed, not struck); AlreadyStruck; for a move what checkMoves says if
/// the later moves cannot have happened without it.
base::Result<picture::Change> strike(const Pen& pen, std::int64_t fact, std::string reason);
/// Strike and re-entry in one. `again` is the verb that enters it anew; it is checked on a book in which the
/// fact is already struck, so that a wrong reading does not stand in the way of the right one.
using Verb = std::function<base::Result<picture::Change>(const Pen&)>;
base::Result<picture::Change> correct(const Pen& pen, std::int64_t fact, std::string reason,
                                      const Verb& again);

/// A whole file's rows, as the exchange text brought them, ids and order of entry kept: every reference must
/// be there, every bound hold. Only for a file that holds nothing but its own card (garage): else NotEmpty.
/// A garage row among `rows` replaces that card.
base::Result<picture::Change> adoptAll(const Pen& pen, std::vector<picture::Row> rows);

}  // namespace wm::verbs
