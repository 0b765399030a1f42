// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/calendar/date.h"
#include "core/ledger/book.h"
#include "core/ledger/ledger.h"
#include "core/units/decimal.h"
#include "core/units/quantity.h"

namespace wm::ledger {

// Bounds of single figures: beyond them a figure is a slip of the hand, and sums stay far inside 64 bits.
inline constexpr std::int64_t kMostHours = 10'000'000;      ///< hundredths: 100,000 h
inline constexpr std::int64_t kMostMetres = 1'000'000'000;  ///< 1,000,000 km
inline constexpr std::int64_t kMostMinutes = 100'000;       ///< of one job
inline constexpr std::int64_t kMostMoney = 1'000'000'000;   ///< minor units
inline constexpr std::int64_t kMostAmount = 100'000'000;    ///< pieces, millilitres or grams
inline constexpr std::int64_t kMostDays = 36'525;           ///< a hundred years
inline constexpr std::int64_t kMostOfADay = 1'000;          ///< starts, spokes, hands: small counts

/// The checks of one verb. The first fault is kept and the later ones are not looked at, so a verb lists its
/// checks and asks once at the end. Text is trimmed in place.
class Checks {
  public:
    [[nodiscard]] bool failed() const { return error_.has_value(); }
    [[nodiscard]] tl::unexpected<base::Error> refusal() const { return tl::unexpected<base::Error>{*error_}; }
    /// Faults of a part are named under it: with prefix "rows[3].", "name" becomes "rows[3].name".
    void setPrefix(std::string prefix) { prefix_ = std::move(prefix); }

    void that(bool holds, base::Fault fault, std::string_view field, std::string given = {},
              std::string wanted = {});
    void take(const base::Result<void>& result);
    /// The same for the meter figure that came with something else, whose form calls it "meter".
    void takeMeter(base::Result<void> result);

    void name(std::string_view field, std::string& text);   ///< as base::parseName
    void word(std::string_view field, std::string& text);   ///< one line as a name, or empty
    void note(std::string_view field, std::string& text);   ///< as base::parseNote
    void words(std::string_view field, std::string& text);  ///< a note that must not be empty
    void code(std::string_view field, std::string& text);   ///< a name without blanks or slashes

    void fromZero(std::string_view field, std::int64_t value, std::int64_t most);
    void fromOne(std::string_view field, std::int64_t value, std::int64_t most);
    void hours(std::string_view field, const std::optional<units::Hours>& value);
    void metres(std::string_view field, const std::optional<units::Metres>& value);
    void minutes(std::string_view field, const std::optional<units::Minutes>& value);
    void money(std::string_view field, const std::optional<units::Money>& value);
    void decimal(std::string_view field, const std::optional<units::Decimal>& value);
    void date(std::string_view field,
              const std::optional<calendar::Date>& value);  ///< in the calendar's range
    void ordered(std::string_view field, calendar::Date first, calendar::Date last);

  private:
    std::optional<base::Error> error_;
    std::string prefix_;
};

/// Checks that ask the book: is the thing there, was it there on that day.
class BookChecks : public Checks {
  public:
    explicit BookChecks(const Book& book) : book_(book) {}

    /// The row of this id that counts, or a fault Unknown and nullptr.
    template <class R, class IdType>
    const R* row(std::string_view field, IdType id) {
        const R* found = book_.ledger().find<R>(id);
        if (found != nullptr && book_.ledger().strikeOf(id.value()) != nullptr)
            found = nullptr;
        that(found != nullptr, base::Fault::Unknown, field, std::to_string(id.value()));
        return found;
    }
    template <class R, class IdType>
    const R* row(std::string_view field, const std::optional<IdType>& id) {
        return id ? row<R>(field, *id) : nullptr;
    }

    void fact(calendar::Date date);  ///< a day up to today
    void notBefore(calendar::Date date, calendar::Date first);
    /// A fact about a machine: known, not before it was there, not after it went.
    const items::Machine* machineOn(MachineId machine, calendar::Date date);
    /// The wording of a task of this machine on a day; the first wording if the day is before it.
    const upkeep::TaskVersion* taskOf(std::string_view field, MachineId machine, TaskId task,
                                      calendar::Date date);
    /// A snag of this machine that counts; with `open`, NothingToDo if it has ended.
    const upkeep::Snag* snagOf(std::string_view field, MachineId machine, SnagId snag, bool open);
    /// The container of a line, if one is named.
    void lotOf(std::string_view field, const std::optional<LotId>& lot, StockLineId line);

  private:
    const Book& book_;
};

/// "tasks[3].code"
std::string placeIn(std::string_view list, std::size_t at, std::string_view field);
/// `a` and `b` are the same name to a reader: ASCII letters of either case, blanks around left out.
bool sameName(std::string_view a, std::string_view b);
/// The first line of a note, cut to what fits in a menu.
std::string shortened(std::string_view text);

/// The wording of a task on a day, the first one if the day is before it, or nullptr for an unknown task.
const upkeep::TaskVersion* wordingOn(const Ledger& ledger, TaskId task, calendar::Date date);
/// True if an end of this snag counts.
bool hasEnded(const Ledger& ledger, SnagId snag);
std::string machineName(const Ledger& ledger, MachineId machine);
/// The meter readings of one machine that count; no other use.
usage::UseFacts readingsOf(const Ledger& ledger, MachineId machine);

}  // namespace wm::ledger
