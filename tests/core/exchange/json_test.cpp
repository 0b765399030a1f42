// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <nlohmann/json.hpp>

#include "tests/core/exchange/generated_rows.h"
#include "tests/core/exchange/row_schema.h"
#include "tests/core/exchange/schema_check.h"
#include "tests/core/exchange/survival.h"
#include "tests/repository.h"

namespace wm::exchange {
namespace {

using base::Error;
using base::Fault;
using nlohmann::json;

json schema() {
    return json::parse(test::repositoryText("resources/exchange.schema.json"));
}

// One machine with an outing, a struck wash, a record with what was used: enough to break in many places.
std::vector<picture::Row> smallGarage() {
    items::Machine machine{};
    machine.id = MachineId{11};
    machine.name = "Heron \"250\" <b>";
    machine.since = *calendar::makeDate(2026, 3, 1);
    machine.pastHigh = units::Hours{1250};
    usage::Outing outing{};
    outing.id = OutingId{12};
    outing.entered = 1;
    outing.machine = machine.id;
    outing.date = *calendar::makeDate(2026, 5, 2);
    outing.hours = units::Hours{130};
    usage::Wash wash{};
    wash.id = WashId{13};
    wash.entered = 2;
    wash.machine = machine.id;
    wash.date = outing.date;
    upkeep::Record record{};
    record.id = RecordId{14};
    record.entered = 3;
    record.machine = machine.id;
    record.date = outing.date;
    record.measured = {{"ring gap", "mm", units::Decimal{50, 2}}};
    record.steps = {{"seat"}, {"tank"}};
    picture::Strike strike{};
    strike.id = StrikeId{15};
    strike.entered = 4;
    strike.fact = wash.id.value();
    strike.date = outing.date;
    strike.reason = "another machine";
    return {machine, outing, wash, record, strike};
}

std::string smallText() {
    return toJson(picture::Ledger(smallGarage()));
}

TEST(LongExchange, ComesBackByteForByte) {
    EXPECT_TRUE(rc::check("rows of every type survive the text", [] {
        const std::string text = toJson(picture::Ledger(test::drawRows()));
        const auto rows = fromJson(text);
        RC_ASSERT(rows.has_value());
        RC_ASSERT(toJson(picture::Ledger(*rows)) == text);
    }));
}

TEST(LongExchange, ComesBackRowForRowWhateverTheOrder) {
    EXPECT_TRUE(rc::check("the order in which rows are given is of no account", [] {
        std::vector<picture::Row> rows = test::drawRows();
        const std::string text = toJson(picture::Ledger(rows));
        std::reverse(rows.begin(), rows.end());
        RC_ASSERT(toJson(picture::Ledger(rows)) == text);
        const picture::Ledger before(rows);
        const picture::Ledger after(fromJson(text).value());
        RC_ASSERT(before.rows() == after.rows());
    }));
}

TEST(Exchange, KeepsToItsSchema) {
    EXPECT_TRUE(rc::check("every text that is written keeps to the schema", [] {
        static const json kSchema = schema();
        const json text = json::parse(toJson(picture::Ledger(test::drawRows())));
        const auto found = test::breaches(kSchema, text);
        if (!found.empty())
            RC_FAIL(found.front());
    }));
}

TEST(Exchange, SchemaNamesTheFieldsAndWordsOfEveryRow) {
    const json root = schema();
    std::vector<std::string> tables{"format"};
    const auto shapes = test::tableShapes();
    for (const auto& [table, shape] : shapes.items()) {
        tables.push_back(table);
        ASSERT_TRUE(root.at("$defs").contains(table)) << "resources/exchange.schema.json lacks " << table;
        json told = root.at("$defs").at(table);
        const std::function<void(json&)> dropWords = [&](json& node) {
            if (node.is_object() && node.contains("description") && node.at("description").is_string())
                node.erase("description");
            for (json& inner : node)
                if (inner.is_structured())
                    dropWords(inner);
        };
        dropWords(told);
        EXPECT_EQ(told, json(shape)) << "resources/exchange.schema.json, " << table;
        EXPECT_EQ(root.at("properties").at(table).at("items"), test::refTo(table));
    }
    EXPECT_EQ(root.at("required"), json(tables));
    EXPECT_EQ(root.at("properties").size(), tables.size());
}

// A text of format 1 knows no weights: each hour counts as it is.
TEST(Exchange, ATextOfTheFirstFormatIsRead) {
    upkeep::TaskVersion task;
    task.id = TaskVersionId{1};
    task.task = TaskId{2};
    task.machine = MachineId{3};
    task.code = "oil";
    json text = json::parse(toJson(picture::Ledger({task})));
    EXPECT_EQ(text.at("format"), 7);
    text["task_version"][0].erase("weights");
    text["format"] = 2;
    EXPECT_FALSE(fromJson(text.dump())) << "a text of format 2 has them";
    text["format"] = 1;
    text.erase("tool");
    text.erase("calibration");
    const auto rows = fromJson(text.dump());
    ASSERT_TRUE(rows.has_value());
    EXPECT_EQ(rows->at(0), picture::Row(task));
}

// A text of format 2 knows no torque tools, and no joints that a model shares.
TEST(Exchange, ATextOfTheSecondFormatIsRead) {
    fastening::JointVersion joint;
    joint.id = JointVersionId{1};
    joint.joint = JointId{2};
    joint.machine = MachineId{3};
    joint.code = "axle";
    const fastening::JointMark mark{JointMarkId{4}, 1, JointId{2}};
    json text = json::parse(toJson(picture::Ledger({joint, mark})));
    for (const char* key : {"shared_from", "shared_to"})
        text["joint_version"][0].erase(key);
    for (const char* key : {"tool", "moved_count", "moved_degrees", "outing"})
        text["joint_mark"][0].erase(key);
    text.erase("tool");
    text.erase("calibration");
    EXPECT_FALSE(fromJson(text.dump())) << "a text of format 3 has them";
    text["format"] = 2;
    const auto rows = fromJson(text.dump());
    ASSERT_TRUE(rows.has_value());
    EXPECT_EQ(*rows, (std::vector<picture::Row>{joint, mark}));
}

// A text of format 3 knows no page of an amount or a limit, and no amount that was confirmed.
TEST(Exchange, ATextOfTheThirdFormatIsRead) {
    upkeep::TaskVersion task;
    task.id = TaskVersionId{1};
    task.task = TaskId{2};
    task.machine = MachineId{3};
    task.code = "oil";
    task.kit = {{"engine oil", std::nullopt, 900, upkeep::Unit::Millilitre, false}};
    task.measures = {{"play", "mm", std::nullopt, units::Decimal{5, 1}, "service manual", true}};
    json text = json::parse(toJson(picture::Ledger({task})));
    for (const char* key : {"source", "page", "confirmed"})
        text["task_version"][0]["kit"][0].erase(key);
    text["task_version"][0]["measures"][0].erase("page");
    EXPECT_FALSE(fromJson(text.dump())) << "a text of format 4 has them";
    text["format"] = 3;
    const auto rows = fromJson(text.dump());
    ASSERT_TRUE(rows.has_value());
    EXPECT_EQ(*rows, (std::vector<picture::Row>{task}));
    for (const json& odd : {json(3), json("kit"), json::array({1, nullptr})}) {
        json bad = text;
        bad["task_version"][0]["kit"] = odd;
        EXPECT_FALSE(fromJson(bad.dump())) << odd;
    }
}

TEST(Exchange, AnEmptyFileHasEveryTable) {
    const std::string text = toJson(picture::Ledger{});
    EXPECT_EQ(json::parse(text).size(), picture::kTables + 1);
    const auto rows = fromJson(text);
    ASSERT_TRUE(rows);
    EXPECT_TRUE(rows->empty());
    EXPECT_TRUE(text.ends_with("}\n"));
}

TEST(Exchange, AStruckFactStaysInItsTable) {
    const picture::Ledger ledger(smallGarage());
    ASSERT_TRUE(ledger.all<usage::Wash>().empty());
    EXPECT_EQ(json::parse(smallText()).at("wash").at(0).at("id"), 13);
    const picture::Ledger again(fromJson(smallText()).value());
    EXPECT_EQ(again.struck<usage::Wash>(), ledger.struck<usage::Wash>());
}

TEST(Exchange, DecimalsStandAsTheyWerePrinted) {
    EXPECT_EQ(json::parse(smallText()).at("record").at(0).at("measured").at(0).at("value"), "0.50");
}

TEST(Exchange, IdsKeepAll63Bits) {
    auto rows = smallGarage();
    std::get<items::Machine>(rows[0]).id = MachineId{9'223'372'036'854'775'807};
    const auto again = fromJson(toJson(picture::Ledger(rows)));
    ASSERT_TRUE(again);
    EXPECT_EQ(std::get<items::Machine>((*again)[0]).id.value(), 9'223'372'036'854'775'807);
}

struct BadValue {
    const char* what;
    const char* pointer;
    const char* value;
    Error error;
};
class ExchangeBad : public testing::TestWithParam<BadValue> {};

TEST_P(ExchangeBad, IsRefusedWithItsPlace) {
    json text = json::parse(smallText());
    text[json::json_pointer(GetParam().pointer)] = json::parse(GetParam().value);
    const auto read = fromJson(text.dump());
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().fault, GetParam().error.fault);
    EXPECT_EQ(read.error().field, GetParam().error.field);
    EXPECT_EQ(read.error().given, GetParam().error.given);
}

INSTANTIATE_TEST_SUITE_P(
    Values, ExchangeBad,
    testing::Values(
        BadValue{"unknownKey", "/outing/0/colour", "1", {Fault::Malformed, "outing[0].colour", "colour", {}}},
        BadValue{"unknownTable", "/tyres", "[]", {Fault::Malformed, "tyres", "tyres", {}}},
        BadValue{"tableOfNoList", "/wash", "{}", {Fault::Malformed, "wash", "object", {}}},
        BadValue{"rowOfNoObject", "/wash/0", "3", {Fault::Malformed, "wash[0]", "3", {}}},
        BadValue{"numberAsText",
                 "/outing/0/hours",
                 "\"1.3\"",
                 {Fault::Malformed, "outing[0].hours", "\"1.3\"", {}}},
        BadValue{"brokenHours", "/outing/0/hours", "1.3", {Fault::Malformed, "outing[0].hours", "1.3", {}}},
        BadValue{"hugeHours",
                 "/outing/0/hours",
                 "1000000001",
                 {Fault::TooLarge, "outing[0].hours", "1000000001", {}}},
        BadValue{"hugeNegative",
                 "/outing/0/starts",
                 "-9223372036854775808",
                 {Fault::TooLarge, "outing[0].starts", "-9223372036854775808", {}}},
        BadValue{"beyond64Bits",
                 "/outing/0/starts",
                 "18446744073709551615",
                 {Fault::TooLarge, "outing[0].starts", "18446744073709551615", {}}},
        BadValue{
            "nullWhereNeeded", "/outing/0/date", "null", {Fault::Malformed, "outing[0].date", "null", {}}},
        BadValue{"noSuchDay",
                 "/outing/0/date",
                 "\"2026-02-30\"",
                 {Fault::NotADate, "outing[0].date", "2026-02-30", {}}},
        BadValue{"dateWithBlanks",
                 "/outing/0/date",
                 "\" 2026-02-20\"",
                 {Fault::NotADate, "outing[0].date", " 2026-02-20", {}}},
        BadValue{
            "wordOfNoEnum", "/outing/0/ground", "\"lava\"", {Fault::Unknown, "outing[0].ground", "lava", {}}},
        BadValue{"truthAsNumber", "/wash/0/pressure", "1", {Fault::Malformed, "wash[0].pressure", "1", {}}},
        BadValue{"decimalAsNumber",
                 "/record/0/measured/0/value",
                 "0.5",
                 {Fault::Malformed, "record[0].measured[0].value", "0.5", {}}},
        BadValue{"decimalWithSign",
                 "/record/0/measured/0/value",
                 "\"+0.5\"",
                 {Fault::NotANumber, "record[0].measured[0].value", "+0.5", {}}},
        BadValue{"decimalNan",
                 "/record/0/measured/0/value",
                 "\"nan\"",
                 {Fault::NotANumber, "record[0].measured[0].value", "nan", {}}},
        BadValue{"decimalExponent",
                 "/record/0/measured/0/value",
                 "\"1e9\"",
                 {Fault::NotANumber, "record[0].measured[0].value", "1e9", {}}},
        BadValue{"childOfNoObject",
                 "/record/0/measured/0",
                 "[]",
                 {Fault::Malformed, "record[0].measured[0]", "array", {}}},
        BadValue{"codeAsObject",
                 "/record/0/steps/1",
                 "{\"code\": \"tank\"}",
                 {Fault::Malformed, "record[0].steps[1]", "object", {}}},
        BadValue{"controlCharacter",
                 "/machine/0/name",
                 "\"He\\u0000ron\"",
                 {Fault::NotText, "machine[0].name", {}, {}}},
        BadValue{"duplicateId", "/outing/0/id", "11", {Fault::Duplicate, "outing[0].id", "11", {}}},
        BadValue{"zeroId", "/outing/0/id", "0", {Fault::NotPositive, "outing[0].id", "0", {}}},
        BadValue{
            "negativeId", "/outing/0/machine", "-4", {Fault::NotPositive, "outing[0].machine", "-4", {}}},
        BadValue{
            "enteredBelowZero", "/outing/0/entered", "-1", {Fault::Negative, "outing[0].entered", "-1", {}}},
        BadValue{"secondGarage",
                 "/garage",
                 R"([{"id": 2, "name": "", "pinned_today": null, "cool_minutes": 240}])",
                 {Fault::Malformed, "garage[0].id", "2", {}}},
        BadValue{"newerFormat", "/format", "8", {Fault::NewerFormat, "format", "8", {}}},
        BadValue{"formatZero", "/format", "0", {Fault::Malformed, "format", "0", {}}},
        BadValue{"formatInWords", "/format", "\"one\"", {Fault::Malformed, "format", "\"one\"", {}}}),
    [](const testing::TestParamInfo<BadValue>& one) { return std::string(one.param.what); });

// What the steps of the starters free is known by their codes; how a move was told nobody had asked.
TEST(Exchange, ATextOfTheFourthFormatIsRead) {
    weekend::StepVersion step;
    step.id = StepVersionId{1};
    step.step = StepId{2};
    step.machine = MachineId{3};
    step.code = "rear-wheel-out";
    items::Move move;
    move.id = MoveId{4};
    move.item = ItemId{5};
    move.told = items::Told::Work;
    fastening::JointVersion known;
    known.id = JointVersionId{6};
    known.joint = JointId{7};
    known.machine = MachineId{3};
    known.code = "head-nuts";
    fastening::JointVersion own = known;
    own.id = JointVersionId{8};
    own.joint = JointId{9};
    own.code = "bash-plate";
    own.position = "front";
    json text = json::parse(toJson(picture::Ledger({step, move, known, own})));
    text["format"] = 4;
    text["step_version"][0].erase("frees");
    for (json& joint : text["joint_version"])
        joint.erase("position");
    for (const char* key : {"told", "back_on", "record"})
        text["move"][0].erase(key);
    const auto read = fromJson(text.dump());
    ASSERT_TRUE(read) << read.error().field << ": " << read.error().given;
    const picture::Ledger ledger(*read);
    ASSERT_EQ(ledger.all<weekend::StepVersion>()[0].frees.size(), 2U);
    EXPECT_EQ(ledger.all<weekend::StepVersion>()[0].frees[1].code, "rear wheel/tyre");
    EXPECT_EQ(ledger.all<items::Move>()[0].told, items::Told::Unasked);
    const auto joints = ledger.all<fastening::JointVersion>();
    EXPECT_EQ(joints[0].position, "engine");
    EXPECT_EQ(joints[1].position, std::nullopt) << "nobody said";
}

// Before format 7 nothing was said of the order of work.
TEST(Exchange, OlderTextsBindNoOrder) {
    weekend::StepVersion step;
    step.id = StepVersionId{4};
    step.step = StepId{5};
    step.machine = MachineId{3};
    upkeep::TaskVersion task;
    task.id = TaskVersionId{6};
    task.task = TaskId{7};
    task.machine = MachineId{3};
    fastening::JointVersion joint;
    joint.id = JointVersionId{8};
    joint.joint = JointId{9};
    joint.machine = MachineId{3};
    json text = json::parse(toJson(picture::Ledger({step, task, joint})));
    text["format"] = 6;
    for (const char* key : {"doings", "edges", "body_state", "from_starter"})
        ASSERT_EQ(text["step_version"][0].erase(key), 1U) << key;
    for (const char* key : {"doings", "edges", "comes_last", "short_name", "from_starter"})
        ASSERT_EQ(text["task_version"][0].erase(key), 1U) << key;
    for (const char* key : {"held", "from_starter"})
        ASSERT_EQ(text["joint_version"][0].erase(key), 1U) << key;
    const auto read = fromJson(text.dump());
    ASSERT_TRUE(read) << read.error().field << ": " << read.error().given;
    const picture::Ledger ledger(*read);
    EXPECT_EQ(ledger.all<weekend::StepVersion>()[0], step);
    EXPECT_EQ(ledger.all<upkeep::TaskVersion>()[0], task);
    EXPECT_EQ(ledger.all<fastening::JointVersion>()[0], joint);
}

// Nor which words are a starter's: the first ones of a machine that was set up with a schedule, unless they
// name a manual.
TEST(Exchange, OlderTextsTakeTheFirstWordsForTheStarters) {
    const auto machine = [](std::int64_t id, const char* starter) {
        return items::Machine{
            .id = MachineId{id}, .starter = starter, .since = *calendar::makeDate(2026, 1, 10)};
    };
    std::int64_t number = 100;
    const auto task = [&](std::int64_t id, std::int64_t on, const char* since, const char* source) {
        ++number;
        return upkeep::TaskVersion{.id = TaskVersionId{number},
                                   .entered = number,
                                   .task = TaskId{id},
                                   .machine = MachineId{on},
                                   .validFrom = *calendar::parseDate("valid_from", since),
                                   .source = source};
    };
    auto confirmed = task(15, 3, "2026-01-10", "common practice");
    confirmed.confirmed = true;
    json text = json::parse(toJson(picture::Ledger(
        {machine(3, "two-stroke motocross"), machine(4, ""), task(11, 3, "2026-01-10", "guesswork"),
         task(11, 3, "2026-02-01", "common practice"), task(12, 3, "2026-03-01", "common practice"),
         task(13, 3, "2026-03-01", "my own"), task(14, 4, "2026-01-10", "common practice"), confirmed})));
    text["format"] = 6;
    for (json& row : text["task_version"])
        for (const char* key : {"doings", "edges", "comes_last", "short_name", "from_starter"})
            row.erase(key);
    const auto read = fromJson(text.dump());
    ASSERT_TRUE(read) << read.error().field << ": " << read.error().given;
    const picture::Ledger ledger(*read);
    std::vector<bool> theirs;
    for (const auto& each : ledger.all<upkeep::TaskVersion>())
        theirs.push_back(each.fromStarter);
    EXPECT_EQ(theirs, (std::vector<bool>{false, true, false, true, false, false}));
}

TEST(Exchange, NamesTheFormatItCanReadWhenTheTextIsNewer) {
    const auto read = fromJson(R"({"format": 8, "a table of tomorrow": {}})");
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error(), (Error{Fault::NewerFormat, "format", "8", "7"}));
}

TEST(Exchange, RefusesAMissingKeyAndAMissingTable) {
    json text = json::parse(smallText());
    text["outing"][0].erase("note");
    EXPECT_EQ(fromJson(text.dump()).error(), (Error{Fault::Malformed, "outing[0].note", "", "this key"}));
    text = json::parse(smallText());
    text.erase("crash");
    EXPECT_EQ(fromJson(text.dump()).error(), (Error{Fault::Malformed, "crash", "", "this key"}));
}

TEST(Exchange, RefusesAKeyGivenTwice) {
    std::string text = smallText();
    text.insert(text.find("\"format\""), "\"format\": 1, ");
    EXPECT_EQ(fromJson(text).error(), (Error{Fault::Duplicate, "line 2", "format", ""}));
    EXPECT_EQ(fromJson("{\n\"a\": \"\\n\",\n\"b\": {\"c\": 1,\n\n\"c\": 2}}").error(),
              (Error{Fault::Duplicate, "line 5", "c", ""}));
}

TEST(Exchange, RefusesWhatIsNoJson) {
    const auto faultOf = [](std::string_view text) { return fromJson(text).error().fault; };
    EXPECT_EQ(faultOf(""), Fault::Empty);
    EXPECT_EQ(faultOf(" \n "), Fault::Empty);
    EXPECT_EQ(faultOf("\xC3\x28"), Fault::NotText);
    EXPECT_EQ(faultOf("\xED\xA0\x80"), Fault::NotText);
    EXPECT_EQ(faultOf("[]"), Fault::Malformed);
    EXPECT_EQ(faultOf("{\"format\": NaN}"), Fault::Malformed);
    EXPECT_EQ(faultOf("{\"format\": 1e999}"), Fault::Malformed);
    EXPECT_EQ(faultOf("{\"format\": 1} x"), Fault::Malformed);
    EXPECT_EQ(faultOf("{} // with a comment"), Fault::Malformed);
    EXPECT_EQ(faultOf(std::string(100'000, '[')), Fault::Malformed);
    EXPECT_EQ(faultOf("\"" + std::string(1, '\0') + "\""), Fault::Malformed);
    EXPECT_EQ(faultOf("{\"a\": \"\\ud800\"}"), Fault::Malformed);
}

TEST(Exchange, SaysTheLineOnWhichTheTextBreaks) {
    const auto read = fromJson("{\n  \"format\": 1,\n  \"person\": [oops]\n}\n");
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().field, "line 3");
}

TEST(Exchange, RefusesATextCutShortAnywhere) {
    const std::string whole = smallText();
    const std::string_view text = std::string_view(whole).substr(0, whole.size() - 1);
    for (std::size_t length = 0; length < text.size(); length += length < 2000 ? 1 : 37) {
        const auto read = fromJson(text.substr(0, length));
        ASSERT_FALSE(read) << "cut at " << length;
    }
    EXPECT_EQ(fromJson(text.substr(0, text.size() / 2)).error().given, "end of text");
}

TEST(Exchange, SurvivesAnyOneByteChanged) {
    const std::string text = smallText();
    EXPECT_TRUE(rc::check("a changed byte is refused or read, never worse", [&] {
        std::string broken = text;
        broken[*rc::gen::inRange<std::size_t>(0, text.size())] = *rc::gen::arbitrary<char>();
        const std::string breach = test::breachOfReading(broken);
        if (!breach.empty())
            RC_FAIL(breach);
    }));
}

// Files whose names begin with "good" are read, the others are refused; none does worse.
TEST(Exchange, EverySeedIsReadOrRefusedAsItsNameSays) {
    int seeds = 0;
    for (const auto& entry :
         std::filesystem::directory_iterator(test::repositoryPath("tests/data/exchange"))) {
        const std::string name = entry.path().filename().string();
        const std::string bytes = test::repositoryText("tests/data/exchange/" + name);
        EXPECT_EQ(test::breachOfReading(bytes), "") << name;
        EXPECT_EQ(fromJson(bytes).has_value(), name.starts_with("good")) << name;
        ++seeds;
    }
    EXPECT_GE(seeds, 12);
}

}  // namespace
}  // namespace wm::exchange
