// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QRegularExpression>

#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class DueVerb : public GarageTest {};

TEST_F(DueVerb, AnswersAListOfObjects) {
    const nlohmann::json lines = say({"due", file_, "--json"}).json();
    ASSERT_TRUE(lines.is_array());
    expectKeepsTo("due", lines);
    for (const auto& line : lines)
        for (const char* key : {"machine", "item", "task", "standing", "window"})
            EXPECT_TRUE(line.contains(key)) << key;
    EXPECT_EQ(lines.at(0).at("machine"), "Heron 250");
}

TEST_F(DueVerb, MovesWithUse) {
    EXPECT_EQ(dueLine("engine-oil").at("standing"), "in hand");
    ASSERT_EQ(say({"log", file_, "--outing", "7.5", "--on", "2026-05-02"}).exit, 0);
    const nlohmann::json oil = dueLine("engine-oil");
    EXPECT_EQ(oil.at("standing"), "overdue");
    EXPECT_EQ(oil.at("limits").at(0).at("behind").at("likely"), 750);
    const Said said = say({"due", file_});
    EXPECT_TRUE(said.out.contains("overdue")) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains("Engine oil: 7.5 h of 1.5 h")) << said.out.toStdString();
}

TEST_F(DueVerb, SaysHowSurelyAndWhatGoesFirst) {
    EXPECT_TRUE(say({"due", file_}).out.contains("too few outings are known"));
    EXPECT_TRUE(dueLine("engine-oil").at("machine_clear").is_null());
    EXPECT_EQ(dueLine("engine-oil").at("habit"), "unknown");
    for (const char* day : {"2026-03-28", "2026-04-04", "2026-04-11", "2026-04-18", "2026-04-25"})
        ASSERT_EQ(say({"log", file_, "--outing", "0.25", "--on", day}).exit, 0);
    const Said said = say({"due", file_});
    EXPECT_TRUE(said.out.contains("nothing else falls due within 14 days: ")) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains("; first to go: ")) << said.out.toStdString();
    const nlohmann::json lines = say({"due", file_, "--json"}).json();
    expectKeepsTo("due", lines);
    int firsts = 0;
    for (const auto& line : lines)
        firsts += line.at("first_to_go") == true;
    EXPECT_EQ(firsts, 1);
    EXPECT_EQ(dueLine("engine-oil").at("habit"), "steady");
    // Nothing falls due: never likelier than that a single job holds.
    for (const auto& line : lines)
        if (line.at("standing") == "in hand") {
            EXPECT_LE(line.at("machine_clear").get<double>(), 1 - line.at("chance").get<double>() + 0.001)
                << line.dump();
        }
}

TEST_F(DueVerb, SaysWhatWouldBe) {
    for (const char* day : {"2026-03-28", "2026-04-04", "2026-04-11", "2026-04-18", "2026-04-25"})
        ASSERT_EQ(say({"log", file_, "--outing", "0.25", "--on", day}).exit, 0);
    const QString before = exported();
    const auto clearOf = [](const Said& said) { return said.json().at(0).at("machine_clear").get<double>(); };
    const double now = clearOf(say({"due", file_, "--json"}));
    EXPECT_LT(clearOf(say({"due", file_, "--json", "--if-ridden", "3"})), now) << "ridden more, less is left";
    const Said said = say({"due", file_, "--if-ridden", "3", "--if-ground", "mud"});
    EXPECT_TRUE(said.out.contains("as it is:")) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains("if so:")) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains(" -> ")) << said.out.toStdString();
    const nlohmann::json raced = say({"due", file_, "--json", "--if-event", "2026-05-09"}).json();
    EXPECT_TRUE(std::any_of(raced.begin(), raced.end(), [](const auto& line) {
        return line.at("event").is_object() && line.at("event").at("first_day") == "2026-05-09";
    }));
    EXPECT_EQ(exported(), before) << "nothing is kept";
}

// What is looked at before each race anyway is no news.
TEST_F(DueVerb, WhatWouldBeLeavesOutTheRound) {
    ASSERT_EQ(say({"log", file_, "--outing", "9", "--on", "2026-05-02"}).exit, 0);
    const Said said = say({"due", file_, "--if-event", "2026-05-08"});
    EXPECT_TRUE(said.out.contains("  Front rim: run-out: ")) << said.out.toStdString();
    EXPECT_FALSE(said.out.contains("  Battery and charging: ")) << said.out.toStdString();
}

TEST_F(DueVerb, SaysThatThereIsNoMachine) {
    ASSERT_EQ(say({"new", path("empty.witnessmark")}).exit, 0);
    for (const QStringList& asked : std::vector<QStringList>{{}, {"--if-ridden", "2"}}) {
        const Said said = say(QStringList{"due", path("empty.witnessmark")} + asked);
        EXPECT_EQ(said.exit, 0) << said.err.toStdString();
        EXPECT_EQ(said.out, "There is no machine in this file.\n");
    }
}

TEST_F(DueVerb, WhyIsOfTodayAlone) {
    for (const char* option : {"--if-ridden", "--if-ground", "--if-event"})
        expectRefusal(say({"due", file_, "--why", "engine-oil", option, "2"}), Exit::Usage,
                      QString("leave %1 out").arg(option));
}

TEST_F(DueVerb, RefusesToSupposeNonsense) {
    for (const QStringList& asked : std::vector<QStringList>{{"--if-ridden", "0"},
                                                             {"--if-ridden", "-1"},
                                                             {"--if-ridden", "11"},
                                                             {"--if-ridden", "often"},
                                                             {"--if-ridden", "nan"},
                                                             {"--if-ground", "lava"},
                                                             {"--if-event", "2026-02-30"},
                                                             {"--if-event", "2026-05-02"}}) {
        const Said said = say(QStringList{"due", file_} + asked);
        EXPECT_EQ(said.exit, static_cast<int>(Exit::Refused)) << asked.join(' ').toStdString();
        EXPECT_TRUE(said.err.contains(asked[1])) << said.err.toStdString();
    }
}

TEST_F(DueVerb, LooksFromAnotherDay) {
    const auto standingOn = [this](const char* day) {
        for (const auto& line : say({"due", file_, "--json", "--on", day}).json())
            if (line.at("code") == "coolant-change")
                return line.at("standing").get<std::string>();
        return std::string();
    };
    EXPECT_EQ(standingOn("2026-05-07"), "in hand");
    EXPECT_EQ(standingOn("2027-06-01"), "overdue");
}

TEST_F(DueVerb, ListsTheQuietOnesOnlyIfAsked) {
    EXPECT_FALSE(say({"due", file_}).out.contains("  in hand  "));
    const Said all = say({"due", file_, "--all"});
    EXPECT_GE(all.out.count('\n'), 40) << all.out.toStdString();
}

// The head counts the lines below it: not those of each outing, and not those that were put off.
TEST_F(DueVerb, ListsApartWhatTheHeadDoesNotCount) {
    const QString demo = path("demo.witnessmark");
    ASSERT_EQ(say({"new", demo, "--demo"}).exit, 0);
    const QStringList lines = say({"due", demo, "--machine", "Sorrel 450"}).out.split('\n');
    const auto head = lines.indexOf(QRegularExpression("^  7 due now, 7 before the flag; .*"));
    ASSERT_GE(head, 0) << lines.join('\n').toStdString();
    const auto round = lines.indexOf(QRegularExpression("^  to look at with each outing, [0-9]+:$"));
    EXPECT_EQ(round - head - 1, 7 + 7);
    const auto putOff = lines.indexOf("  put off, 1:");
    ASSERT_GT(putOff, round);
    EXPECT_TRUE(lines[putOff + 1].contains("Front tyre"));
    EXPECT_EQ(lines.filter("over, allowed").size(), 1) << "grips";
}

TEST_F(DueVerb, RefusesAnUnknownMachineAndNamesThoseThatThereAre) {
    const Said said = say({"due", file_, "--machine", "Osprey"});
    expectRefusal(said, Exit::Refused, "“Osprey”");
    EXPECT_TRUE(said.err.contains("Heron 250"));
}

TEST_F(DueVerb, RefusesADayThatIsNone) {
    for (const char* day : {"2026-02-30", "tomorrow", "07.05.2026", "", "99999999999999999999"})
        expectRefusal(say({"due", file_, "--on", day}), Exit::Refused, "The date");
}

// 7.5 h ridden since the machine was new; the oil is due at 1.5 h the first time: over by 6 h.
TEST_F(DueVerb, SaysWhy) {
    ASSERT_EQ(say({"log", file_, "--outing", "7.5", "--on", "2026-05-02"}).exit, 0);
    const nlohmann::json tree = say({"due", file_, "--why", "engine-oil", "--json"}).json();
    expectKeepsTo("due_why", tree);
    EXPECT_EQ(tree.at("figure").at("likely"), -600);
    const Said said = say({"due", file_, "--why", "engine-oil"});
    EXPECT_EQ(said.exit, 0);
    for (const char* words :
         {"Engine oil: over 6.0 h\n", "\n    behind it: 7.5 h\n", "\n      1 outing: 7.5 h\n"})
        EXPECT_TRUE(said.out.contains(words)) << words << "\n" << said.out.toStdString();
    expectRefusal(say({"due", file_, "--why", "wings"}), Exit::Refused, "“wings”");
}

// A new tube with every second tyre.
TEST_F(DueVerb, SaysWhenTheExtraWorkOfEveryNthTimeIsDue) {
    const nlohmann::json before = dueLine("rear-tyre").at("extra");
    EXPECT_EQ(before, (nlohmann::json{{"what", "New tube"}, {"every", 2}, {"in", 2}}));
    EXPECT_TRUE(dueLine("engine-oil").at("extra").is_null());
    EXPECT_TRUE(say({"due", file_, "--why", "rear-tyre"})
                    .out.contains("as well: New tube: after 1 more time (every 2 times)\n"));
    ASSERT_EQ(say({"record", file_, "--task", "rear-tyre", "--on", "2026-03-02"}).exit, 0);
    ASSERT_EQ(say({"log", file_, "--outing", "12", "--on", "2026-05-02", "--seen"}).exit, 0);
    EXPECT_EQ(dueLine("rear-tyre").at("extra").at("in"), 1);
    expectKeepsTo("due", say({"due", file_, "--json"}).json());
    const Said said = say({"due", file_});
    EXPECT_TRUE(said.out.contains(
        "Rear tyre: 12.0 h of 10.0 h, over, allowed, likely 2026-05-07, this time as well: New tube\n"))
        << said.out.toStdString();
    const Said why = say({"due", file_, "--why", "rear-tyre"});
    EXPECT_TRUE(why.out.contains("  as well: New tube: this time (every 2 times)\n"))
        << why.out.toStdString();
    expectKeepsTo("due_why", say({"due", file_, "--why", "rear-tyre", "--json"}).json());
}

// A machine with at least 45 h behind it, and nobody knows how many more.
TEST_F(DueVerb, AnOpenHighEndIsSaidSo) {
    nlohmann::json whole = nlohmann::json::parse(exported().toStdString());
    auto& machine = whole["machine"][0];
    machine["started_new"] = false;
    machine["past_low"] = machine["past_best"] = 4500;
    machine["past_high"] = nullptr;
    write("whole.json", QByteArray::fromStdString(whole.dump()));
    const QString used = path("used.witnessmark");
    ASSERT_EQ(say({"import", used, path("whole.json")}).exit, 0);
    const Said never = say({"baseline", used, "--task", "rear-tyre", "--never-done"});
    ASSERT_EQ(never.exit, 0) << never.err.toStdString();
    const Said said = say({"due", used});
    EXPECT_TRUE(said.out.contains("Rear tyre: 45.0 h or more of 10.0 h")) << said.out.toStdString();
    const Said why = say({"due", used, "--why", "rear-tyre"});
    EXPECT_TRUE(why.out.startsWith("Rear tyre: over 35.0 h or more\n")) << why.out.toStdString();
    EXPECT_TRUE(why.out.contains("before the file: 45.0 h or more\n")) << why.out.toStdString();
}

}  // namespace
}  // namespace wm::test
