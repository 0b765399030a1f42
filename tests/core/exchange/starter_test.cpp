// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/starter.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/core/exchange/schema_check.h"
#include "tests/repository.h"

namespace wm::exchange {
namespace {

using base::Error;
using base::Fault;
using nlohmann::json;

json starterSchema() {
    return json::parse(test::repositoryText("resources/starter.schema.json"));
}

json example() {
    return starterSchema().at("examples").at(0);
}

Error refusal(const json& starter) {
    const auto read = readStarter(starter.dump());
    EXPECT_FALSE(read) << "was accepted: " << starter.dump();
    return read ? Error{} : read.error();
}

TEST(Starter, ReadsTheExampleOfTheSchema) {
    const auto starter = readStarter(example().dump());
    ASSERT_TRUE(starter) << starter.error().field << ' ' << starter.error().given;
    ASSERT_EQ(starter->steps.size(), 2U);
    ASSERT_EQ(starter->joints.size(), 2U);
    ASSERT_EQ(starter->tasks.size(), 2U);
    const upkeep::TaskVersion& bearings = starter->tasks[0];
    EXPECT_EQ(bearings.limits[0], (upkeep::Limit{upkeep::Counter::Hours, 1500, std::nullopt, 200, false}));
    EXPECT_EQ(bearings.limits[1], (upkeep::Limit{upkeep::Counter::Months, 6, std::nullopt, 0, false}));
    EXPECT_EQ(bearings.followUps[1],
              (upkeep::FollowUpRule{"chain slack", "chain", upkeep::When::AfterHours, 100}));
    EXPECT_EQ(bearings.steps, std::vector{base::Code{"rear-wheel"}});
    EXPECT_EQ(starter->steps[1].cautions[0].hazard, upkeep::Hazard::Brakes);
    EXPECT_FALSE(starter->joints[0].torque);
    EXPECT_EQ(test::breaches(starterSchema(), example()), std::vector<std::string>{});
}

// A row type and the object of the schema that describes it, with the keys that a starter has no use for.
template <class T>
void expectKeys(const char* definition, std::set<std::string> leftOut) {
    const json properties = starterSchema().at("$defs").at(definition).at("properties");
    std::set<std::string> told;
    for (const auto& [key, rule] : properties.items())
        told.insert(key);
    std::set<std::string> known;
    const T row{};
    T::fields(row, [&](std::string_view key, const auto& /*member*/) { known.insert(std::string(key)); });
    for (const std::string& key : leftOut)
        EXPECT_EQ(known.erase(key), 1U) << definition << ": " << key;
    EXPECT_EQ(told, known) << definition;
}

TEST(Starter, SchemaHasTheKeysOfTheRows) {
    expectKeys<upkeep::TaskVersion>(
        "task", {"id", "entered", "task", "machine", "valid_from", "confirmed", "from_starter", "weights"});
    expectKeys<weekend::StepVersion>(
        "step", {"id", "entered", "step", "machine", "valid_from", "confirmed", "from_starter"});
    expectKeys<fastening::JointVersion>(
        "joint", {"id", "entered", "joint", "machine", "valid_from", "confirmed", "from_starter", "torque",
                  "torque_high", "typed_by", "checked_by", "shared_from", "shared_to"});
    expectKeys<upkeep::KitLine>("kit_line", {"line", "confirmed"});
    expectKeys<upkeep::MeasurePoint>("measure", {"confirmed"});
    expectKeys<upkeep::Trigger>("trigger", {});
    expectKeys<weekend::Need>("need", {});
    expectKeys<upkeep::Doing>("doing", {});
    expectKeys<upkeep::Limit>("limit", {"counter"});
    expectKeys<upkeep::FollowUpRule>("follow_up", {"amount"});
}

TEST(Starter, SaysCommonPracticeWhereNoSourceIsNamedAndConfirmsNothing) {
    json text = example();
    text["tasks"][1]["source"] = "JIS D 9001";
    const auto starter = readStarter(text.dump());
    ASSERT_TRUE(starter);
    EXPECT_EQ(starter->tasks[0].source, "common practice");
    EXPECT_EQ(starter->tasks[1].source, "JIS D 9001");
    EXPECT_EQ(starter->steps[0].source, "common practice");
    EXPECT_FALSE(starter->tasks[0].confirmed);
}

TEST(Starter, HasNoPlaceForATorqueOrAConfirmation) {
    for (const char* key : {"torque", "torque_high", "confirmed"}) {
        json text = example();
        text["joints"][0][key] = "110";
        const Error error = refusal(text);
        EXPECT_EQ(error.fault, Fault::Malformed);
        EXPECT_EQ(error.field, std::string("joints[0].") + key);
    }
    json text = example();
    text["tasks"][0]["confirmed"] = true;
    EXPECT_EQ(refusal(text).field, "tasks[0].confirmed");
    text = example();
    text["tasks"][0]["measures"][0]["confirmed"] = true;
    EXPECT_EQ(refusal(text).field, "tasks[0].measures[0].confirmed");
}

TEST(Starter, AFigureOfAMeasurementNeedsItsSource) {
    json text = example();
    text["tasks"][0]["measures"][0]["most"] = "0.5";
    EXPECT_EQ(refusal(text), (Error{Fault::Empty, "tasks[0].measures[0].source", {}, {}}));
    text["tasks"][0]["measures"][0]["source"] = "ISO 606";
    EXPECT_TRUE(readStarter(text.dump()));
}

struct AmountCase {
    const char* text;
    upkeep::Counter counter;
    std::int64_t count;
};
class StarterAmount : public testing::TestWithParam<AmountCase> {};

TEST_P(StarterAmount, IsSaidWithItsUnit) {
    json text = example();
    text["tasks"][1]["limits"] = json::array({{{"every", GetParam().text}}});
    const auto starter = readStarter(text.dump());
    ASSERT_TRUE(starter) << starter.error().field;
    EXPECT_EQ(starter->tasks[1].limits[0].counter, GetParam().counter);
    EXPECT_EQ(starter->tasks[1].limits[0].every, GetParam().count);
}

INSTANTIATE_TEST_SUITE_P(Units, StarterAmount,
                         testing::Values(AmountCase{"15 h", upkeep::Counter::Hours, 1500},
                                         AmountCase{"0.5 h", upkeep::Counter::Hours, 50},
                                         AmountCase{"250 km", upkeep::Counter::Metres, 250'000},
                                         AmountCase{"1 outing", upkeep::Counter::Outings, 1},
                                         AmountCase{"10 starts", upkeep::Counter::Starts, 10},
                                         AmountCase{"10 washes", upkeep::Counter::Washes, 10},
                                         AmountCase{"2 mud days", upkeep::Counter::MudDays, 2},
                                         AmountCase{"1 crash", upkeep::Counter::Crashes, 1},
                                         AmountCase{"30 days", upkeep::Counter::Days, 30},
                                         AmountCase{"12 months", upkeep::Counter::Months, 12}));

struct BadCase {
    const char* what;
    const char* pointer;  // where the example is changed
    const char* value;    // to this JSON
    Fault fault;
    const char* field;
};
class StarterBad : public testing::TestWithParam<BadCase> {};

TEST_P(StarterBad, IsRefusedWithItsPlace) {
    json text = example();
    text[json::json_pointer(GetParam().pointer)] = json::parse(GetParam().value);
    const Error error = refusal(text);
    EXPECT_EQ(error.fault, GetParam().fault) << GetParam().what;
    EXPECT_EQ(error.field, GetParam().field) << GetParam().what;
}

INSTANTIATE_TEST_SUITE_P(
    Places, StarterBad,
    testing::Values(
        BadCase{"unit", "/tasks/1/limits/0/every", R"("15")", Fault::WrongUnit, "tasks[1].limits[0].every"},
        BadCase{"unknown unit", "/tasks/1/limits/0/every", R"("15 laps")", Fault::WrongUnit,
                "tasks[1].limits[0].every"},
        BadCase{"number alone", "/tasks/1/limits/0/every", "15", Fault::Malformed,
                "tasks[1].limits[0].every"},
        BadCase{"nothing", "/tasks/1/limits/0/every", R"("0 h")", Fault::NotPositive,
                "tasks[1].limits[0].every"},
        BadCase{"half a wash", "/tasks/1/limits/0/every", R"("1.5 washes")", Fault::Malformed,
                "tasks[1].limits[0].every"},
        BadCase{"mixed units", "/tasks/0/limits/0/allowance", R"("3 washes")", Fault::WrongUnit,
                "tasks[0].limits[0].allowance"},
        BadCase{"hard with allowance", "/tasks/0/limits/0/hard", "true", Fault::Inconsistent,
                "tasks[0].limits[0].allowance"},
        BadCase{"unknown step", "/tasks/0/steps/0", R"("tank")", Fault::Unknown, "tasks[0].steps[0]"},
        BadCase{"unknown joint", "/tasks/0/joints/0", R"("tank")", Fault::Unknown, "tasks[0].joints[0]"},
        BadCase{"unknown joint of a step", "/steps/1/joints/0", R"("tank")", Fault::Unknown,
                "steps[1].joints[0]"},
        BadCase{"unknown need", "/steps/1/needs/0/code", R"("tank")", Fault::Unknown, "steps[1].needs[0]"},
        BadCase{"unknown follow-up", "/tasks/0/follow_ups/1/code", R"("tank")", Fault::Unknown,
                "tasks[0].follow_ups[1]"},
        BadCase{"unknown trigger job", "/tasks/0/triggers/1/code", R"("tank")", Fault::Unknown,
                "tasks[0].triggers[1]"},
        BadCase{"trigger job without code", "/tasks/0/triggers/1/code", R"("")", Fault::Inconsistent,
                "tasks[0].triggers[1].code"},
        BadCase{"nth of nothing", "/tasks/0/nth", "3", Fault::Inconsistent, "tasks[0].nth"},
        BadCase{"unknown hazard", "/tasks/0/cautions/0", R"("bears")", Fault::Unknown,
                "tasks[0].cautions[0]"},
        BadCase{"unknown class", "/tasks/0/consequence", R"("bad")", Fault::Unknown, "tasks[0].consequence"},
        BadCase{"due in words that are none", "/tasks/0/follow_ups/0/due", R"("soon")", Fault::Unknown,
                "tasks[0].follow_ups[0].due"},
        BadCase{"duplicate code", "/tasks/1/code", R"("wheel-bearings-rear")", Fault::Duplicate,
                "tasks[1].code"},
        BadCase{"code with capitals", "/tasks/0/code", R"("Wheel bearings")", Fault::Malformed,
                "tasks[0].code"},
        BadCase{"no name", "/tasks/0/name", R"(" ")", Fault::Empty, "tasks[0].name"},
        BadCase{"negative minutes", "/tasks/0/minutes", "-1", Fault::Negative, "tasks[0].minutes"},
        BadCase{"no piece", "/tasks/0/kit/0/amount", "0", Fault::NotPositive, "tasks[0].kit[0].amount"},
        BadCase{"steps that need each other", "/steps/0/needs", R"([{"code": "rear-wheel"}])", Fault::Cycle,
                "steps"},
        BadCase{"edge to a joint that is not there", "/steps/1/edges",
                R"([{"earlier": "crack tank", "later": "off seat"}])", Fault::Unknown,
                "steps[1].edges[0].earlier"},
        BadCase{"edge to a step that is not there", "/steps/1/edges",
                R"([{"earlier": "off seat", "later": "on tank"}])", Fault::Unknown,
                "steps[1].edges[0].later"},
        BadCase{"edge to a doing that nobody asks for", "/tasks/0/edges",
                R"([{"earlier": "do pump", "later": "off seat"}])", Fault::Unknown,
                "tasks[0].edges[0].earlier"},
        BadCase{"edge to a job that is not there", "/tasks/0/edges",
                R"([{"earlier": "off seat", "later": "job paint"}])", Fault::Unknown,
                "tasks[0].edges[0].later"},
        BadCase{"an act of no kind", "/steps/1/edges", R"([{"earlier": "paint seat", "later": "off seat"}])",
                Fault::Unknown, "steps[1].edges[0].earlier"},
        BadCase{"an act without a code", "/steps/1/edges", R"([{"earlier": "off", "later": "off seat"}])",
                Fault::Unknown, "steps[1].edges[0].earlier"},
        BadCase{"an act before itself", "/steps/1/edges", R"([{"earlier": "off seat", "later": "off seat"}])",
                Fault::Cycle, "steps[1].edges[0].later"},
        BadCase{"acts that wait for each other", "/steps/1/edges",
                R"([{"earlier": "on seat", "later": "off seat"}])", Fault::Cycle, "edges"},
        BadCase{"a doing twice", "/steps/1/doings",
                R"([{"code": "pump", "what": "Pump"}, {"code": "pump", "what": "Pump again"}])",
                Fault::Duplicate, "steps[1].doings[1].code"},
        BadCase{"a doing without words", "/steps/1/doings", R"([{"code": "pump", "what": ""}])", Fault::Empty,
                "steps[1].doings[0].what"},
        BadCase{"an id", "/tasks/0/id", "7", Fault::Malformed, "tasks[0].id"},
        BadCase{"a key of nobody", "/colour", R"("red")", Fault::Malformed, "colour"},
        BadCase{"a newer format", "/format", "2", Fault::NewerFormat, "format"}),
    [](const testing::TestParamInfo<BadCase>& one) {
        std::string name;
        for (const char c : std::string_view(one.param.what))
            if (c != ' ' && c != '-')
                name += c;
        return name;
    });

TEST(Starter, EveryShippedScheduleCanBeRead) {
    const std::filesystem::path folder(test::repositoryPath("resources/starters"));
    if (!std::filesystem::exists(folder))
        GTEST_SKIP() << "no schedules yet";
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        const std::string text =
            test::repositoryText("resources/starters/" + entry.path().filename().string());
        const auto starter = readStarter(text);
        EXPECT_TRUE(starter) << entry.path().filename() << ": " << starter.error().field << " given '"
                             << starter.error().given << "' wanted '" << starter.error().wanted << "'";
        const json parsed = json::parse(text, nullptr, false);
        for (const std::string& breach : test::breaches(starterSchema(), parsed))
            ADD_FAILURE() << entry.path().filename() << breach;
    }
}

}  // namespace
}  // namespace wm::exchange
