// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The program against the truth table in tests/data/subject: a ratchet. failing.txt there names the cases
// that it does not answer rightly yet; the list may only get shorter.
#include <gtest/gtest.h>

#include <fstream>
#include <set>

#include "tests/core/slow/book_answer.h"
#include "tests/repository.h"

namespace wm::tale {
namespace {

std::set<std::string> knownToFail() {
    std::ifstream in(test::repositoryPath("tests/data/subject/failing.txt"));
    std::set<std::string> names;
    for (std::string line; std::getline(in, line);)
        if (!line.empty() && !line.starts_with('#'))
            names.insert(line);
    return names;
}

// What the program says differently, a line each.
std::string faultsOf(const Case& one) {
    const Tale tale = taleOf(one.facts);
    std::string faults;
    for (const Json& ask : one.asks) {
        const auto on = dayOf(ask.at("on"));
        const auto wrong =
            ask.contains("follow_ups")
                ? differences(ask, bookFollowUps(tale, ask.at("follow_ups").get<std::string>(), on))
                : differences(ask, bookAnswer(tale, ask.at("of").get<std::string>(),
                                              ask.at("task").get<std::string>(), on));
        for (const std::string& line : wrong)
            faults += "\n  on " + on.iso() + ", " + line;
    }
    return faults;
}

TEST(SubjectOfTheBookTest, OnlyTheNamedCasesFailStill) {
    auto known = knownToFail();
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

}  // namespace
}  // namespace wm::tale
