// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The program against the truth table in tests/data/subject: a ratchet. failing.txt there names the cases
// that it does not answer rightly yet; the list may only get shorter.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>

#include "tests/core/slow/book_answer.h"
#include "tests/core/slow/random_tale.h"
#include "tests/core/slow/subject.h"
#include "tests/repository.h"

namespace wm::tale {
namespace {

/// What failing.txt allows.
struct Allowed {
    std::set<std::string> cases{};
    int ofRandomGarages = 0;  ///< figures that differ
    int waitsOfRandomGarages = 0;
};

Allowed allowed() {
    static constexpr std::string_view kRandom = "random garages: ";
    static constexpr std::string_view kWaits = "waits in random garages: ";
    std::ifstream in(test::repositoryPath("tests/data/subject/failing.txt"));
    Allowed all;
    for (std::string line; std::getline(in, line);)
        if (line.starts_with(kRandom))
            all.ofRandomGarages = std::stoi(line.substr(kRandom.size()));
        else if (line.starts_with(kWaits))
            all.waitsOfRandomGarages = std::stoi(line.substr(kWaits.size()));
        else if (!line.empty() && !line.starts_with('#'))
            all.cases.insert(line);
    return all;
}

// What the program says differently, a line each.
std::string faultsOf(const Case& one) {
    const Tale tale = taleOf(one.facts);
    std::string faults;
    for (const Json& ask : one.asks) {
        const auto on = dayOf(ask.at("on"));
        const BookAnswers book(tale, on);
        if (ask.contains("may_record")) {
            const std::string given =
                book.mayRecord(ask.at("of").get<std::string>(), ask.at("may_record").get<std::string>());
            if (given != ask.at("is").get<std::string>())
                faults += "\n  on " + on.iso() + ", may_record: " + given + " where right is " +
                          ask.at("is").get<std::string>();
            continue;
        }
        const auto wrong = ask.contains("follow_ups")
                               ? differences(ask, book.followUps(ask.at("follow_ups").get<std::string>()))
                               : differences(ask, book.answer(ask.at("of").get<std::string>(),
                                                              ask.at("task").get<std::string>()));
        for (const std::string& line : wrong)
            faults += "\n  on " + on.iso() + ", " + line;
    }
    return faults;
}

TEST(SubjectOfTheBookTest, OnlyTheNamedCasesFailStill) {
    auto known = allowed().cases;
    for (const Case& one : casesIn("subject")) {
        const std::string faults = faultsOf(one);
        const bool isKnown = known.erase(one.name) > 0;
        if (!isKnown)
            EXPECT_EQ(faults, "") << one.theme << ": " << one.name;
        else
            EXPECT_NE(faults, "") << one.name << " holds now: take it out of tests/data/subject/failing.txt";
    }
    for (const std::string& name : known)
        ADD_FAILURE() << "tests/data/subject/failing.txt names " << name << ", and there is no such case";
}

/// Figures that differ, and the first of them; what waits apart.
struct Differing {
    int figures = 0;
    int waits = 0;
    std::string example{};
};

void compare(const Tale& tale, calendar::Date on, Differing& all) {
    const BookAnswers book(tale, on);
    const auto note = [&](const std::string& machine, const std::string& what, const std::string& how) {
        if (how.starts_with("waits: ")) {
            ++all.waits;
            return;
        }
        ++all.figures;
        if (all.example.empty())
            all.example = machine + ", " + what + " on " + on.iso() + ": " + how;
    };
    for (const std::string machine : {"Heron", "Kite"}) {
        for (const std::string& task : randomTasks()) {
            const Answer right = slowAnswer(tale, machine, task, on);
            Answer given = book.answer(machine, task);
            if (right.behind && given.behind && !right.behind->best)
                given.behind->best.reset();
            for (const std::string& wrong : differences(right, given))
                note(machine, task, wrong);
        }
        auto right = slowFollowUps(tale, machine, on);
        auto given = book.followUps(machine);
        std::sort(right.begin(), right.end());
        std::sort(given.begin(), given.end());
        if (right != given)
            note(machine, "follow-ups", text(given) + " where right is " + text(right));
    }
}

TEST(LongSubjectOfTheBookTest, RandomGaragesDifferInNoMoreFiguresThanIsSaid) {
    Differing all;
    std::string garage;
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        const int days = 5 + static_cast<int>(seed % 40);
        const Tale tale = taleOf(randomTale(seed, days));
        const auto first = calendar::parseDate("", "2026-01-01").value();
        for (const int day : {days / 2, days + 2}) {
            compare(tale, first.plusDays(day), all);
            if (garage.empty() && !all.example.empty())
                garage = "garage " + std::to_string(seed);
        }
    }
    EXPECT_LE(all.figures, allowed().ofRandomGarages) << garage << ", " << all.example;
    EXPECT_GE(all.figures, allowed().ofRandomGarages) << "put it down in tests/data/subject/failing.txt";
    EXPECT_EQ(all.waits, allowed().waitsOfRandomGarages) << "it may only get less";
}

}  // namespace
}  // namespace wm::tale
