// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/names.h"
#include "core/base/result.h"
#include "core/base/text.h"
#include "core/calendar/date.h"
#include "core/exchange/csv_text.h"
#include "core/units/decimal.h"
#include "core/units/quantity.h"

namespace wm::exchange {

/// One line of a demo file while it is read. A cell that cannot be read is kept as the fault of the line and
/// reads as nothing; whoever says the line asks once for `fault()`.
class DemoLine {
  public:
    DemoLine(const std::vector<std::string>& columns, const CsvRow& row, calendar::Date pinned)
        : columns_(columns), row_(row), pinned_(pinned) {}

    [[nodiscard]] std::string text(std::string_view column);
    [[nodiscard]] bool has(std::string_view column) { return !text(column).empty(); }
    /// Days from the pinned day: "-34".
    [[nodiscard]] calendar::Date day(std::string_view column);
    [[nodiscard]] std::optional<calendar::Date> dayIf(std::string_view column);
    [[nodiscard]] std::int64_t count(std::string_view column);  ///< empty: 0
    [[nodiscard]] std::optional<std::int64_t> countIf(std::string_view column);
    [[nodiscard]] std::optional<units::Hours> hoursIf(std::string_view column);
    [[nodiscard]] units::Hours hours(std::string_view column);  ///< empty: 0
    [[nodiscard]] std::optional<units::Decimal> decimalIf(std::string_view column);
    [[nodiscard]] std::optional<units::Money> moneyIf(std::string_view column);  ///< "12.50"
    [[nodiscard]] std::optional<units::Minutes> minutesIf(std::string_view column);
    [[nodiscard]] units::Minutes timeOfDay(std::string_view column);
    [[nodiscard]] bool yes(std::string_view column);                        ///< "yes"; "no" or empty
    [[nodiscard]] std::vector<std::string> words(std::string_view column);  ///< between blanks
    [[nodiscard]] std::vector<std::string> parts(std::string_view column);  ///< between semicolons
    /// "name=value; name=value"
    [[nodiscard]] std::vector<std::pair<std::string, std::string>> pairs(std::string_view column);
    /// A word of an enumeration; empty: `otherwise`.
    template <base::Named E>
    [[nodiscard]] E word(std::string_view column, E otherwise) {
        const std::string given = text(column);
        const auto known = base::fromName<E>(given);
        if (!given.empty() && !known)
            fail(base::Error{base::Fault::Unknown, std::string(column), given, {}});
        return known.value_or(otherwise);
    }

    void fail(base::Error error);
    template <class T>
    std::optional<T> taken(const base::Result<T>& result) {
        if (result)
            return *result;
        fail(result.error());
        return std::nullopt;
    }
    [[nodiscard]] const std::optional<base::Error>& fault() const { return fault_; }
    [[nodiscard]] std::size_t number() const { return row_.line; }

  private:
    const std::vector<std::string>& columns_;
    const CsvRow& row_;
    calendar::Date pinned_;
    std::optional<base::Error> fault_;
};

}  // namespace wm::exchange
