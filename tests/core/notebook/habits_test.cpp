// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Two dozen notebooks in other habits, each with defects planted: what is caught, and what is asked about
// that was right.
#include <gtest/gtest.h>

#include <iostream>
#include <map>

#include "tests/core/notebook/habits.h"
#include "tests/core/notebook/notebook_bench.h"

namespace wm::notebook {
namespace {

struct Score {
    int planted = 0;
    int caught = 0;
    int right = 0;        ///< lines without a defect
    int falseAlarms = 0;  ///< of these
    int curable = 0;      ///< defects whose line can be made out
    int cured = 0;        ///< of these as it was meant

    Score& operator+=(const Score& other) {
        planted += other.planted;
        caught += other.caught;
        right += other.right;
        falseAlarms += other.falseAlarms;
        curable += other.curable;
        cured += other.cured;
        return *this;
    }
};

bool asMeant(const Line& line, const Meant& meant, const Notebook& notebook) {
    const Facts& facts = line.facts;
    return facts.machines.size() == 1 && notebook.machines[facts.machines[0]].name == meant.machine &&
           facts.date == meant.date && facts.hours && std::abs(facts.hours->count() - meant.hours) <= 1 &&
           (!meant.meter || (facts.meter && facts.meter->count() == *meant.meter));
}

class HabitsTest : public testing::Test {
  protected:
    Score score(const Habit& habit, std::uint32_t seed) {
        Score score;
        const MadeNotebook made = makeNotebook(habit, seed);
        Garage garage;
        for (const char* name : {"Avocet 300", "Dunlin 85"})
            garage.must([&](const verbs::VerbContext& context) {
                return verbs::saveMachine(context, {.name = name, .since = garage.today});
            });
        const Notebook notebook = garage.read(made.bytes);
        for (std::size_t at = 0; at < made.lines.size(); ++at) {
            const Line& line = lineOf(notebook, made.numbers[at]);
            const Meant& meant = made.lines[at];
            const bool taken = line.verdict == Verdict::Taken;
            if (meant.defect.empty()) {
                ++score.right;
                if (!taken) {
                    ++score.falseAlarms;
                    std::cout << "false alarm: " << told(line) << '\n';
                } else {
                    EXPECT_TRUE(asMeant(line, meant, notebook)) << told(line);
                }
                continue;
            }
            ++score.planted;
            score.caught += taken ? 0 : 1;
            if (taken)
                std::cout << "missed (" << meant.defect << "): " << told(line) << '\n';
            if (line.cure == Cure::AsLikely && meant.defect != "hours unreadable" &&
                meant.defect != "two machines") {
                ++score.curable;
                score.cured += asMeant(line, meant, notebook) ? 1 : 0;
                if (!asMeant(line, meant, notebook))
                    std::cout << "cured otherwise (" << meant.defect << "): " << told(line) << '\n';
            }
        }
        return score;
    }
};

TEST_F(HabitsTest, DefectsAreCaughtAndRightLinesTaken) {
    Score all;
    const auto each = habits();
    ASSERT_GE(each.size(), 20U);
    for (std::size_t at = 0; at < each.size(); ++at) {
        SCOPED_TRACE(at);
        for (std::uint32_t seed = 1; seed <= 4; ++seed) {
            const Score one = score(each[at], seed * 100 + static_cast<std::uint32_t>(at));
            all += one;
        }
    }
    std::cout << "planted " << all.planted << ", caught " << all.caught << "; right lines " << all.right
              << ", false alarms " << all.falseAlarms << "; cures " << all.curable << ", as meant "
              << all.cured << '\n';
    EXPECT_GE(all.caught * 100, all.planted * 97);
    EXPECT_LE(all.falseAlarms * 100, all.caught * 5);
    EXPECT_GE(all.cured * 100, all.curable * 95);
}

}  // namespace
}  // namespace wm::notebook
