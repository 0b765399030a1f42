// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class LogVerb : public GarageTest {
  protected:
    [[nodiscard]] nlohmann::json table(const char* name) const {
        return nlohmann::json::parse(exported().toStdString()).at(name);
    }
};

TEST_F(LogVerb, TakesADaysRidingInOneGo) {
    const Said said = say({"log",
                           file_,
                           "--machine",
                           "Heron 250",
                           "--outing",
                           "1,3",
                           "--race",
                           "--starts",
                           "3",
                           "--ground",
                           "mud",
                           "--meter",
                           "62,5",
                           "--wash",
                           "pressure",
                           "--on",
                           "2026-05-02",
                           "--note",
                           "<i>deep</i> \"ruts\"",
                           "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("written", said.json());
    const nlohmann::json outing = table("outing").at(0);
    EXPECT_EQ(outing.at("hours"), 130);
    EXPECT_EQ(outing.at("kind"), "race");
    EXPECT_EQ(outing.at("starts"), 3);
    EXPECT_EQ(outing.at("ground"), "mud");
    EXPECT_EQ(outing.at("date"), "2026-05-02");
    EXPECT_EQ(outing.at("note"), "<i>deep</i> \"ruts\"");
    EXPECT_EQ(table("hour_reading").at(0).at("shown"), 6250);
    EXPECT_EQ(table("wash").at(0).at("pressure"), true);
}

TEST_F(LogVerb, DatesWithoutADayAreToday) {
    ASSERT_EQ(say({"log", file_, "--wash", "hand"}).exit, 0);
    EXPECT_EQ(table("wash").at(0).at("date"), "2026-05-07");
}

TEST_F(LogVerb, TakesAnOutingWhoseHoursNobodyNoted) {
    ASSERT_EQ(say({"log", file_, "--outing", "?"}).exit, 0);
    EXPECT_TRUE(table("outing").at(0).at("hours").is_null());
}

TEST_F(LogVerb, TakesEachFactAlone) {
    EXPECT_EQ(say({"log", file_, "--reading", "3.5"}).exit, 0);
    EXPECT_EQ(say({"log", file_, "--reading", "0.4", "--meter-was", "replaced", "--before", "3.9"}).exit, 0);
    EXPECT_EQ(say({"log", file_, "--odometer", "120.5"}).exit, 0);
    EXPECT_EQ(say({"log", file_, "--crash", "--note", "low side"}).exit, 0);
    EXPECT_EQ(table("hour_reading").size(), 2U);
    EXPECT_EQ(table("hour_reading").at(1).at("event"), "replaced");
    EXPECT_EQ(table("distance_reading").at(0).at("shown"), 120'500);
    EXPECT_EQ(table("crash").at(0).at("note"), "low side");
}

struct Bad {
    const char* what;
    QStringList arguments;
    Exit exit;
    const char* words;
};
class LogRefuses : public GarageTest, public testing::WithParamInterface<Bad> {};

TEST_P(LogRefuses, AndWritesNothing) {
    ASSERT_EQ(say({"log", file_, "--reading", "10", "--on", "2026-05-01"}).exit, 0);
    const QString before = exported();
    expectRefusal(say(QStringList{"log", file_} + GetParam().arguments), GetParam().exit, GetParam().words);
    EXPECT_EQ(exported(), before);
}

INSTANTIATE_TEST_SUITE_P(
    Values, LogRefuses,
    testing::Values(
        Bad{"NotANumber", {"--outing", "abc"}, Exit::Refused, "“abc”"},
        Bad{"Nan", {"--outing", "nan"}, Exit::Refused, "“nan”"},
        Bad{"Infinite", {"--outing", "inf"}, Exit::Refused, "“inf”"},
        Bad{"Exponent", {"--outing", "1e3"}, Exit::Refused, "“1e3”"},
        Bad{"Negative", {"--outing", "-1"}, Exit::Refused, "below zero"},
        Bad{"Empty", {"--outing", ""}, Exit::Refused, "blank"},
        Bad{"Huge", {"--outing", "99999999999999999999"}, Exit::Refused, "too large"},
        Bad{"MoreThanADay", {"--outing", "25"}, Exit::Refused, "at most 24"},
        Bad{"TooManyDecimals", {"--outing", "1.234"}, Exit::Refused, "at most 2 decimals"},
        Bad{"InFuture", {"--outing", "1", "--on", "2026-05-08"}, Exit::Refused, "future"},
        Bad{"BeforeTheMachine", {"--outing", "1", "--on", "2026-02-28"}, Exit::Refused, "2026-03-01"},
        Bad{"NoSuchDay", {"--outing", "1", "--on", "2026-04-31"}, Exit::Refused, "“2026-04-31”"},
        Bad{"UnknownMachine", {"--machine", "Osprey", "--outing", "1"}, Exit::Refused, "“Osprey”"},
        Bad{"UnknownGround", {"--outing", "1", "--ground", "lava"}, Exit::Refused, "hard, dust, sand, mud"},
        Bad{"UnknownRider", {"--outing", "1", "--rider", "Nobody"}, Exit::Refused, "“Nobody”"},
        Bad{"UnknownEvent", {"--outing", "1", "--event", "Nothing"}, Exit::Refused, "“Nothing”"},
        Bad{"UnknownWash", {"--wash", "steam"}, Exit::Refused, "pressure, hand"},
        Bad{"StartsNegative", {"--outing", "1", "--starts", "-2"}, Exit::Refused, "below zero"},
        Bad{"StartsBroken", {"--outing", "1", "--starts", "1.5"}, Exit::Refused, "“1.5”"},
        Bad{"MeterRunsBack", {"--reading", "9"}, Exit::Refused, "lower"},
        Bad{"MeterJumps", {"--reading", "5000"}, Exit::Refused, "more than the days"},
        Bad{"NoteTooLong", {"--outing", "1", "--note", QString(30'000, 'x')}, Exit::Refused, "too long"},
        Bad{"NoteWithControls",
            {"--outing", "1", "--note", QString("a") + QChar(7)},
            Exit::Refused,
            "no text"},
        Bad{"NothingSaid", {}, Exit::Usage, "one thing"},
        Bad{"TwoThings", {"--wash", "hand", "--crash"}, Exit::Usage, "one thing"},
        Bad{"StartsWithoutOuting", {"--wash", "hand", "--starts", "2"}, Exit::Usage, "--outing"},
        Bad{"ReadingWithOuting", {"--outing", "1", "--reading", "12"}, Exit::Usage, "--meter"}),
    [](const testing::TestParamInfo<Bad>& one) { return std::string(one.param.what); });

TEST_F(LogVerb, AsksWhichMachineIfThereAreSeveral) {
    const QString text = exported();
    nlohmann::json two = nlohmann::json::parse(text.toStdString());
    nlohmann::json second = two.at("machine").at(0);
    second["id"] = 77;
    second["name"] = "Plover 125";
    two["machine"].push_back(second);
    write("two.json", QByteArray::fromStdString(two.dump()));
    ASSERT_EQ(say({"import", path("two.witnessmark"), path("two.json")}).exit, 0);
    expectRefusal(say({"log", path("two.witnessmark"), "--wash", "hand"}), Exit::Refused, "Plover 125");
    EXPECT_EQ(say({"log", path("two.witnessmark"), "--wash", "hand", "--machine", "plover"}).exit, 0);
}

TEST_F(LogVerb, AsksForTheHandTightListBeforeTheMachineIsRidden) {
    ASSERT_EQ(say({"record", file_, "--task", "rear-wheel-bearings", "--on", "2026-05-06"}).exit, 0);
    // Work and riding of one day: the ride came first, so nobody is asked about it.
    EXPECT_EQ(say({"log", file_, "--outing", "0.5", "--on", "2026-05-06"}).exit, 0);
    expectRefusal(say({"log", file_, "--outing", "1"}), Exit::Refused, "(--seen)");
    EXPECT_EQ(say({"log", file_, "--outing", "1", "--seen"}).exit, 0);
}

// Ten hours on the watch, 1.2 on the meter.
TEST_F(LogVerb, AsksWhetherTheMeterHasStopped) {
    ASSERT_EQ(say({"log", file_, "--outing", "1", "--meter", "20", "--on", "2026-05-02"}).exit, 0);
    const QStringList outing{"log", file_, "--outing", "10", "--meter", "21.2", "--on", "2026-05-03"};
    const Said asked = say(outing);
    expectRefusal(asked, Exit::Refused,
                  "“10.0 h” is far more than the meter ran: 1.2 h. A slip of the pen, has the meter stopped");
    EXPECT_TRUE(asked.err.contains("(--meter-is-right)")) << asked.err.toStdString();
    expectRefusal(say(outing + QStringList{"--seen"}), Exit::Refused, "has the meter stopped");
    EXPECT_EQ(say(outing + QStringList{"--meter-is-right"}).exit, 0);
    ASSERT_EQ(say({"log", file_, "--outing", "1.5", "--on", "2026-05-04"}).exit, 0);
    expectRefusal(say({"log", file_, "--reading", "21.2"}), Exit::Refused,
                  "than the meter ran: 0.0 h. A slip");
    EXPECT_EQ(say({"log", file_, "--reading", "21.2", "--meter-is-right"}).exit, 0);
    const Said checked = say({"check", file_});
    EXPECT_EQ(checked.exit, 0);
    EXPECT_TRUE(
        checked.out.contains("Heron 250, Sun 3 May: 10.0 h noted since the reading before, and the "
                             "meter ran 1.2 h: has it stopped?\n"))
        << checked.out.toStdString();
}

TEST_F(LogVerb, AJointIsConfirmedByItself) {
    ASSERT_EQ(say({"record", file_, "--task", "rear-wheel-bearings", "--on", "2026-05-06"}).exit, 0);
    expectRefusal(say({"tightened", file_}), Exit::Usage, "--joint");
    const auto said = say({"tightened", file_, "--joint", "rear axle nut"});
    EXPECT_EQ(said.exit, 0);
    EXPECT_FALSE(said.out.contains("Hand-tight: Rear axle nut"));
    EXPECT_TRUE(said.out.contains("Hand-tight: Chain adjuster lock nuts"));
}

TEST_F(LogVerb, WhatAJobSendsOutIsAway) {
    expectRefusal(say({"record", file_, "--task", "shock-service", "--back-on", "2026-05-20"}), Exit::Usage,
                  "--sent-to");
    ASSERT_EQ(say({"record", file_, "--task", "shock-service", "--sent-to", "Lane Suspension"}).exit,
              static_cast<int>(Exit::Refused))
        << "no shock is tracked there";
}

}  // namespace
}  // namespace wm::test
