// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <utility>

#include "core/base/text.h"
#include "core/picture/shape.h"

// Tasks, access steps and joints: versions that hold from a day on.

namespace wm::picture {

using base::Fault;

namespace {

constexpr std::int64_t kMostPieces = 100'000;

std::int64_t mostOf(upkeep::Counter counter) {
    switch (upkeep::traitsOf(counter).kind) {
        case upkeep::CounterKind::Hours:
            return kMostHours;
        case upkeep::CounterKind::Metres:
            return kMostMetres;
        case upkeep::CounterKind::Pieces:
            return kMostPieces;
        case upkeep::CounterKind::Days:
            return kMostDays;
        case upkeep::CounterKind::Months:
            break;
    }
    return kMostDays / 30;
}

void checkLimits(Checks& check, const std::vector<upkeep::Limit>& limits) {
    for (std::size_t at = 0; at < limits.size(); ++at) {
        const upkeep::Limit& limit = limits[at];
        const std::int64_t most = mostOf(limit.counter);
        check.fromOne(placeIn("limits", at, "every"), limit.every, most);
        if (limit.first)
            check.fromOne(placeIn("limits", at, "first"), *limit.first, most);
        check.fromZero(placeIn("limits", at, "allowance"), limit.allowance, most);
        check.that(!limit.hard || limit.allowance == 0, Fault::OutOfOrder, placeIn("limits", at, "allowance"),
                   std::to_string(limit.allowance), "0");
        const bool again = std::any_of(limits.begin(), limits.begin() + static_cast<std::ptrdiff_t>(at),
                                       [&](const auto& other) { return other.counter == limit.counter; });
        check.that(!again, Fault::Duplicate, placeIn("limits", at, "counter"),
                   std::string(base::nameOf(limit.counter)));
    }
}

// Ten times as hard as it is, at the most; of two weights for the same hours only the first would count.
void checkWeights(Checks& check, const std::vector<usage::HourWeight>& weights) {
    for (std::size_t at = 0; at < weights.size(); ++at) {
        const usage::HourWeight& weight = weights[at];
        check.fromOne(placeIn("weights", at, "permille"), weight.permille, 10'000);
        const bool again = std::any_of(
            weights.begin(), weights.begin() + static_cast<std::ptrdiff_t>(at),
            [&](const auto& other) { return other.ground == weight.ground && other.pace == weight.pace; });
        check.that(!again, Fault::Duplicate, placeIn("weights", at, "ground"));
    }
}

void checkCodes(Checks& check, std::string_view field, std::vector<base::Code>& codes) {
    for (std::size_t at = 0; at < codes.size(); ++at) {
        check.code(placeIn(field, at, "code"), codes[at].code);
        const auto end = codes.begin() + static_cast<std::ptrdiff_t>(at);
        check.that(std::find(codes.begin(), end, codes[at]) == end, Fault::Duplicate,
                   placeIn(field, at, "code"), codes[at].code);
    }
}

void checkDoings(Checks& check, std::vector<upkeep::Doing>& doings) {
    for (std::size_t at = 0; at < doings.size(); ++at) {
        check.code(placeIn("doings", at, "code"), doings[at].code);
        check.name(placeIn("doings", at, "what"), doings[at].what);
        check.minutes(placeIn("doings", at, "minutes"), doings[at].minutes);
        const bool again = std::any_of(doings.begin(), doings.begin() + static_cast<std::ptrdiff_t>(at),
                                       [&](const auto& other) { return other.code == doings[at].code; });
        check.that(!again, Fault::Duplicate, placeIn("doings", at, "code"), doings[at].code);
    }
}

void checkEdges(Checks& check, std::vector<upkeep::Edge>& edges) {
    for (std::size_t at = 0; at < edges.size(); ++at) {
        upkeep::Edge& edge = edges[at];
        check.code(placeIn("edges", at, "earlier_code"), edge.earlier.code);
        check.code(placeIn("edges", at, "later_code"), edge.later.code);
        check.that(edge.earlier != edge.later, Fault::Cycle, placeIn("edges", at, "later_code"),
                   edge.later.code);
    }
}

void checkFollowUps(Checks& check, std::vector<upkeep::FollowUpRule>& rules) {
    for (std::size_t at = 0; at < rules.size(); ++at) {
        upkeep::FollowUpRule& rule = rules[at];
        check.words(placeIn("follow_ups", at, "what"), rule.what);
        if (!rule.code.empty())
            check.code(placeIn("follow_ups", at, "code"), rule.code);
        if (rule.when == upkeep::When::AfterHours || rule.when == upkeep::When::AfterDays)
            check.fromOne(placeIn("follow_ups", at, "amount"), rule.amount,
                          rule.when == upkeep::When::AfterHours ? kMostHours : kMostDays);
    }
}

// A figure counts as checked against the manual only if it says which one.
void checkSource(Checks& check, std::string& source, bool confirmed, const base::Place& field = "source") {
    check.word(field, source);
    check.that(!confirmed || !source.empty(), Fault::Empty, field);
}

void checkKit(Checks& check, std::vector<upkeep::KitLine>& kit) {
    for (std::size_t at = 0; at < kit.size(); ++at) {
        check.name(placeIn("kit", at, "what"), kit[at].what);
        check.fromOne(placeIn("kit", at, "amount"), kit[at].amount, kMostAmount);
        checkSource(check, kit[at].source, kit[at].confirmed, placeIn("kit", at, "source"));
        check.word(placeIn("kit", at, "page"), kit[at].page);
    }
}

void checkMeasures(Checks& check, std::vector<upkeep::MeasurePoint>& measures) {
    for (std::size_t at = 0; at < measures.size(); ++at) {
        upkeep::MeasurePoint& point = measures[at];
        check.name(placeIn("measures", at, "name"), point.name);
        check.word(placeIn("measures", at, "unit"), point.unit);
        check.decimal(placeIn("measures", at, "least"), point.least);
        check.decimal(placeIn("measures", at, "most"), point.most);
        if (!check.failed() && point.least && point.most)
            check.that(*point.least <= *point.most, Fault::OutOfOrder, placeIn("measures", at, "most"),
                       point.most->text(), point.least->text());
        check.word(placeIn("measures", at, "source"), point.source);
        check.word(placeIn("measures", at, "page"), point.page);
        if (!point.job.empty())
            check.code(placeIn("measures", at, "job"), point.job);
        const auto end = measures.begin() + static_cast<std::ptrdiff_t>(at);
        check.that(std::none_of(measures.begin(), end,
                                [&](const auto& other) { return sameName(other.name, point.name); }),
                   Fault::Duplicate, placeIn("measures", at, "name"), point.name);
    }
}

// Every n-th completion of another task instead of limits of its own; and extra work at every n-th of its
// own.
void checkNth(Checks& check, const upkeep::TaskVersion& row) {
    if (row.nthOf.empty()) {
        check.that(row.nth == 0, Fault::Empty, "nth_of");
    } else {
        check.fromOne("nth", row.nth, kMostOfADay);
        check.that(row.limits.empty(), Fault::Inconsistent, "limits", row.nthOf);
        check.that(row.nthOf != row.code, Fault::Cycle, "nth_of", row.nthOf);
    }
    check.fromZero("every_nth", row.everyNth, kMostOfADay);
    check.that(row.everyNth == 0 || !row.extra.empty(), Fault::Empty, "extra");
    check.that(row.everyNth > 0 || row.extra.empty(), Fault::NotPositive, "every_nth", "0");
}

void checkTriggers(Checks& check, upkeep::TaskVersion& row) {
    for (std::size_t at = 0; at < row.triggers.size(); ++at) {
        upkeep::Trigger& trigger = row.triggers[at];
        const base::Place field = placeIn("triggers", at, "code");
        if (trigger.happening == upkeep::Happening::Job)
            check.code(field, trigger.code);
        else
            check.that(trigger.code.empty(), Fault::Inconsistent, field, trigger.code);
        check.that(trigger.code.empty() || trigger.code != row.code, Fault::Cycle, field, trigger.code);
    }
}

// "engine/piston": names between slashes, none of them empty.
void checkPath(Checks& check, const base::Place& field, std::string& path) {
    check.word(field, path);
    if (path.empty())
        return;
    const auto steps = base::split(path, '/');
    check.that(std::none_of(steps.begin(), steps.end(),
                            [](const auto& s) { return base::trimmed(s) != s || s.empty(); }),
               Fault::Malformed, field, path);
}

// A version for a model names the first and the last of its model years.
void checkShare(Checks& check, const fastening::JointVersion& row) {
    const std::optional<std::int64_t>& first = row.sharedFrom;
    const std::optional<std::int64_t>& last = row.sharedTo;
    check.that(first.has_value() || !last, Fault::Empty, "shared_from");
    check.that(last.has_value() || !first, Fault::Empty, "shared_to");
    if (!first || !last)
        return;
    for (const auto& [field, year] : {std::pair("shared_from", *first), std::pair("shared_to", *last)}) {
        check.that(year >= 1800, Fault::OutOfOrder, field, std::to_string(year), "1800");
        check.that(year <= 2199, Fault::TooLarge, field, std::to_string(year), "2199");
    }
    check.that(*first <= *last, Fault::OutOfOrder, "shared_to", std::to_string(*last),
               std::to_string(*first));
}

}  // namespace

void checkShape(Checks& check, upkeep::TaskVersion& row) {
    check.date("valid_from", row.validFrom);
    check.code("code", row.code);
    check.name("name", row.name);
    check.shortWord("short_name", row.shortName, upkeep::kLongestShortName);
    checkPath(check, "position", row.position);
    checkLimits(check, row.limits);
    checkWeights(check, row.weights);
    check.note("extra", row.extra);
    check.word("nth_of", row.nthOf);
    checkNth(check, row);
    checkTriggers(check, row);
    checkKit(check, row.kit);
    checkMeasures(check, row.measures);
    checkCodes(check, "steps", row.steps);
    checkCodes(check, "joints", row.joints);
    checkFollowUps(check, row.followUps);
    check.minutes("minutes", row.minutes);
    check.note("tools", row.tools);
    check.note("how_to", row.howTo);
    checkSource(check, row.source, row.confirmed);
    check.word("page", row.page);
    check.that(!row.sendsOut || !row.position.empty(), Fault::Empty, "position");
    checkDoings(check, row.doings);
    checkEdges(check, row.edges);
}

void checkShape(Checks& check, weekend::StepVersion& row) {
    check.date("valid_from", row.validFrom);
    check.code("code", row.code);
    check.name("name", row.name);
    check.minutes("off_minutes", row.off);
    check.minutes("on_minutes", row.on);
    for (std::size_t at = 0; at < row.needs.size(); ++at) {
        check.code(placeIn("needs", at, "code"), row.needs[at].code);
        check.that(row.needs[at].code != row.code, Fault::Cycle, placeIn("needs", at, "code"), row.code);
    }
    check.note("break_loose", row.breakLoose);
    checkCodes(check, "loose_before", row.looseBefore);
    check.note("refit", row.refit);
    checkCodes(check, "joints", row.joints);
    checkFollowUps(check, row.followUps);
    checkSource(check, row.source, row.confirmed);
    for (std::size_t at = 0; at < row.frees.size(); ++at)
        check.name(placeIn("frees", at, "code"), row.frees[at].code);
    checkDoings(check, row.doings);
    checkEdges(check, row.edges);
}

void checkShape(Checks& check, fastening::JointVersion& row) {
    check.date("valid_from", row.validFrom);
    check.code("code", row.code);
    check.name("name", row.name);
    check.word("thread", row.thread);
    check.fromOne("count", row.count, kMostOfADay);
    check.decimal("torque", row.torque);
    check.decimal("torque_high", row.torqueHigh);
    if (!check.failed() && row.torque) {
        check.that(*row.torque > units::Decimal{}, Fault::NotPositive, "torque", row.torque->text());
        check.that(*row.torque <= kMostTorque, Fault::TooLarge, "torque", row.torque->text(),
                   kMostTorque.text());
    }
    if (!check.failed() && row.torqueHigh) {
        check.that(row.torque.has_value(), Fault::Empty, "torque");
        check.that(*row.torqueHigh <= kMostTorque, Fault::TooLarge, "torque_high", row.torqueHigh->text(),
                   kMostTorque.text());
        check.that(!row.torque || *row.torque <= *row.torqueHigh, Fault::OutOfOrder, "torque_high",
                   row.torqueHigh->text(), row.torque ? row.torque->text() : std::string{});
    }
    check.word("stages", row.stages);
    check.word("condition", row.condition);
    check.word("locking", row.locking);
    check.word("renew", row.renew);
    if (row.sequence == fastening::Sequence::EveryNth)
        check.fromOne("sequence_step", row.sequenceStep, kMostOfADay);
    else
        check.that(row.sequenceStep == 0, Fault::Inconsistent, "sequence_step",
                   std::to_string(row.sequenceStep), "0");
    check.note("sequence_note", row.sequenceNote);
    checkSource(check, row.source, row.confirmed || row.torque.has_value());
    check.word("page", row.page);
    check.word("typed_by", row.typedBy);
    check.word("checked_by", row.checkedBy);
    checkShare(check, row);
    if (row.position)
        checkPath(check, "position", *row.position);
    check.word("held", row.held);
}

}  // namespace wm::picture
