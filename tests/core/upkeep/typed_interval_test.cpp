// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/typed_interval.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace wm::upkeep {
namespace {

using base::Fault;

Limit limit(Counter counter, std::int64_t every, std::optional<std::int64_t> first = {}) {
    return {.counter = counter, .every = every, .first = first};
}

std::vector<Limit> read(std::string_view text) {
    const auto typed = parseInterval("figure", text);
    EXPECT_TRUE(typed.has_value()) << text;
    return typed ? typed->limits : std::vector<Limit>{};
}

Fault fault(std::string_view text) {
    const auto typed = parseInterval("figure", text);
    EXPECT_FALSE(typed.has_value()) << text;
    if (typed)
        return Fault::NotEmpty;
    EXPECT_EQ(typed.error().field, "figure") << text;
    return typed.error().fault;
}

TEST(TypedInterval, ReadsWhatManualsPrint) {
    EXPECT_EQ(read("15 h"), std::vector{limit(Counter::Hours, 1500)});
    EXPECT_EQ(read(" 2,5hrs "), std::vector{limit(Counter::Hours, 250)});
    EXPECT_EQ(read("1000 km"), std::vector{limit(Counter::Metres, 1'000'000)});
    EXPECT_EQ(read("2 weeks"), std::vector{limit(Counter::Days, 14)});
    EXPECT_EQ(read("2 Years"), std::vector{limit(Counter::Months, 24)});
    EXPECT_EQ(read("1 wash"), std::vector{limit(Counter::Washes, 1)});
    EXPECT_EQ(read("3 mud days"), std::vector{limit(Counter::MudDays, 3)});
    EXPECT_EQ(read("first 3 h, then 15 h"), std::vector{limit(Counter::Hours, 1500, 300)});
    EXPECT_EQ(read("First 3 h then 15 h / 6 months"),
              (std::vector{limit(Counter::Hours, 1500, 300), limit(Counter::Months, 6)}));
    const auto both = parseInterval("figure", "50 h and 2 years");
    ASSERT_TRUE(both);
    EXPECT_EQ(both->combine, Combine::Last);
    EXPECT_EQ(parseInterval("figure", "50 h or 2 years")->combine, Combine::First);
}

TEST(TypedInterval, SaysWhatItCannotRead) {
    EXPECT_EQ(fault(""), Fault::Empty);
    EXPECT_EQ(fault("h"), Fault::NotANumber);
    EXPECT_EQ(fault("15"), Fault::WrongUnit);
    EXPECT_EQ(fault("15 miles"), Fault::WrongUnit);
    EXPECT_EQ(fault("-15 h"), Fault::NotANumber);
    EXPECT_EQ(fault("nan h"), Fault::NotANumber);
    EXPECT_EQ(fault("0 h"), Fault::NotPositive);
    EXPECT_EQ(fault("15 h or"), Fault::WrongUnit);
    EXPECT_EQ(fault("15 h or "), Fault::Empty);
    EXPECT_EQ(fault("15 h / 20 h"), Fault::Duplicate);
    EXPECT_EQ(fault("15 h or 3 months and 40 km"), Fault::Inconsistent);
    EXPECT_EQ(fault("first 3 h, then 15 km"), Fault::Inconsistent);
    EXPECT_EQ(fault("first 3 h"), Fault::Malformed);
    EXPECT_EQ(fault("1.5 months"), Fault::Malformed);
    EXPECT_EQ(fault("999999999999999999999 h"), Fault::TooLarge);
    EXPECT_EQ(fault("1000001 days"), Fault::TooLarge);
    EXPECT_EQ(fault("15 \xC3\x28"), Fault::WrongUnit);
}

TEST(TypedInterval, ReadsBackWhatItSays) {
    EXPECT_TRUE(rc::check("an interval as text is the same interval again", [] {
        TypedInterval interval;
        const auto chosen = *rc::gen::inRange(1, 512);  // a bit for each counter
        for (int at = 0; at < 9; ++at) {
            if ((chosen >> at) % 2 == 0)
                continue;
            const auto counter = static_cast<Counter>(at);
            Limit each{.counter = counter, .every = *rc::gen::inRange<std::int64_t>(1, 90'000)};
            if (*rc::gen::arbitrary<bool>())
                each.first = *rc::gen::inRange<std::int64_t>(1, 90'000);
            interval.limits.push_back(each);
        }
        if (interval.limits.size() > 1 && *rc::gen::arbitrary<bool>())
            interval.combine = Combine::Last;
        const char mark = *rc::gen::element('.', ',');
        const std::string text = intervalText(interval.limits, interval.combine, mark);
        const auto again = parseInterval("figure", text);
        RC_ASSERT(again.has_value());
        RC_ASSERT(again->limits == interval.limits);
        RC_ASSERT(again->combine == interval.combine);
    }));
}

TEST(TypedInterval, TakesAnyBytes) {
    EXPECT_TRUE(rc::check("any text is read or refused", [](const std::string& text) {
        const auto typed = parseInterval("figure", text);
        RC_ASSERT(!typed || !typed->limits.empty());
    }));
}

}  // namespace
}  // namespace wm::upkeep
