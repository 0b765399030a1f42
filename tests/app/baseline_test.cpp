// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

/// A used machine of 45 h or more; its meter showed 40 in the morning of 1 March.
class BaselineVerb : public GarageTest {
  protected:
    void SetUp() override {
        GarageTest::SetUp();
        file_ = path("used.witnessmark");
        const Said made = say({"new", file_, "--starter", "two-stroke-motocross", "--machine", "Plover",
                               "--since", "2026-03-01", "--past", "45"});
        ASSERT_EQ(made.exit, 0) << made.err.toStdString();
        ASSERT_EQ(say({"log", file_, "--reading", "40", "--on", "2026-03-01"}).exit, 0);
    }
    void known(const QStringList& words) {
        const Said said = say(QStringList{"baseline", file_} + words);
        EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    }
    [[nodiscard]] static nlohmann::json behind(const nlohmann::json& line) {
        return line.at("limits").at(0).at("behind");
    }
};

TEST_F(BaselineVerb, TakesWhatWasWrittenDownAndWhatIsRemembered) {
    known({"--task", "ring", "--day", "2026-02-10", "--meter", "33"});
    EXPECT_EQ(behind(dueLine("ring")), (nlohmann::json{{"least", 700}, {"likely", 700}, {"most", 700}}));
    known({"--task", "chain-slider", "--hours-ago", "15..22..35"});
    const auto slider = dueLine("chain-slider");
    EXPECT_EQ(slider.at("standing"), "may be over");
    EXPECT_EQ(behind(slider), (nlohmann::json{{"least", 1500}, {"likely", 2200}, {"most", 3500}}));
    EXPECT_EQ(slider.at("asked").at("for"), "hours since");
    known({"--task", "bottom-end", "--never-done"});
    EXPECT_EQ(dueLine("bottom-end").at("standing"), "may be over") << "it has 45 h behind it, or more";
    EXPECT_TRUE(say({"due", file_, "--why", "bottom-end"}).out.contains("seals: may be over"));
    known({"--task", "silencer-packing", "--meter-about", "28..36"});
    EXPECT_EQ(behind(dueLine("silencer-packing")),
              (nlohmann::json{{"least", 400}, {"likely", nullptr}, {"most", 1200}}));
    expectKeepsTo("due", say({"due", file_, "--json"}).json());
    const Said list = say({"due", file_});
    EXPECT_TRUE(
        list.out.contains("15.0 h to 35.0 h, likely 22.0 h of 35.0 h. How many hours ago, more closely?"))
        << list.out.toStdString();
    EXPECT_TRUE(list.out.contains("2 may be over; nobody can say what comes")) << list.out.toStdString();
    EXPECT_TRUE(list.out.contains("treat as dry and old, check first: ")) << list.out.toStdString();
    const Said why = say({"due", file_, "--why", "chain-slider", "--json"});
    expectKeepsTo("due_why", why.json());
    EXPECT_TRUE(why.out.contains("\"told\"")) << why.out.toStdString();
}

TEST_F(BaselineVerb, SaysOfAllJobsAtOnceWhatCameSince) {
    known({"--task", "front-wheel-bearings", "--day", "2026-02-10", "--meter", "33"});
    const auto before = dueLine("front-wheel-bearings");
    EXPECT_EQ(before.at("standing"), "no record");
    EXPECT_EQ(before.at("asked"),
              (nlohmann::json{{"for", "count since"}, {"counter", "washes"}, {"since", "2026-02-10"}}));
    known({"--since", "washes=none", "--since", "mud days=0..1..2"});
    EXPECT_EQ(dueLine("front-wheel-bearings").at("standing"), "in hand");
    EXPECT_EQ(say({"undo", file_, "--accept"}).exit, 0);
    EXPECT_EQ(dueLine("front-wheel-bearings").at("standing"), "no record");
}

TEST_F(BaselineVerb, RefusesWhatCannotBeRead) {
    expectRefusal(say({"baseline", file_}), Exit::Usage, "--task");
    expectRefusal(say({"baseline", file_, "--since", "washes=0"}), Exit::Refused, "");
    for (const QString since : {"washes", "hours=3", "washes=3..2..1"})
        EXPECT_NE(say({"baseline", file_, "--task", "ring", "--day", "2026-02-10", "--since", since}).exit, 0)
            << since.toStdString();
    EXPECT_NE(say({"baseline", file_, "--task", "ring", "--day-about", "2026-02-10"}).exit, 0);
    EXPECT_NE(say({"baseline", file_, "--task", "ring", "--hours-ago", "many"}).exit, 0);
}

}  // namespace
}  // namespace wm::test
