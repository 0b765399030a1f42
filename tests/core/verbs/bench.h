// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <functional>
#include <limits>
#include <memory>
#include <ostream>
#include <string>
#include <type_traits>
#include <utility>

#include "core/base/phrase.h"
#include "core/picture/soundness.h"
#include "core/verbs/verbs.h"

namespace wm::verbs {

inline calendar::Date day(const char* iso) {
    return *calendar::parseDate("date", iso);
}

/// What was wrong, and where.
struct At {
    At(base::Fault what, std::string where) : fault(what), field(std::move(where)) {}

    base::Fault fault;
    std::string field;
    friend bool operator==(const At&, const At&) = default;
    friend void PrintTo(const At& at, std::ostream* out) {
        *out << "fault " << static_cast<int>(at.fault) << " in \"" << at.field << '"';
    }
};

/// A verb with what it is given.
template <class... Takes>
Verb saying(base::Result<picture::Change> (*verb)(const VerbContext&, Takes...),
            std::type_identity_t<Takes>... given) {
    return [verb, given...](const VerbContext& context) { return verb(context, given...); };
}

/// A file in memory: verbs are said to it one after the other, on a day that the test sets. Ids are counted
/// from 1000, so that they never look like a number of entry.
class Bench {
  public:
    calendar::Date today = day("2026-05-20");

    [[nodiscard]] const picture::Ledger& ledger() const { return *ledger_; }
    [[nodiscard]] book::Book book() const { return {ledger_, today}; }

    /// Says the verb; if it is refused nothing changes.
    base::Result<picture::Change> say(const Verb& verb) {
        const book::Book now = book();
        auto change = verb(VerbContext{now, [this] { return nextId_++; }});
        if (change) {
            EXPECT_EQ(picture::beyondBounds(change->rows), std::nullopt) << "it could not be read again";
            ledger_ = std::make_shared<const picture::Ledger>(ledger_->with(*change));
        }
        return change;
    }
    /// Says a verb that must be accepted; gives the words for undo.
    std::string must(const Verb& verb) {
        auto change = say(verb);
        if (!change) {
            ADD_FAILURE() << "refused: fault " << static_cast<int>(change.error().fault) << " in "
                          << change.error().field << ", given " << change.error().given << ", wanted "
                          << change.error().wanted;
            return {};
        }
        return base::said(base::restored(change->text));
    }
    /// Says a verb that must be refused, and checks that it changed nothing.
    base::Error refused(const Verb& verb) {
        const auto before = ledger_;
        auto change = say(verb);
        if (change) {
            ADD_FAILURE() << "accepted: " << base::said(base::restored(change->text));
            return {};
        }
        EXPECT_EQ(before, ledger_);
        return change.error();
    }
    At refusedAt(const Verb& verb) {
        auto error = refused(verb);
        return {error.fault, error.field.text()};
    }
    /// The id of the last row of a type.
    template <class R>
    [[nodiscard]] auto last() const {
        return ledger_->all<R>().back().id;
    }

  private:
    std::shared_ptr<const picture::Ledger> ledger_ = std::make_shared<const picture::Ledger>();
    std::int64_t nextId_ = 1000;
};

/// A bench with a machine since 2026-01-10 (new), a rider, an engine and a wheel fitted on that day, a task
/// on the engine, a step with a joint, a task behind it, and a line of fork oil with a bottle.
class FurnishedBench : public Bench {
  public:
    FurnishedBench();
    MachineId heron;
    PersonId mara;
    ItemId engine;
    ItemId wheel;
    TaskId oilChange;  ///< on the engine, every 6 h
    TaskId pads;       ///< safety, behind the step "rear-wheel"
    JointId axle;
    StockLineId oil;
    LotId bottle;  ///< 1000 ml, not opened

    /// A task on the rear wheel, every 20 h, that renews it.
    TaskId saveWheelBearings();
    [[nodiscard]] upkeep::Record job(TaskId task, const char* on) const {
        return {.machine = heron, .task = task, .date = day(on)};
    }
    [[nodiscard]] usage::Outing outing(const char* on, std::int64_t hundredths) const {
        return {.machine = heron, .date = day(on), .hours = units::Hours{hundredths}};
    }
};

inline Verb record(JobDraft draft) {
    return saying(recordJob, std::move(draft));
}
inline Verb ride(OutingDraft draft) {
    return saying(logOuting, std::move(draft));
}

}  // namespace wm::verbs
