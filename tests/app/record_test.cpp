// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class RecordVerb : public GarageTest {
  protected:
    [[nodiscard]] nlohmann::json table(const char* name) const {
        return nlohmann::json::parse(exported().toStdString()).at(name);
    }
    // A shelf with two litres of oil and two filters, brought in through the exchange text.
    void stockTheShelf() {
        nlohmann::json whole = nlohmann::json::parse(exported().toStdString());
        const auto line = [](int id, const char* name, const char* unit) {
            return nlohmann::json{{"id", id},
                                  {"name", name},
                                  {"part_number", ""},
                                  {"supersedes", ""},
                                  {"fits", ""},
                                  {"unit", unit},
                                  {"pack_amount", 1},
                                  {"pack_price", nullptr},
                                  {"lead_days", nullptr},
                                  {"place", ""},
                                  {"keep", 0},
                                  {"opened_days", nullptr},
                                  {"active", true},
                                  {"note", ""}};
        };
        const auto bought = [](int id, int ofLine, int amount) {
            return nlohmann::json{{"id", id},
                                  {"entered", 900'000 + id},
                                  {"line", ofLine},
                                  {"lot", nullptr},
                                  {"date", "2026-04-01"},
                                  {"amount", amount},
                                  {"why", "bought"},
                                  {"record", nullptr},
                                  {"stock_order", nullptr},
                                  {"price", nullptr},
                                  {"note", ""}};
        };
        whole["stock_line"] = {line(501, "Engine oil", "ml"), line(502, "Oil filter", "piece")};
        whole["stock_move"] = {bought(601, 501, 2000), bought(602, 502, 2)};
        write("stocked.json", QByteArray::fromStdString(whole.dump()));
        file_ = path("stocked.witnessmark");
        const Said said = say({"import", file_, path("stocked.json")});
        ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    }
};

TEST_F(RecordVerb, PutsTheJobInHandAndMovesTheShelf) {
    stockTheShelf();
    ASSERT_EQ(say({"log", file_, "--outing", "2.6", "--on", "2026-05-02"}).exit, 0);
    ASSERT_EQ(dueLine("engine-oil").at("standing"), "overdue");
    const Said said = say({"record", file_, "--machine", "Heron 250", "--task", "engine-oil", "--meter",
                           "2,6", "--used", "engine oil=850", "--used", "Oil filter=1", "--minutes", "25",
                           "--note", "<b>clean</b>", "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("written", said.json());
    const nlohmann::json oil = dueLine("engine-oil");
    EXPECT_EQ(oil.at("standing"), "in hand");
    EXPECT_EQ(oil.at("last_done"), "2026-05-07");
    const nlohmann::json record = table("record").at(0);
    EXPECT_EQ(record.at("meter"), 260);
    EXPECT_EQ(record.at("minutes"), 25);
    EXPECT_EQ(record.at("note"), "<b>clean</b>");
    EXPECT_EQ(record.at("code"), "engine-oil");
    EXPECT_EQ(record.at("stated_best"), 260);
    std::int64_t oilLeft = 0;
    for (const auto& move : table("stock_move"))
        oilLeft += move.at("line") == 501 ? move.at("amount").get<std::int64_t>() : 0;
    EXPECT_EQ(oilLeft, 1150);
}

TEST_F(RecordVerb, RefusesMoreThanAnyJobUses) {
    stockTheShelf();
    const QString before = exported();
    expectRefusal(say({"record", file_, "--task", "engine-oil", "--used", "engine oil=99999999"}),
                  Exit::Refused, "“99999999” is too large: enter at most 100000");
    EXPECT_EQ(exported(), before);
}

TEST_F(RecordVerb, FindsTheTaskByAPartOfItsName) {
    EXPECT_EQ(say({"record", file_, "--task", "SILENCER PACK"}).exit, 0);
    EXPECT_EQ(table("record").at(0).at("code"), "silencer-packing");
}

TEST_F(RecordVerb, AsksWhichTaskIfSeveralFit) {
    const Said said = say({"record", file_, "--task", "brake fluid"});
    expectRefusal(said, Exit::Refused, "fits several");
    EXPECT_TRUE(said.err.contains("front-brake-fluid, rear-brake-fluid")) << said.err.toStdString();
}

TEST_F(RecordVerb, OpensTheJointsThatWereNotConfirmed) {
    const Said said = say({"record", file_, "--task", "chain-kit", "--torqued", "front sprocket nut",
                           "--torqued", "rear-axle-nut"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains("Hand-tight: ")) << said.out.toStdString();
    EXPECT_FALSE(said.out.contains("Hand-tight: Rear axle nut")) << said.out.toStdString();
    std::set<std::string> kinds;
    for (const auto& mark : table("joint_mark"))
        kinds.insert(mark.at("kind"));
    EXPECT_EQ(kinds, (std::set<std::string>{"confirmed", "loosened"}));
}

TEST_F(RecordVerb, NotesMeasurementsAsTheyWereRead) {
    ASSERT_EQ(say({"record", file_, "--task", "valve-clearance", "--measured", "inlet left=0,120",
                   "--measured", "Exhaust Right=0.20"})
                  .exit,
              0);
    const nlohmann::json measured = table("record").at(0).at("measured");
    EXPECT_EQ(measured.at(0).at("value"), "0.120");
    EXPECT_EQ(measured.at(1).at("name"), "exhaust right");
}

TEST_F(RecordVerb, ALookTakesNothingApart) {
    ASSERT_EQ(say({"record", file_, "--task", "rear-pads", "--looked-fine"}).exit, 0);
    EXPECT_EQ(table("record").at(0).at("kind"), "looked fine");
    EXPECT_TRUE(table("record").at(0).at("steps").empty());
    EXPECT_TRUE(table("joint_mark").empty());
}

struct BadRecord {
    const char* what;
    QStringList arguments;
    Exit exit;
    const char* words;
};
class RecordRefuses : public GarageTest, public testing::WithParamInterface<BadRecord> {};

TEST_P(RecordRefuses, AndWritesNothing) {
    ASSERT_EQ(say({"log", file_, "--reading", "10", "--on", "2026-05-01"}).exit, 0);
    const QString before = exported();
    expectRefusal(say(QStringList{"record", file_} + GetParam().arguments), GetParam().exit,
                  GetParam().words);
    EXPECT_EQ(exported(), before);
}

INSTANTIATE_TEST_SUITE_P(
    Values, RecordRefuses,
    testing::Values(
        BadRecord{"NothingSaid", {}, Exit::Usage, "--task"},
        BadRecord{"TwoThings", {"--task", "engine-oil", "--snag", "x"}, Exit::Usage, "--task"},
        BadRecord{"UnknownTask", {"--task", "flux capacitor"}, Exit::Refused, "“flux capacitor”"},
        BadRecord{"EmptyTask", {"--task", ""}, Exit::Refused, "task"},
        BadRecord{"UnknownSnag", {"--snag", "rattle"}, Exit::Refused, "“rattle”"},
        BadRecord{
            "UnknownMachine", {"--machine", "Osprey", "--task", "engine-oil"}, Exit::Refused, "“Osprey”"},
        BadRecord{"UnknownLine",
                  {"--task", "engine-oil", "--used", "unicorn oil=850"},
                  Exit::Refused,
                  "“unicorn oil”"},
        BadRecord{
            "UsedWithoutAmount", {"--task", "engine-oil", "--used", "oil"}, Exit::Refused, "name=figure"},
        BadRecord{
            "UnknownMeasurement", {"--task", "engine-oil", "--measured", "mood=3"}, Exit::Refused, "“mood”"},
        BadRecord{"MeasuredNan",
                  {"--task", "valve-clearance", "--measured", "inlet left=nan"},
                  Exit::Refused,
                  "“nan”"},
        BadRecord{
            "UnknownJoint", {"--task", "engine-oil", "--torqued", "left ear"}, Exit::Refused, "“left ear”"},
        BadRecord{"UnknownStep", {"--task", "engine-oil", "--steps", "left-ear"}, Exit::Refused, "left-ear"},
        BadRecord{"UnknownPerson", {"--task", "engine-oil", "--by", "Nobody"}, Exit::Refused, "“Nobody”"},
        BadRecord{"MeterRunsBack", {"--task", "engine-oil", "--meter", "9"}, Exit::Refused, "lower"},
        BadRecord{"MeterNotANumber", {"--task", "engine-oil", "--meter", "x"}, Exit::Refused, "“x”"},
        BadRecord{
            "MinutesNegative", {"--task", "engine-oil", "--minutes", "-5"}, Exit::Refused, "below zero"},
        BadRecord{"InFuture", {"--task", "engine-oil", "--on", "2026-05-08"}, Exit::Refused, "future"},
        BadRecord{
            "BeforeTheMachine", {"--task", "engine-oil", "--on", "2020-01-01"}, Exit::Refused, "2026-03-01"},
        BadRecord{"NoteTooLong",
                  {"--task", "engine-oil", "--note", QString(30'000, 'x')},
                  Exit::Refused,
                  "too long"}),
    [](const testing::TestParamInfo<BadRecord>& one) { return std::string(one.param.what); });

TEST_F(RecordVerb, RefusesTheSameJobTwice) {
    ASSERT_EQ(say({"record", file_, "--task", "engine-oil", "--meter", "3"}).exit, 0);
    expectRefusal(say({"record", file_, "--task", "engine-oil", "--meter", "3"}), Exit::Refused, "already");
}

}  // namespace
}  // namespace wm::test
