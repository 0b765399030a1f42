// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The first list of a used machine (tests/data/day_one): the classes that are written there follow from what
// is behind each limit by the rule of the README there, and the jobs are those of the starters.
#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <set>

#include "tests/core/slow/tale.h"
#include "tests/repository.h"

namespace wm::tale {
namespace {

constexpr std::array kStarters{"four-stroke-enduro", "four-stroke-motocross", "small-wheel-youth",
                               "two-stroke-motocross"};

Json fileOf(const std::string& path) {
    std::ifstream in(test::repositoryPath(path));
    return Json::parse(in);
}

/// Hundredths of hours, or pieces, or days; nothing where nobody knows.
struct Ends {
    std::optional<std::int64_t> low{};
    std::optional<std::int64_t> best{};
    std::optional<std::int64_t> high{};
};

std::vector<std::string> parts(const std::string& text) {
    std::vector<std::string> found;
    std::string::size_type from = 0;
    for (;;) {
        const auto dots = text.find("..", from);
        found.push_back(text.substr(from, dots - from));
        if (dots == std::string::npos)
            return found.size() == 1 ? std::vector(3, found.front()) : found;
        from = dots + 2;
    }
}

Ends endsOf(const std::string& text, calendar::Date today) {
    const auto end = [&](const std::string& part) -> std::optional<std::int64_t> {
        if (part == "?")
            return std::nullopt;
        if (part.size() == 10 && part[4] == '-')
            return today - calendar::parseDate("", part).value();
        return hundredths(part);
    };
    const auto all = parts(text);
    return {end(all.at(0)), end(all.at(1)), end(all.at(2))};
}

// What a limit comes to, in the measure of its ends; months end with the month, so each end has its own.
std::int64_t limitFor(const std::string& limit, const std::string& part) {
    const std::int64_t count = std::stoll(limit);
    if (limit.find(" month") != std::string::npos && part != "?") {
        const auto done = calendar::parseDate("", part).value();
        return done.plusMonths(static_cast<int>(count)) - done;
    }
    return limit == std::to_string(count) + " days" ? count : count * 100;
}

enum class Verdict : std::uint8_t { InHand, Unknown, MayBeOver, Overdue };

struct Judged {
    Verdict verdict = Verdict::InHand;
    bool nearlyThere = false;
};

Judged judge(const std::string& limit, const std::string& behind, calendar::Date today) {
    const Ends ends = endsOf(behind, today);
    const auto all = parts(behind);
    // The earliest day is the high end of an age.
    const auto at = [&](std::size_t i) { return limitFor(limit, all.at(i)); };
    const bool isDate = all.front().size() == 10;
    const auto low = isDate ? ends.high : ends.low;
    const auto high = isDate ? ends.low : ends.high;
    if ((low && *low >= at(isDate ? 2 : 0)) || (ends.best && *ends.best >= at(1)))
        return {Verdict::Overdue};
    if ((high && *high >= at(isDate ? 0 : 2)) || (ends.best && !high))
        return {Verdict::MayBeOver};
    if (!ends.best && !high)
        return {Verdict::Unknown};
    return {Verdict::InHand, !isDate && ends.best && at(1) - *ends.best <= 20};
}

std::string classOf(const Json& answer, calendar::Date today) {
    Judged all;
    for (const auto& [limit, behind] : answer.at("behind").items()) {
        Judged one = judge(limit, behind.get<std::string>(), today);
        // Over, and within what the limit may be overrun by: then it is due before the event.
        if (one.verdict == Verdict::Overdue && answer.value("allows", Json::object()).contains(limit) &&
            *endsOf(behind.get<std::string>(), today).high <=
                limitFor(limit, "") + hundredths(answer.at("allows").at(limit).get<std::string>()))
            one = {Verdict::InHand, true};
        all.verdict = std::max(all.verdict, one.verdict);
        all.nearlyThere = all.nearlyThere || one.nearlyThere;
    }
    const bool isAsked = answer.contains("triggers") || all.nearlyThere;
    switch (all.verdict) {
        case Verdict::Overdue:
            return "overdue";
        case Verdict::MayBeOver:
            return "may be over";
        case Verdict::Unknown:
            return answer.contains("triggers") ? "before event" : "no record";
        case Verdict::InHand:
            break;
    }
    return isAsked ? "before event" : "in hand";
}

std::set<std::string> codesOf(const std::string& starter) {
    std::set<std::string> codes;
    const Json file = fileOf("resources/starters/" + starter + ".json");
    for (const Json& task : file.at("tasks"))
        codes.insert(task.at("code").get<std::string>());
    return codes;
}

TEST(DayOneTableTest, AsksForJobsOfTheStarters) {
    std::size_t answers = 0;
    for (const std::string starter : kStarters) {
        const auto codes = codesOf(starter);
        const Json file = fileOf("tests/data/day_one/" + starter + ".json");
        std::set<std::string> names;
        for (const Json& answer : file.at("answers")) {
            ++answers;
            EXPECT_TRUE(names.insert(answer.at("name").get<std::string>()).second) << answer.dump();
            EXPECT_TRUE(codes.contains(answer.at("task").get<std::string>())) << answer.dump();
            EXPECT_GE(answer.at("why").get<std::string>().size(), 12U) << answer.dump();
            EXPECT_FALSE(answer.at("says").empty()) << answer.dump();
        }
    }
    EXPECT_GE(answers, 25U);
}

TEST(DayOneTableTest, EachClassFollowsFromWhatIsBehind) {
    std::set<std::string> seen;
    for (const std::string starter : kStarters) {
        const Json file = fileOf("tests/data/day_one/" + starter + ".json");
        const auto today = dayOf(file.at("machine").at("day"));
        for (const Json& answer : file.at("answers")) {
            EXPECT_EQ(classOf(answer, today), answer.at("class").get<std::string>())
                << starter << ": " << answer.at("name");
            seen.insert(answer.at("class").get<std::string>());
        }
    }
    EXPECT_EQ(seen.size(), 5U);
}

}  // namespace
}  // namespace wm::tale
