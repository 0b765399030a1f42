// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/convert.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/units/torque.h"

namespace wm::units {
namespace {

TEST(ConvertTest, KnowsEveryUnitOnceAndConvertsItBack) {
    for (const UnitOf& from : knownUnits()) {
        EXPECT_EQ(std::count_if(knownUnits().begin(), knownUnits().end(),
                                [&](const UnitOf& unit) { return unit.symbol == from.symbol; }),
                  1)
            << from.symbol;
        for (const UnitOf& to : knownUnits()) {
            const auto there = convert(38.5, from.symbol, to.symbol);
            EXPECT_EQ(there.has_value(), from.measure == to.measure) << from.symbol << " to " << to.symbol;
            if (there) {
                EXPECT_NEAR(*convert(*there, to.symbol, from.symbol), 38.5, 38.5 * 1e-14) << from.symbol;
            }
        }
    }
}

TEST(ConvertTest, FractionsAreExactInADouble) {
    // Whole numbers below 2^53, or a power of ten times one: nothing is lost before the division.
    for (const UnitOf& unit : knownUnits()) {
        EXPECT_EQ(unit.numerator, std::floor(unit.numerator)) << unit.symbol;
        EXPECT_EQ(unit.denominator, std::floor(unit.denominator)) << unit.symbol;
        EXPECT_LT(unit.numerator, std::exp2(53)) << unit.symbol;
    }
}

TEST(ConvertTest, RefusesWhatHasNoAnswer) {
    EXPECT_EQ(convert(10, "N·m", "l").error(), (base::Error{base::Fault::WrongUnit, "to", "l", "N·m"}));
    EXPECT_EQ(convert(10, "N·m", "cubit").error(),
              (base::Error{base::Fault::WrongUnit, "to", "cubit", "N·m"}));
    EXPECT_EQ(convert(10, "", "l").error(), (base::Error{base::Fault::WrongUnit, "from", "", ""}));
    for (const double value :
         {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()})
        EXPECT_EQ(convert(value, "l", "ml").error().fault, base::Fault::NotANumber);
}

TEST(TorqueTest, ShowsNoMoreDigitsThanItsSource) {
    using enum TorqueUnit;
    const auto text = [](std::int64_t digits, int places, TorqueUnit from, TorqueUnit to) {
        return convertedTorqueText(Decimal{digits, places}, from, to);
    };
    EXPECT_EQ(text(38, 0, PoundForceFoot, NewtonMetre), "52");            // 51.52
    EXPECT_EQ(text(380, 1, PoundForceFoot, NewtonMetre), "51.5");         // 38.0
    EXPECT_EQ(text(25, 1, KilogramForceMetre, NewtonMetre), "25");        // 2.5: 24.517
    EXPECT_EQ(text(25, 0, NewtonMetre, PoundForceInch), "220");           // 221.27
    EXPECT_EQ(text(250, 1, NewtonMetre, PoundForceInch), "221");          // 25.0
    EXPECT_EQ(text(60, 0, PoundForceInch, NewtonMetre), "6.8");           // 6.779
    EXPECT_EQ(text(9, 1, KilogramForceMetre, NewtonMetre), "9");          // 0.9: 8.826
    EXPECT_EQ(text(11, 0, NewtonMetre, KilogramForceMetre), "1.1");       // 1.1217
    EXPECT_EQ(text(5, 0, NewtonMetre, KilogramForceMetre), "0.5");        // 0.50986
    EXPECT_EQ(text(50, 0, KilogramForceCentimetre, NewtonMetre), "4.9");  // 4.903
    EXPECT_EQ(text(-38, 0, PoundForceFoot, NewtonMetre), "-52");
}

TEST(TorqueTest, ARoundingUpToTheNextPowerAddsNoDigit) {
    const auto metric = [](std::int64_t digits, int places, TorqueUnit from) {
        return convertedTorqueText(Decimal{digits, places}, from, TorqueUnit::NewtonMetre);
    };
    EXPECT_EQ(metric(88, 0, TorqueUnit::PoundForceInch), "9.9");             // 9.943
    EXPECT_EQ(metric(1, 0, TorqueUnit::KilogramForceMetre), "10");           // 9.807 in one digit
    EXPECT_EQ(metric(10, 1, TorqueUnit::KilogramForceMetre), "9.8");         // in two
    EXPECT_EQ(metric(736, 1, TorqueUnit::PoundForceFoot), "99.8");           // 99.788
    EXPECT_EQ(metric(736, 0, TorqueUnit::PoundForceFoot), "998");            // 997.88
    EXPECT_EQ(metric(885, 1, TorqueUnit::PoundForceInch), "10.0");           // 9.9992 in three digits
    EXPECT_EQ(metric(102, 1, TorqueUnit::KilogramForceCentimetre), "1.00");  // 1.0003
}

TEST(TorqueTest, InItsOwnUnitItStaysAsWritten) {
    EXPECT_EQ(convertedTorqueText(Decimal{250, 2}, TorqueUnit::NewtonMetre, TorqueUnit::NewtonMetre, ','),
              "2,50");
    EXPECT_EQ(convertedTorqueText(Decimal{0, 1}, TorqueUnit::PoundForceFoot, TorqueUnit::NewtonMetre), "0.0");
    EXPECT_EQ(convertedTorqueText(Decimal{60, 0}, TorqueUnit::PoundForceInch, TorqueUnit::NewtonMetre, ','),
              "6,8");
}

}  // namespace
}  // namespace wm::units
