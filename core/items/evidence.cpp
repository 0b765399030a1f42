// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/items/evidence.h"

#include <algorithm>
#include <cmath>

namespace wm::items {

using base::Fault;
using base::refuse;
using base::Result;
using calendar::Date;
using units::Hours;

namespace {

constexpr std::int64_t kMostPast = 10'000'000;  // hundredths: 100,000 h
constexpr double kMostSeasons = 100;
constexpr double kMostShare = 4;  // of the way to a limit; beyond it a figure is a typing error
constexpr double kNoise = 1e-9;   // of floating point, so that 60 % of 15 h is 9 h and not just under

Result<void> hoursFit(std::string_view field, const std::optional<Hours>& hours) {
    if (hours && hours->count() < 0)
        return refuse(Fault::Negative, std::string(field), units::hoursText(*hours));
    if (hours && hours->count() > kMostPast)
        return refuse(Fault::TooLarge, std::string(field), units::hoursText(*hours),
                      units::hoursText(Hours{kMostPast}));
    return {};
}

Result<void> orderFits(std::string_view field, const std::optional<Hours>& low,
                       const std::optional<Hours>& high) {
    if (low && high && *high < *low)
        return refuse(Fault::OutOfOrder, std::string(field), units::hoursText(*high), units::hoursText(*low));
    return {};
}

std::int64_t wholeHours(double hundredths, double (*round)(double), double noise) {
    return static_cast<std::int64_t>(round(hundredths / 100 + noise)) * 100;
}
Hours roundedDown(double hundredths) {
    return Hours{wholeHours(hundredths, std::floor, kNoise)};
}
Hours roundedUp(double hundredths) {
    return Hours{wholeHours(hundredths, std::ceil, -kNoise)};
}
Hours rounded(double hundredths) {
    return Hours{wholeHours(hundredths, std::round, 0)};
}

double count(Hours hours) {
    return static_cast<double>(hours.count());
}

// The first of several checks that fails.
template <class... Checks>
Result<void> all(Result<void> first, Checks... others) {
    if constexpr (sizeof...(others) == 0)
        return first;
    else
        return first ? all(std::move(others)...) : first;
}

Result<Claim> claim(const MeterShows& meter) {
    auto fine = all(hoursFit("shown", meter.shown), hoursFit("before", meter.before));
    if (!fine)
        return tl::unexpected(fine.error());
    if (meter.before && meter.fitted != MeterFitted::Later)
        return refuse(Fault::Inconsistent, "before", units::hoursText(*meter.before));
    Claim says{.low = meter.shown, .best = meter.shown + meter.before.value_or(Hours{0})};
    if (meter.fitted == MeterFitted::FromNew)
        says.high = meter.shown;
    // Without a word on when it was fitted, what it shows is the least and no more than that.
    if (meter.fitted != MeterFitted::FromNew && !meter.before)
        says.best.reset();
    return says;
}

Result<Claim> claim(const SellersWord& word) {
    const auto fine = hoursFit("likely", word.likely);
    if (!fine)
        return tl::unexpected(fine.error());
    return Claim{.best = word.likely};
}

Result<Claim> claim(const SeasonsRidden& ridden) {
    const double seasons = ridden.seasons.toDouble();
    if (!(seasons > 0))
        return refuse(Fault::NotPositive, "seasons", ridden.seasons.text());
    if (seasons > kMostSeasons)
        return refuse(Fault::TooLarge, "seasons", ridden.seasons.text(), "100");
    auto fine = all(hoursFit("season_low", ridden.low), hoursFit("season_high", ridden.high),
                    orderFits("season_high", ridden.low, ridden.high));
    if (!fine)
        return tl::unexpected(fine.error());
    const double low = seasons * count(ridden.low);
    if (!ridden.high)
        return Claim{.best = rounded(low)};
    const double high = seasons * count(*ridden.high);
    return Claim{.low = roundedDown(low), .best = rounded((low + high) / 2), .high = roundedUp(high)};
}

Result<Claim> claim(const WearSeen& wear) {
    auto fine = all(hoursFit("life_low", wear.lifeLow), hoursFit("life_high", wear.lifeHigh),
                    orderFits("life_high", wear.lifeLow, wear.lifeHigh));
    if (!fine)
        return tl::unexpected(fine.error());
    if (wear.limit == wear.asNew)
        return refuse(Fault::Inconsistent, "limit", wear.limit.text(), wear.asNew.text());
    const double share =
        (wear.now.toDouble() - wear.asNew.toDouble()) / (wear.limit.toDouble() - wear.asNew.toDouble());
    if (share < 0 || share > kMostShare)
        return refuse(Fault::Implausible, "now", wear.now.text(),
                      share < 0 ? wear.asNew.text() : wear.limit.text());
    Claim says{.wornPercent = static_cast<std::int64_t>(std::round(share * 100))};
    if (!wear.lifeLow && !wear.lifeHigh)
        return says;
    usage::HoursBracket part;
    part.low = wear.lifeLow ? roundedDown(share * count(*wear.lifeLow)) : Hours{0};
    part.high = wear.lifeHigh ? std::optional(roundedUp(share * count(*wear.lifeHigh))) : std::nullopt;
    const double middle = wear.lifeLow && wear.lifeHigh
                              ? (count(*wear.lifeLow) + count(*wear.lifeHigh)) / 2
                              : count(wear.lifeLow ? *wear.lifeLow : *wear.lifeHigh);
    part.best = std::max(part.low, rounded(share * middle));
    if (part.high)
        part.best = std::min(part.best, *part.high);
    says.ofPart = part;
    if (wear.newHere && wear.lifeLow)
        says.low = part.low;
    return says;
}

// "2319": made in week 23 of 2019. The Monday of week w is that of week 1 and 7 (w - 1) days; week 1 holds 4
// January.
Result<Claim> claim(const TyreStamp& stamp, Date today) {
    const std::string& code = stamp.code;
    const bool figures = code.size() == 4 &&
                         std::all_of(code.begin(), code.end(), [](char c) { return c >= '0' && c <= '9'; });
    if (!figures)
        return refuse(Fault::Malformed, "code", code, "2319");
    const int week = (code[0] - '0') * 10 + (code[1] - '0');
    const int year = 2000 + (code[2] - '0') * 10 + (code[3] - '0');
    if (week < 1 || week > 53)
        return refuse(Fault::Malformed, "code", code, "2319");
    const auto fourth = calendar::makeDate(year, 1, 4);
    if (!fourth)
        return tl::unexpected(fourth.error());
    const Date monday = fourth->plusDays(1 - fourth->isoWeekday()).plusDays(7 * (week - 1));
    if (monday > today)
        return refuse(Fault::InFuture, "code", code, today.iso());
    return Claim{.madeIn = monday};
}

}  // namespace

Result<Claim> claimOf(const Evidence& evidence, Date today) {
    return std::visit(
        [&](const auto& piece) {
            if constexpr (std::is_same_v<std::decay_t<decltype(piece)>, TyreStamp>)
                return claim(piece, today);
            else
                return claim(piece);
        },
        evidence);
}

Verdict weigh(std::span<const Claim> claims) {
    Verdict verdict;
    for (std::size_t at = 0; at < claims.size(); ++at) {
        const Claim& claim = claims[at];
        if (claim.low && (!verdict.lowBy || *claim.low > *claims[*verdict.lowBy].low))
            verdict.lowBy = at;
        if (claim.high && (!verdict.highBy || *claim.high < *claims[*verdict.highBy].high))
            verdict.highBy = at;
        if (claim.best && (!verdict.bestBy || *claim.best > *claims[*verdict.bestBy].best))
            verdict.bestBy = at;
        for (std::size_t other = 0; other < claims.size(); ++other)
            if (claim.low && claims[other].high && *claim.low > *claims[other].high)
                verdict.contradictions.push_back({at, other});
    }
    if (!verdict.contradictions.empty() || (!verdict.lowBy && !verdict.highBy && !verdict.bestBy))
        return verdict;
    usage::HoursBracket bracket;
    bracket.low = verdict.lowBy ? *claims[*verdict.lowBy].low : Hours{0};
    bracket.high = verdict.highBy ? claims[*verdict.highBy].high : std::nullopt;
    bracket.best = std::max(bracket.low, verdict.bestBy ? *claims[*verdict.bestBy].best : bracket.low);
    if (bracket.high)
        bracket.best = std::min(bracket.best, *bracket.high);
    for (std::size_t at = 0; at < claims.size(); ++at)
        if (claims[at].best &&
            (*claims[at].best < bracket.low || (bracket.high && *claims[at].best > *bracket.high)))
            verdict.outside.push_back(at);
    verdict.machine = bracket;
    return verdict;
}

}  // namespace wm::items
