// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/calendar/date.h"
#include "core/units/decimal.h"
#include "core/units/quantity.h"

namespace wm::picture {

// Bounds of single figures: beyond them a figure is a typing error, and sums stay far inside 64 bits.
inline constexpr std::int64_t kMostHours = 10'000'000;      ///< hundredths: 100,000 h
inline constexpr std::int64_t kMostMetres = 1'000'000'000;  ///< 1,000,000 km
inline constexpr std::int64_t kMostCoolMinutes = 1'440;
inline constexpr std::int64_t kMostMinutes = 100'000;      ///< of one job
inline constexpr std::int64_t kMostMoney = 1'000'000'000;  ///< minor units
inline constexpr std::int64_t kMostAmount = 100'000'000;   ///< pieces, millilitres or grams
inline constexpr std::int64_t kMostUsed = 100'000;         ///< of one line by one job: 100 l or 100 kg
inline constexpr std::int64_t kMostDays = 36'525;          ///< a hundred years
inline constexpr std::int64_t kMostOfADay = 1'000;         ///< starts, spokes, hands: small counts

inline constexpr std::int64_t kMostEntered = 1'000'000'000'000'000;  ///< the place in the order of entry

/// The checks of one verb. The first fault is kept and the later ones are not looked at, so a verb lists its
/// checks and asks once at the end. Text is trimmed in place.
class Checks {
  public:
    Checks() = default;
    /// Of what stands in a file already: that figures, days and the lengths of texts are within their bounds,
    /// no more. Texts stay as they are. What earlier programs let somebody say is still theirs.
    static Checks ofStored();

    [[nodiscard]] bool failed() const { return error_.has_value(); }
    [[nodiscard]] const std::optional<base::Error>& error() const { return error_; }
    [[nodiscard]] tl::unexpected<base::Error> refusal() const { return tl::unexpected<base::Error>{*error_}; }
    /// Faults of a part are named under it: within "rows[3]", "name" becomes "rows[3].name".
    void setPrefix(base::Place prefix) { prefix_ = std::move(prefix); }

    void that(bool holds, base::Fault fault, const base::Place& field, std::string given = {},
              std::string wanted = {});
    void take(const base::Result<void>& result);
    /// The same for the meter figure that came with something else, whose form calls it "meter".
    void takeMeter(base::Result<void> result);

    void name(const base::Place& field, std::string& text);  ///< as base::parseName
    void word(const base::Place& field, std::string& text);  ///< one line as a name, or empty
    /// The same of at most so many characters.
    void shortWord(const base::Place& field, std::string& text, std::size_t most);
    void note(const base::Place& field, std::string& text);   ///< as base::parseNote
    void words(const base::Place& field, std::string& text);  ///< a note that must not be empty
    void code(const base::Place& field, std::string& text);   ///< a name without blanks or slashes

    void fromZero(const base::Place& field, std::int64_t value, std::int64_t most);
    void fromOne(const base::Place& field, std::int64_t value, std::int64_t most);
    void hours(const base::Place& field, const std::optional<units::Hours>& value);
    void metres(const base::Place& field, const std::optional<units::Metres>& value);
    void minutes(const base::Place& field, const std::optional<units::Minutes>& value);
    void money(const base::Place& field, const std::optional<units::Money>& value);
    void decimal(const base::Place& field, const std::optional<units::Decimal>& value);
    void date(const base::Place& field,
              const std::optional<calendar::Date>& value);  ///< in the calendar's range
    void ordered(const base::Place& field, calendar::Date first, calendar::Date last);

  private:
    void length(const base::Place& field, std::string_view text, std::size_t most);

    std::optional<base::Error> error_;
    base::Place prefix_;
    bool stored_ = false;
};

/// "tasks[3].code"; without a field the line itself.
inline base::Place placeIn(std::string_view list, std::size_t at, const base::Place& field = {}) {
    return field.within(list, at);
}
/// `a` and `b` are the same name to a reader: ASCII letters of either case, blanks around left out.
bool sameName(std::string_view a, std::string_view b);
/// The first line of a note, cut to what fits in a menu.
std::string shortened(std::string_view text);

}  // namespace wm::picture
