// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Threads, proof loads, torque and adapters against tests/reference/torque.json; each case names its source.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/fastening/drawer.h"
#include "core/fastening/preload.h"
#include "core/fastening/wrench.h"
#include "tests/core/made.h"
#include "tests/core/reference/cases.h"

namespace wm::reference {
namespace {

using fastening::Thread;
using nlohmann::json;

Thread threadOf(const json& input) {
    const auto thread = fastening::parseThread("thread", input.at("thread").get<std::string>());
    EXPECT_TRUE(thread) << input;
    return thread.value_or(Thread{});
}

void expectNear(double value, double expected, double relative, const json& one) {
    EXPECT_NEAR(value, expected, std::abs(expected) * relative) << one.at("id") << ' ' << one.at("source");
}

using Cases = testing::TestWithParam<const char*>;

class StressAreaReference : public Cases {};
TEST_P(StressAreaReference, OfTheBasicProfile) {
    const json one = caseOf("torque", GetParam());
    const json& expected = one.at("expected");
    const Thread thread = threadOf(one.at("input"));
    EXPECT_EQ(thread.diameter, one.at("input").at("d").get<double>());
    EXPECT_EQ(thread.pitch, one.at("input").at("P").get<double>());
    expectNear(thread.pitchDiameter(), expected.at("d2"), 1e-6, one);
    expectNear(thread.minorDiameter(), expected.at("d3"), 1e-6, one);
    expectNear(thread.stressArea(), expected.at("As"), 1e-6, one);
    expectNear(thread.nominalStressArea(), expected.at("As_published"), 1e-12, one);
}
INSTANTIATE_TEST_SUITE_P(Cases, StressAreaReference,
                         testing::Values("F01", "F03", "F04", "F05", "F07", "F08", "F09", "F11", "F12", "F13",
                                         "F14", "F16", "F18"));

TEST(ProofStressReference, OfEachClass) {
    const json one = caseOf("torque", "F19");
    for (const auto& [name, stress] : one.at("expected").at("Sp_MPa").items()) {
        const bool thick = name == "8.8 (d>16 mm)";
        const auto value =
            fastening::proofStress(thick ? "8.8" : name, thick ? Thread{18, 2.5} : Thread{16, 2});
        ASSERT_TRUE(value) << name;
        EXPECT_EQ(*value, stress.get<double>()) << name;
    }
}

class ProofLoadReference : public Cases {};
TEST_P(ProofLoadReference, OfEachClass) {
    const json one = caseOf("torque", GetParam());
    const json& expected = one.at("expected");
    const Thread thread = threadOf(one.at("input"));
    for (const auto& [name, load] : expected.at("proof_load_As_times_Sp").items())
        expectNear(fastening::proofLoad(name, thread).value_or(0), load, 1e-9, one);
    if (expected.contains("proof_load_published"))
        for (const auto& [name, load] : expected.at("proof_load_published").items())
            expectNear(fastening::proofLoad(name, thread).value_or(0), load, 0.006, one);
}
INSTANTIATE_TEST_SUITE_P(Cases, ProofLoadReference,
                         testing::Values("F20", "F23", "F24", "F26", "F27", "F29", "F31", "F33"));

// The printed proof loads of ISO 898-1, coarse from a public table "According to EN ISO 898-1" (optimas),
// fine from memory: 8.8, 10.9, 12.9.
TEST(ProofLoadTables, PrintedTablesFromM3ToM16) {
    struct Row {
        const char* thread;
        double loads[3];
    };
    static constexpr Row kRows[] = {
        {"M3", {2920, 4180, 4880}},           {"M3.5", {3940, 5630, 6580}},
        {"M4", {5100, 7290, 8520}},           {"M5", {8230, 11800, 13800}},
        {"M6", {11600, 16700, 19500}},        {"M7", {16800, 24000, 28000}},
        {"M8", {21200, 30400, 35500}},        {"M10", {33700, 48100, 56300}},
        {"M12", {48900, 70000, 81800}},       {"M14", {66700, 95500, 112000}},
        {"M16", {91000, 130000, 152000}},     {"M8x1", {22700, 32500, 38000}},
        {"M10x1", {37400, 53500, 62700}},     {"M10x1.25", {35500, 50800, 59400}},
        {"M12x1.25", {53400, 76400, 89300}},  {"M12x1.5", {51100, 73100, 85500}},
        {"M14x1.5", {72500, 104000, 121000}}, {"M16x1.5", {96900, 139000, 162000}},
    };
    for (const Row& row : kRows) {
        const auto thread = fastening::parseThread("thread", row.thread);
        ASSERT_TRUE(thread) << row.thread;
        const char* classes[] = {"8.8", "10.9", "12.9"};
        for (std::size_t at = 0; at < 3; ++at)
            EXPECT_NEAR(*fastening::proofLoad(classes[at], *thread), row.loads[at], 0.006 * row.loads[at])
                << row.thread << ' ' << classes[at];
    }
}

class NutFactorReference : public Cases {};
TEST_P(NutFactorReference, TorqueFromTheShareOfProof) {
    const json one = caseOf("torque", GetParam());
    const json& input = one.at("input");
    const Thread thread = threadOf(input);
    const double preload = input.at("preload_fraction_of_proof").get<double>() *
                           *fastening::proofLoad(input.at("class").get<std::string>(), thread);
    expectNear(preload, one.at("expected").at("preload_N"), 1e-9, one);
    expectNear(fastening::torqueByNutFactor(preload, thread, input.at("K")),
               one.at("expected").at("torque_Nm"), 1e-9, one);
}
INSTANTIATE_TEST_SUITE_P(Cases, NutFactorReference, testing::Values("F35", "F36"));

class FrictionReference : public Cases {};
TEST_P(FrictionReference, TorqueFromPreload) {
    const json one = caseOf("torque", GetParam());
    const json& input = one.at("input");
    const json& expected = one.at("expected");
    const Thread thread = threadOf(input);
    const fastening::Friction friction{input.at("mu_thread"), input.at("mu_head")};
    const double preload = input.at("preload_N");
    expectNear(thread.pitchDiameter(), expected.at("d2"), 1e-9, one);
    const double torque = fastening::torqueFor(preload, thread, friction, input.at("Dkm_mm"));
    expectNear(torque, expected.at("torque_Nm"), 1e-9, one);
    expectNear(fastening::exactTorqueFor(preload, thread, friction, input.at("Dkm_mm")),
               expected.at("torque_exact_Nm"), 1e-9, one);
    if (expected.contains("torque_published_Nm")) {
        const double tolerance = one.at("tolerance").at("torque_published_Nm").at("rel");
        expectNear(torque, expected.at("torque_published_Nm"), tolerance, one);
        // Our own bearing face keeps to it as well, a little wider.
        expectNear(fastening::torqueFor(preload, thread, friction, fastening::bearingDiameter(thread)),
                   expected.at("torque_published_Nm"), tolerance + 0.015, one);
    }
}
INSTANTIATE_TEST_SUITE_P(Cases, FrictionReference, testing::Values("F39", "F40", "F43", "F44", "F47"));

class AdapterReference : public Cases {};
TEST_P(AdapterReference, SettingOfTheWrench) {
    const json one = caseOf("torque", GetParam());
    const json& input = one.at("input");
    const auto setting =
        fastening::settingFor(input.at("target"), input.at("L"), {input.at("E"), input.at("angle_deg")});
    if (one.at("expected").contains("must_refuse")) {
        EXPECT_FALSE(setting);
        return;
    }
    ASSERT_TRUE(setting);
    expectNear(*setting, one.at("expected").at("setting"), 1e-9, one);
}
INSTANTIATE_TEST_SUITE_P(Cases, AdapterReference, testing::Values("F48", "F49", "F50", "F53", "F56", "F58"));

class DeviationReference : public Cases {};
TEST_P(DeviationReference, IsCountedOnTheReference) {
    const json one = caseOf("torque", GetParam());
    const json& input = one.at("input");
    const json& expected = one.at("expected");
    for (std::size_t at = 0; at < input.at("reference_Nm").size(); ++at) {
        const auto deviation =
            fastening::deviationPercent(input.at("set_Nm"), input.at("reference_Nm")[at].get<double>());
        ASSERT_TRUE(deviation);
        EXPECT_NEAR(*deviation, expected.at("deviation_percent")[at].get<double>(), 1e-6);
        EXPECT_EQ(std::abs(*deviation) <= expected.at("limit_percent").get<double>(),
                  expected.at("pass_each")[at].get<bool>());
    }
}
INSTANTIATE_TEST_SUITE_P(Cases, DeviationReference, testing::Values("F59", "F60"));

class CheckDueReference : public Cases {};
TEST_P(CheckDueReference, ByDateOrByCycles) {
    const json one = caseOf("torque", GetParam());
    const json& input = one.at("input");
    const json& expected = one.at("expected");
    const auto dayOf = [](const json& text) { return made::day(text.get<std::string>()); };
    fastening::Tool tool;
    tool.id = ToolId{1};
    tool.months = input.at("interval_months").get<std::int64_t>();
    tool.cycles = input.at("interval_cycles").get<std::int64_t>();
    fastening::Calibration check;
    check.tool = tool.id;
    check.entered = 1;
    check.date = dayOf(input.at("last_calibration"));
    fastening::JointMark mark;
    mark.entered = 2;
    mark.tool = tool.id;
    mark.date = check.date.plusDays(1);
    mark.kind = fastening::MarkKind::Confirmed;
    const auto standing = fastening::standingOf(
        tool, std::array{check}, std::array{mark},
        [&](const fastening::JointMark&) { return input.at("cycles_since").get<std::int64_t>(); },
        dayOf(input.at("today")));
    EXPECT_EQ(standing.nextOn, dayOf(expected.at("due_date"))) << one.at("source");
    EXPECT_EQ(standing.state, expected.at("reason") == "date" ? fastening::ToolState::DueByDate
                                                              : fastening::ToolState::DueByCycles);
}
INSTANTIATE_TEST_SUITE_P(Cases, CheckDueReference, testing::Values("F64", "F65"));

}  // namespace
}  // namespace wm::reference
