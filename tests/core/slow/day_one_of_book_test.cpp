// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The program against the first lists in tests/data/day_one: each answer is said by the verb to a garage of
// its own and must come to what stands there. failing.txt names the cases that don't yet; it may only get
// shorter.
#include <gtest/gtest.h>

#include <array>
#include <fstream>
#include <set>

#include "core/book/unrecorded.h"
#include "core/upkeep/unknown.h"
#include "tests/core/slow/day_one_garage.h"
#include "tests/repository.h"

namespace wm::tale {
namespace {

using outlook::StandingKind;
using upkeep::Counter;

constexpr std::array kFirstLists{"four-stroke-enduro", "four-stroke-motocross", "small-wheel-youth",
                                 "two-stroke-motocross"};

Json listOf(const std::string& starter) {
    std::ifstream in(test::repositoryPath("tests/data/day_one/" + starter + ".json"));
    return Json::parse(in);
}

std::string textOf(const KnownEnds& ends) {
    const auto one = [](const std::optional<std::int64_t>& end) { return end ? std::to_string(*end) : "?"; };
    return one(ends.low) + ".." + one(ends.best) + ".." + one(ends.high);
}

// "9 months", "10 washes", "15 h"; what is none of these is the code of another job.
std::optional<Counter> counterIn(const std::string& limit) {
    const std::string words = limit.substr(limit.find(' ') + 1);
    for (const auto& counter : upkeep::kCounters)
        if (words == counter.one || words == counter.many)
            return counter.of;
    return std::nullopt;
}

KnownEnds wantedOf(const std::string& behind, Counter counter, calendar::Date today) {
    return behind.size() >= 10 && behind[4] == '-' ? agesIn(behind, today)
                                                   : endsIn(behind, counter == Counter::Hours);
}

// What is behind one limit, if it isn't what stands in the file.
std::string faultIn(const book::DueLine& line, const std::string& limit, const std::string& behind,
                    calendar::Date today) {
    const auto counter = counterIn(limit);
    const auto& down = line.countdown;
    if (!counter) {
        const std::string done = down.noRecord ? "?" : std::to_string(down.othersDone);
        return done == behind ? "" : "\n  " + limit + ": " + done + " where right is " + behind;
    }
    const KnownEnds wanted = wantedOf(behind, *counter, today);
    KnownEnds given;
    for (const upkeep::LimitState& state : down.limits)
        if (state.limit.counter == *counter)
            given = {state.behind.low, state.behind.best, state.behind.high};
    // Nobody knows: then the least that is known is none.
    const auto least = [](const KnownEnds& ends) { return ends.low.value_or(0); };
    const bool same = least(wanted) == least(given) && wanted.best == given.best && wanted.high == given.high;
    return same ? "" : "\n  " + limit + ": " + textOf(given) + " where right is " + textOf(wanted);
}

// A limit of which the file does not speak.
std::string moreIn(const book::DueLine& line, const Json& behind) {
    std::set<Counter> spoken;
    for (const auto& [limit, value] : behind.items())
        if (const auto counter = counterIn(limit))
            spoken.insert(*counter);
    std::string more;
    for (const upkeep::LimitState& state : line.countdown.limits)
        if (!spoken.contains(state.limit.counter))
            more += "\n  and counts " + std::string(base::nameOf(state.limit.counter));
    return more;
}

// Jobs that an answer rests on: what it was done with, and what is counted in the other job's times.
std::set<std::string> restsOn(const Json& answer) {
    std::set<std::string> codes;
    if (answer.at("says").contains("with"))
        codes.insert(answer.at("says").at("with").get<std::string>());
    for (const auto& [limit, behind] : answer.at("behind").items())
        if (!counterIn(limit))
            codes.insert(limit.substr(limit.find(' ') + 1));
    return codes;
}

std::string faultsOf(const std::string& starter, const Json& list, const Json& answer) {
    DayOne garage(starter, list.at("machine"), DayOne::Jobs::AllOn);
    for (const std::string& code : restsOn(answer))
        for (const Json& other : list.at("answers"))
            if (other.at("task") == code) {
                garage.answer(other);
                break;
            }
    garage.answer(answer);
    const book::Book book = garage.book();
    const auto* found = book.dueLine(garage.task(answer.at("task").get<std::string>()));
    if (found == nullptr)
        return "\n  is not on the list";
    const book::DueLine& line = *found;
    std::string faults;
    const std::string given(base::nameOf(line.standing.kind));
    if (given != answer.at("class").get<std::string>())
        faults += "\n  " + given + " where right is " + answer.at("class").get<std::string>();
    for (const auto& [limit, behind] : answer.at("behind").items())
        faults += faultIn(line, limit, behind.get<std::string>(), garage.today);
    return faults + moreIn(line, answer.at("behind"));
}

TEST(LongDayOneOfTheBookTest, OnlyTheNamedCasesFailStill) {
    std::set<std::string> known;
    std::ifstream in(test::repositoryPath("tests/data/day_one/failing.txt"));
    for (std::string line; std::getline(in, line);)
        if (!line.empty() && !line.starts_with('#'))
            known.insert(line);
    int cases = 0;
    for (const std::string starter : kFirstLists) {
        const Json list = listOf(starter);
        for (const Json& answer : list.at("answers")) {
            ++cases;
            const std::string name = starter + " " + answer.at("name").get<std::string>();
            const std::string faults = faultsOf(starter, list, answer);
            if (known.erase(name) == 0)
                EXPECT_EQ(faults, "") << name;
            else
                EXPECT_NE(faults, "") << name << " holds now: take it out of failing.txt";
        }
    }
    EXPECT_EQ(cases, 58);
    for (const std::string& name : known)
        ADD_FAILURE() << "tests/data/day_one/failing.txt names " << name << ", and there is no such case";
}

/// How the lines of a first list stand.
struct Standings {
    int lines = 0;
    int red = 0;
    int mayBe = 0;
    int unknown = 0;
    friend bool operator==(const Standings&, const Standings&) = default;
    friend void PrintTo(const Standings& all, std::ostream* out) {
        *out << all.red << " red, " << all.mayBe << " may be over, " << all.unknown << " unknown of "
             << all.lines;
    }
};

Standings standingsOf(const DayOne& garage) {
    const book::Book book = garage.book();
    Standings all;
    for (const book::DueLine& line : book.due(garage.machine())) {
        ++all.lines;
        all.red += line.standing.kind == StandingKind::Overdue;
        all.mayBe += line.standing.kind == StandingKind::MayBeOver;
        all.unknown += line.standing.kind == StandingKind::NoRecord;
    }
    return all;
}

// A used machine of 40 h by its meter, likely 42, at most 50.
Json ordinaryMachine() {
    return {{"name", "Dunlin"},
            {"day", "2026-06-01"},
            {"meter", "40.00"},
            {"past", "40.00..42.00..50.00"},
            {"race", "2026-06-14"}};
}

using SaidOf = std::optional<verbs::BaselineLine> (*)(const book::DueLine&, int place);

Standings afterAnswers(const std::string& starter, SaidOf answer, const verbs::SinceThen& all = {}) {
    DayOne garage(starter, ordinaryMachine(), DayOne::Jobs::AsShipped);
    const book::Book book = garage.book();
    std::vector<verbs::BaselineLine> lines;
    int place = 0;
    for (const book::DueLine* due : book::unknownOf(book, garage.machine()))
        if (const auto line = answer(*due, place++))
            lines.push_back(*line);
    garage.must([&](const verbs::VerbContext& context) {
        return verbs::recordBaseline(context, garage.machine(), lines, all);
    });
    return standingsOf(garage);
}

std::optional<verbs::BaselineLine> onTheDay(const book::DueLine& due, int) {
    return verbs::BaselineLine{
        .task = due.task->task, .answer = verbs::BaselineAnswer::Serviced, .date = verbs::day("2026-05-01")};
}

// What somebody knows who came by the machine used: of six jobs, the most pressing first, one is written down
// with its day and figure, one by its day, one remembered by about how long ago it was, one was never done,
// one he looks at (a job that looking can't settle he knows the day of), and of one nobody knows anything.
std::optional<verbs::BaselineLine> asItIsKnown(const book::DueLine& due, int place) {
    using verbs::BaselineAnswer;
    verbs::BaselineLine line{.task = due.task->task, .answer = BaselineAnswer::Serviced};
    switch (place % 6) {
        case 0:
            line.date = verbs::day("2026-05-10");
            line.meter = units::Hours{3700};
            return line;
        case 1:
            line.date = verbs::day("2026-05-01");
            return line;
        case 2:
            line.hoursAgo = verbs::Remembered{500, 800, 1200};
            line.day = verbs::RememberedDay{verbs::day("2026-03-01"), verbs::day("2026-04-01"),
                                            verbs::day("2026-05-01")};
            return line;
        case 3:
            line.answer = BaselineAnswer::NeverDone;
            return line;
        case 4:
            if (upkeep::isALook(*due.task))
                line.answer = BaselineAnswer::LookedFine;
            else
                line.date = verbs::day("2026-05-01");
            return line;
        default:
            return std::nullopt;
    }
}

const verbs::SinceThen kNoWashesNorMud{{{Counter::Washes, {0, 0, 0}}, {Counter::MudDays, {0, 0, 0}}}, {}};

// What a new owner's list looks like once he has answered. In tests/data/day_one/README.md stands what it was
// before.
TEST(LongDayOneOfTheBookTest, AnAnsweredListIsBelieved) {
    const auto day = [](const char* starter) { return afterAnswers(starter, onTheDay); };
    const auto known = [](const char* starter) {
        return afterAnswers(starter, asItIsKnown, kNoWashesNorMud);
    };
    EXPECT_EQ(day("four-stroke-enduro"), (Standings{124, 1, 60, 5}));
    EXPECT_EQ(day("four-stroke-motocross"), (Standings{108, 1, 59, 3}));
    EXPECT_EQ(day("small-wheel-youth"), (Standings{110, 1, 59, 4}));
    EXPECT_EQ(day("two-stroke-motocross"), (Standings{105, 1, 60, 3}));
    EXPECT_EQ(known("four-stroke-enduro"), (Standings{124, 10, 15, 19}));
    EXPECT_EQ(known("four-stroke-motocross"), (Standings{108, 11, 18, 18}));
    EXPECT_EQ(known("small-wheel-youth"), (Standings{110, 15, 15, 16}));
    EXPECT_EQ(known("two-stroke-motocross"), (Standings{105, 11, 20, 17}));
}

}  // namespace
}  // namespace wm::tale
