// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Unit conversion against tests/reference/units.json: exact rational values from the definitions in NIST SP
// 811 Appendix B.8 and NIST Handbook 44 Appendix C, checked with GNU units.
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "core/units/convert.h"
#include "tests/core/reference/cases.h"

namespace wm::reference {
namespace {

using nlohmann::json;

std::string symbol(const std::string& name) {
    static const std::map<std::string, std::string> names{{"N.m", "N·m"},
                                                          {"lbf.ft", "lbf·ft"},
                                                          {"lbf.in", "lbf·in"},
                                                          {"kgf.m", "kgf·m"},
                                                          {"kgf.cm", "kgf·cm"},
                                                          {"ozf.in", "ozf·in"},
                                                          {"kgf/cm2", "kgf/cm²"},
                                                          {"US_fl_oz", "US fl oz"},
                                                          {"mL", "ml"},
                                                          {"L", "l"},
                                                          {"imp_fl_oz", "imp fl oz"},
                                                          {"US_qt", "US qt"},
                                                          {"US_gal", "US gal"},
                                                          {"imp_gal", "imp gal"},
                                                          {"US_pt", "US pt"},
                                                          {"inch", "in"},
                                                          {"mile", "mi"},
                                                          {"mm2/s", "mm²/s"},
                                                          {"m2/s", "m²/s"},
                                                          {"cm3", "cm³"},
                                                          {"in3", "in³"},
                                                          {"degF", "°F"},
                                                          {"degC", "°C"}};
    const auto known = names.find(name);
    return known == names.end() ? name : known->second;
}

TEST(UnitsReference, ExactFactors) {
    const json one = caseOf("units", "E01");
    for (const json& row : one.at("expected").at("table")) {
        const auto factor = units::convert(1, symbol(row.at("from")), symbol(row.at("to")));
        ASSERT_TRUE(factor) << row.at("from");
        const double expected = row.at("factor");
        EXPECT_NEAR(*factor, expected, expected * 1e-15) << row.at("from");
        // The seven digits that SP 811 prints.
        EXPECT_NEAR(*factor, std::stod(row.at("sp811_7_digits").get<std::string>()), expected * 5e-7);
    }
}

class ConversionReference : public testing::TestWithParam<const char*> {};

TEST_P(ConversionReference, AgreesToTheLastDigits) {
    const json one = caseOf("units", GetParam());
    SCOPED_TRACE(one.at("source").get<std::string>());
    const json& input = one.at("input");
    const auto value = units::convert(input.at("value"), symbol(input.at("from")), symbol(input.at("to")));
    if (one.at("expected").contains("must_refuse")) {
        EXPECT_EQ(value.error().fault, base::Fault::WrongUnit);
        return;
    }
    ASSERT_TRUE(value);
    const double expected = one.at("expected").at("value");
    const json tolerance = one.at("tolerance").at("default");
    EXPECT_NEAR(*value, expected,
                std::abs(expected) * tolerance.at("rel").get<double>() + tolerance.value("abs", 0.0));
}

INSTANTIATE_TEST_SUITE_P(Cases, ConversionReference,
                         testing::Values("E02", "E03", "E05", "E07", "E08", "E10", "E12", "E14", "E16", "E18",
                                         "E20", "E22", "E23", "E25", "E26", "E27", "E28", "E30", "E32"));

}  // namespace
}  // namespace wm::reference
