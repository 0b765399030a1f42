// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class ScheduleVerb : public GarageTest {
  protected:
    // The same machine, set up with older words: another how-to for the oil, less time for the fork, and no
    // grips.
    void makeOlder() {
        nlohmann::json whole = nlohmann::json::parse(exported().toStdString());
        auto kept = nlohmann::json::array();
        for (nlohmann::json& task : whole["task_version"]) {
            if (task["code"] == "grips")
                continue;
            if (task["code"] == "engine-oil")
                task["how_to"] = "Let it out, put it in.";
            if (task["code"] == "fork-oil")
                task["minutes"] = 1;
            kept.push_back(task);
        }
        ASSERT_EQ(kept.size() + 1, whole["task_version"].size());
        whole["task_version"] = kept;
        write("older.json", QByteArray::fromStdString(whole.dump()));
        file_ = path("older.witnessmark");
        const Said said = say({"import", file_, path("older.json")});
        ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    }
    [[nodiscard]] nlohmann::json task(const std::string& code) const {
        nlohmann::json last;
        const auto whole = nlohmann::json::parse(exported().toStdString());
        for (const auto& each : whole.at("task_version"))
            if (each.at("code") == code)
                last = each;
        return last;
    }
};

TEST_F(ScheduleVerb, SaysThatAMachineHasItAll) {
    const Said said = say({"schedule", file_});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_EQ(said.out, "Heron 250 has all that its schedule says, four-stroke motocross.\n");
    EXPECT_TRUE(say({"schedule", file_, "--json"}).json().at("differences").empty());
    expectRefusal(say({"schedule", file_, "--take", "order"}), Exit::Refused, "");
}

TEST_F(ScheduleVerb, ShowsWhatIsNewAndTakesAGroupOver) {
    makeOlder();
    const Said said = say({"schedule", file_});
    EXPECT_TRUE(said.out.contains("  new tasks, 1 (--take tasks):\n    Grips: new task\n"))
        << said.out.toStdString();
    EXPECT_TRUE(said.out.contains("Engine oil: how to\n")) << said.out.toStdString();
    const nlohmann::json answer = say({"schedule", file_, "--json"}).json();
    expectKeepsTo("schedule", answer);
    EXPECT_EQ(answer.at("differences").size(), 3U) << answer.dump(1);
    ASSERT_EQ(say({"schedule", file_, "--take", "words"}).exit, 0);
    EXPECT_NE(task("engine-oil").at("how_to"), "Let it out, put it in.");
    EXPECT_TRUE(task("grips").is_null());
    ASSERT_EQ(say({"schedule", file_, "--take", "tasks"}).exit, 0);
    EXPECT_TRUE(say({"schedule", file_, "--json"}).json().at("differences").empty());
    ASSERT_EQ(say({"undo", file_, "--accept"}).exit, 0);
    EXPECT_EQ(say({"schedule", file_, "--json"}).json().at("differences").size(), 1U);
}

TEST_F(ScheduleVerb, RefusesAGroupThatIsNone) {
    const QString before = exported();
    expectRefusal(say({"schedule", file_, "--take", "all"}), Exit::Refused, "order, tasks, intervals, words");
    EXPECT_EQ(exported(), before);
    ASSERT_EQ(say({"new", path("bare.witnessmark"), "--machine", "Osprey"}).exit, 0);
    expectRefusal(say({"schedule", path("bare.witnessmark")}), Exit::Refused,
                  "did not begin with a schedule");
}

}  // namespace
}  // namespace wm::test
