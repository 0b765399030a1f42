// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/exchange/demo_line.h"
#include "core/exchange/starter.h"
#include "core/verbs/verbs.h"

namespace wm::exchange {

/// Which line of the shelf a kit of a schedule means.
struct KitTie {
    std::string machine{};  ///< "*" = every machine
    std::string what{};
    std::string line{};
};

/// The garage while its lines are said: the ledger so far, and the look-ups of names that people type. A name
/// that is not there is kept as the fault of the line.
class DemoStage {
  public:
    explicit DemoStage(std::vector<Starter> starters);

    /// The day on which the next line is said.
    void setDay(calendar::Date day) { day_ = day; }
    [[nodiscard]] calendar::Date day() const { return day_; }
    [[nodiscard]] const picture::Ledger& ledger() const { return *ledger_; }
    [[nodiscard]] picture::Ledger giveUp() const { return *ledger_; }

    /// Says one verb, `verb(context)`, unless the line could not be read; what it refuses is the fault of the
    /// line.
    template <class Verb>
    void say(DemoLine& line, Verb&& verb) {
        if (line.fault())
            return;
        const auto change = verb(verbs::VerbContext{book(), newId_});
        if (change)
            ledger_ = std::make_shared<const picture::Ledger>(ledger_->with(*change));
        else
            line.fail(change.error());
    }

    /// What `question(book)` answers on the day.
    template <class Question>
    [[nodiscard]] auto ask(Question&& question) {
        return question(book());
    }

    [[nodiscard]] MachineId machine(DemoLine& line, std::string_view column);
    [[nodiscard]] std::optional<MachineId> machineNamed(std::string_view name) const;
    [[nodiscard]] std::optional<PersonId> person(DemoLine& line, std::string_view column);  ///< empty: nobody
    [[nodiscard]] std::optional<ItemId> item(DemoLine& line, std::string_view column);      ///< empty: none
    [[nodiscard]] std::optional<EventId> event(DemoLine& line, std::string_view column);    ///< empty: none
    [[nodiscard]] std::optional<ToolId> tool(DemoLine& line, std::string_view column);      ///< empty: none
    [[nodiscard]] StockLineId shelfLine(DemoLine& line, std::string_view name) const;
    [[nodiscard]] std::optional<LotId> container(DemoLine& line, StockLineId of,
                                                 std::string_view label) const;
    [[nodiscard]] std::optional<SnagId> openSnag(DemoLine& line, MachineId machine,
                                                 std::string_view what) const;
    /// The version in force on the day; an empty one if there is none.
    [[nodiscard]] upkeep::TaskVersion task(DemoLine& line, MachineId machine, std::string_view code) const;
    [[nodiscard]] fastening::JointVersion joint(DemoLine& line, MachineId machine,
                                                std::string_view code) const;

    [[nodiscard]] const Starter* starter(std::string_view name) const;
    void tie(KitTie tie) { ties_.push_back(std::move(tie)); }
    [[nodiscard]] const std::vector<KitTie>& ties() const { return ties_; }

  private:
    /// The book of the day, which takes over from the one of the line before.
    const book::Book& book();

    std::shared_ptr<const picture::Ledger> ledger_;
    std::optional<book::Book> book_;
    base::IdSource newId_;
    calendar::Date day_{};
    std::vector<Starter> starters_;
    std::vector<KitTie> ties_;
};

/// What the lines of one file do.
using DemoAct = void (*)(DemoStage& stage, DemoLine& line);

// The acts, one for each file, in the files that hold them.
// demo_garage.cpp: who and what there is, and how it is used
void sayPerson(DemoStage& stage, DemoLine& line);
void sayMachine(DemoStage& stage, DemoLine& line);
void sayItem(DemoStage& stage, DemoLine& line);
void sayMove(DemoStage& stage, DemoLine& line);
void sayOuting(DemoStage& stage, DemoLine& line);
void sayReading(DemoStage& stage, DemoLine& line);
void sayOdometer(DemoStage& stage, DemoLine& line);
void sayGone(DemoStage& stage, DemoLine& line);
void sayWash(DemoStage& stage, DemoLine& line);
void saySetting(DemoStage& stage, DemoLine& line);
// demo_jobs.cpp, demo_upkeep.cpp, demo_drawer.cpp: what was done, what is to be done and what was found
void sayJoint(DemoStage& stage, DemoLine& line);
void sayInterval(DemoStage& stage, DemoLine& line);
void sayLimit(DemoStage& stage, DemoLine& line);
void sayJob(DemoStage& stage, DemoLine& line);
void sayMark(DemoStage& stage, DemoLine& line);
void sayTool(DemoStage& stage, DemoLine& line);
void sayCalibration(DemoStage& stage, DemoLine& line);
void sayCheck(DemoStage& stage, DemoLine& line);
void saySnag(DemoStage& stage, DemoLine& line);
void saySnagEnd(DemoStage& stage, DemoLine& line);
void sayDeferral(DemoStage& stage, DemoLine& line);
// demo_plans.cpp: the shelf, and what lies ahead
void sayShelfLine(DemoStage& stage, DemoLine& line);
void sayKit(DemoStage& stage, DemoLine& line);
void sayStock(DemoStage& stage, DemoLine& line);
void sayOrder(DemoStage& stage, DemoLine& line);
void sayEvent(DemoStage& stage, DemoLine& line);
void sayWindow(DemoStage& stage, DemoLine& line);
void sayPick(DemoStage& stage, DemoLine& line);
void saySheet(DemoStage& stage, DemoLine& line);

}  // namespace wm::exchange
