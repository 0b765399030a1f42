// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/explain/adds_up.h"

#include <fmt/format.h>

#include <algorithm>

namespace wm::explain {

using upkeep::CountBracket;

namespace {

using Part = std::optional<CountBracket> Step::*;

CountBracket sumOf(const Step& step, Part part) {
    CountBracket sum;
    for (const Step& child : step.children) {
        if (!(child.*part))
            continue;
        const CountBracket& more = *(child.*part);
        const auto both = [](const auto& a, const auto& b) {
            return a && b ? std::optional(*a + *b) : std::nullopt;
        };
        sum = {sum.low + more.low, both(sum.best, more.best), both(sum.high, more.high)};
    }
    return sum;
}

CountBracket rounded(const CountBracket& fine) {
    const auto one = [](std::int64_t value) { return (value + 500) / 1000; };
    const auto each = [&](const auto& end) { return end ? std::optional(one(*end)) : std::nullopt; };
    return {one(fine.low), each(fine.best), each(fine.high)};
}

std::int64_t leftOf(const Step& step) {
    const std::int64_t amount = *step.children[0].figure->best;
    const CountBracket& behind = *step.children[1].figure;
    if (step.side == upkeep::From::High && !behind.high)
        return std::min<std::int64_t>(amount - behind.best.value_or(behind.low), 0);
    const auto& first = step.side == upkeep::From::High ? behind.high : behind.best;
    return amount - first.value_or(behind.high.value_or(behind.low));
}

bool isOneOf(const Step& step) {
    const auto governs = [](const Step& child) { return child.kind == StepKind::Limit && child.governs; };
    const auto& children = step.children;
    const auto found = std::find_if(children.begin(), children.end(), governs);
    return found != children.end() && std::count_if(children.begin(), children.end(), governs) == 1 &&
           found->figure == step.figure;
}

bool childrenMake(const Step& step) {
    switch (step.makes) {
        case Makes::Sum:
            return step.figure == sumOf(step, &Step::figure) &&
                   std::all_of(step.children.begin(), step.children.end(),
                               [&](const Step& child) { return !child.figure || child.fine == step.fine; });
        case Makes::RoundedSum:
            return !step.fine && step.figure == rounded(sumOf(step, &Step::figure)) &&
                   step.raw == sumOf(step, &Step::raw);
        case Makes::Difference:
            return step.children.size() == 2 && step.figure->best == leftOf(step);
        case Makes::One:
            return isOneOf(step);
        case Makes::Nothing:
            return true;
    }
    return false;
}

std::string figureText(const Step& step) {
    if (!step.figure)
        return {};
    const auto one = [&step](std::int64_t value) {
        const bool hours = step.counter == upkeep::Counter::Hours;
        const double unit = (hours ? 100.0 : 1.0) * (step.fine ? 1000.0 : 1.0);
        return fmt::format("{:g}", static_cast<double>(value) / unit);
    };
    const CountBracket& f = *step.figure;
    const bool exact = f.high && f.low == *f.high;
    return exact ? one(f.low)
                 : fmt::format("{}..{}..{}", one(f.low), f.best ? one(*f.best) : "?",
                               f.high ? one(*f.high) : "");
}

}  // namespace

std::optional<std::string> whereItDoesNotAddUp(const Step& step) {
    if (!childrenMake(step))
        return print(step);
    for (const Step& child : step.children)
        if (auto found = whereItDoesNotAddUp(child))
            return found;
    return std::nullopt;
}

std::string print(const Step& step, int depth) {
    std::string line(static_cast<std::size_t>(2 * depth), ' ');
    line += base::nameOf(step.kind);
    for (const std::string& word : {step.name, step.detail})
        if (!word.empty())
            line += " " + word;
    if (step.count > 0)
        line += fmt::format(" of {}", step.count);
    if (step.permille != 1000)
        line += fmt::format(" x{}", static_cast<double>(step.permille) / 1000);
    if (step.from)
        line += " from " + step.from->iso();
    if (step.to)
        line += " to " + step.to->iso();
    if (step.figure)
        line += ": " + figureText(step);
    line += '\n';
    for (const Step& child : step.children)
        line += print(child, depth + 1);
    return line;
}

}  // namespace wm::explain
