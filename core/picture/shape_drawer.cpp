// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/shape.h"

// Torque tools and how they were found when they were checked.

namespace wm::picture {

using base::Fault;

namespace {

constexpr std::int64_t kMostMillimetres = 10'000;
constexpr std::int64_t kMostMonths = 120;
constexpr std::int64_t kMostCycles = 1'000'000;

void checkInterval(Checks& check, const std::optional<std::int64_t>& months,
                   const std::optional<std::int64_t>& cycles) {
    if (months)
        check.fromOne("months", *months, kMostMonths);
    if (cycles)
        check.fromOne("cycles", *cycles, kMostCycles);
}

}  // namespace

void checkShape(Checks& check, fastening::Tool& row) {
    static constexpr units::Decimal kNothing{};
    check.name("name", row.name);
    check.word("drive", row.drive);
    check.decimal("low", row.low);
    check.decimal("high", row.high);
    check.decimal("resolution", row.resolution);
    if (!check.failed()) {
        check.that(row.low >= kNothing, Fault::Negative, "low", row.low.text());
        check.that(row.high > kNothing, Fault::NotPositive, "high", row.high.text());
        check.that(row.high <= kMostTorque, Fault::TooLarge, "high", row.high.text(), kMostTorque.text());
        check.that(row.low <= row.high, Fault::OutOfOrder, "high", row.high.text(), row.low.text());
        if (row.resolution)
            check.that(*row.resolution > kNothing, Fault::NotPositive, "resolution", row.resolution->text());
    }
    if (row.length)
        check.fromOne("length", *row.length, kMostMillimetres);
    checkInterval(check, row.months, row.cycles);
    check.note("note", row.note);
}

void checkShape(Checks& check, fastening::Calibration& row) {
    static constexpr units::Decimal kHundred{100, 0};
    check.date("date", row.date);
    check.that(row.leftWithin || !row.foundWithin, Fault::Inconsistent, "left_within");
    check.decimal("worst", row.worst);
    if (!check.failed() && row.worst)
        check.that(*row.worst <= kHundred && units::Decimal(-100, 0) <= *row.worst, Fault::TooLarge, "worst",
                   row.worst->text(), kHundred.text());
    check.word("by_whom", row.byWhom);
    checkInterval(check, row.months, row.cycles);
    check.note("note", row.note);
}

}  // namespace wm::picture
