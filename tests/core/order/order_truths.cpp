// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/order/order_truths.h"

#include <algorithm>
#include <stdexcept>

namespace wm::order {

namespace {

Patterns patternsOf(const Json& object, const char* key) {
    Patterns patterns;
    if (object.contains(key))
        for (const Json& text : object.at(key))
            patterns.emplace_back(text.get<std::string>());
    return patterns;
}

std::vector<std::string> textsOf(const Json& object, const char* key) {
    return object.contains(key) ? object.at(key).get<std::vector<std::string>>() : std::vector<std::string>{};
}

When whenOf(const Json& object) {
    const std::string text = object.value("when", "anywhere");
    if (text == "before")
        return When::Before;
    if (text == "after")
        return When::After;
    if (text == "anywhere")
        return When::Anywhere;
    throw std::invalid_argument("when: " + text);
}

void refuseUnknownKeys(const Json& object) {
    static const std::set<std::string> kKnown{"truth",      "says",      "why",          "of",     "at",
                                              "only_while", "not_while", "unless_while", "except", "needs",
                                              "needs_none", "when",      "since",        "until",  "given",
                                              "unless",     "in_order",  "from",         "all"};
    for (const auto& [key, value] : object.items())
        if (!kKnown.contains(key))
            throw std::invalid_argument(object.at("truth").get<std::string>() + " has a key " + key);
}

Truth truthOf(const Json& object) {
    refuseUnknownKeys(object);
    Truth truth{.name = object.at("truth").get<std::string>(),
                .says = object.at("says").get<std::string>(),
                .kinds = textsOf(object, "of"),
                .at = patternsOf(object, "at"),
                .onlyWhile = textsOf(object, "only_while"),
                .notWhile = textsOf(object, "not_while"),
                .unlessWhile = textsOf(object, "unless_while"),
                .except = textsOf(object, "except"),
                .needs = patternsOf(object, "needs"),
                .needsNone = patternsOf(object, "needs_none"),
                .when = whenOf(object),
                .since = patternsOf(object, "since"),
                .until = patternsOf(object, "until"),
                .given = patternsOf(object, "given"),
                .unless = patternsOf(object, "unless"),
                .from = patternsOf(object, "from"),
                .all = object.value("all", false)};
    if (object.contains("in_order"))
        for (const Json& texts : object.at("in_order")) {
            Patterns patterns;
            for (const Json& text : texts)
                patterns.emplace_back(text.get<std::string>());
            truth.inOrder.push_back(std::move(patterns));
        }
    if (truth.at.empty() == truth.from.empty())
        throw std::invalid_argument(truth.name + " is about nothing, or about two things");
    return truth;
}

bool matchesAny(const Patterns& patterns, const std::string& act) {
    return std::any_of(patterns.begin(), patterns.end(),
                       [&](const Pattern& pattern) { return pattern.matches(act); });
}

bool anySayable(const Patterns& patterns, const Sayable& sayable) {
    return !sayable || std::any_of(sayable->begin(), sayable->end(),
                                   [&](const std::string& act) { return matchesAny(patterns, act); });
}

Patterns withStar(const Patterns& patterns, const std::string& star) {
    Patterns bound;
    for (const Pattern& pattern : patterns)
        bound.push_back(pattern.with(star));
    return bound;
}

std::string wordsOf(const Patterns& patterns) {
    std::string words;
    for (const Pattern& pattern : patterns)
        words += (words.empty() ? "" : " or ") + pattern.text();
    return words;
}

bool isWorse(const Finding& a, const Finding& b) {
    return a.verdict > b.verdict;
}

/// One truth at the acts of one plan.
class Judge {
  public:
    Judge(const Truths& truths, const Truth& truth, const Acts& acts, const Sayable& sayable)
        : truths_(truths), truth_(truth), acts_(acts), sayable_(sayable) {}

    Finding run() {
        Finding worst;
        const auto take = [&](const Finding& finding) {
            if (isWorse(finding, worst))
                worst = finding;
        };
        for (std::size_t at = 0; at < acts_.size(); ++at)
            if (!truth_.from.empty()) {
                if (matchesAny(truth_.from, acts_[at]))
                    take(episode(at));
            } else {
                for (const Pattern& pattern : truth_.at)
                    if (const auto star = pattern.starIn(acts_[at]))
                        take(atAct(at, *star));
            }
        return worst;
    }

  private:
    using Found = std::optional<std::size_t>;

    [[nodiscard]] Finding missing(const Patterns& needed, std::size_t at) const {
        return {anySayable(needed, sayable_) ? Verdict::Broken : Verdict::CannotBeSaid,
                "never: " + wordsOf(needed), acts_[at]};
    }

    [[nodiscard]] Found lastOf(const Patterns& patterns, std::size_t from, std::size_t end) const {
        for (std::size_t at = end; at > from; --at)
            if (matchesAny(patterns, acts_[at - 1]))
                return at - 1;
        return {};
    }

    [[nodiscard]] Found firstOf(const Patterns& patterns, std::size_t from, std::size_t end) const {
        for (std::size_t at = from; at < end; ++at)
            if (matchesAny(patterns, acts_[at]))
                return at;
        return {};
    }

    // Where the state began that holds before the act `at`.
    [[nodiscard]] Found inForce(const std::string& state, std::size_t at) const {
        if (state.starts_with("* "))
            return anyInForce(state, at);
        const Truths::State is = truths_.state(state);
        for (std::size_t before = at; before > 0; --before) {
            if (matchesAny(is.ends, acts_[before - 1]))
                return {};
            if (matchesAny(is.begins, acts_[before - 1]))
                return before - 1;
        }
        return {};
    }

    [[nodiscard]] Found anyInForce(const std::string& starred, std::size_t at) const {
        const Truths::State is = truths_.state(starred);
        std::map<std::string, std::size_t> begun;
        for (std::size_t before = 0; before < at; ++before) {
            for (const Pattern& end : is.ends)
                if (const auto thing = end.starIn(acts_[before]))
                    begun.erase(*thing);
            for (const Pattern& begin : is.begins)
                if (const auto thing = begin.starIn(acts_[before]))
                    if (std::find(truth_.except.begin(), truth_.except.end(), *thing) == truth_.except.end())
                        begun.emplace(*thing, before);
        }
        return begun.empty() ? Found{} : Found{begun.begin()->second};
    }

    [[nodiscard]] static std::string bound(const std::string& state, const std::string& star) {
        return star.empty() ? state : Pattern(state).with(star).text();
    }

    [[nodiscard]] bool isSpared(const std::string& star) const {
        if (truth_.unless.empty() || !firstOf(truth_.unless, 0, acts_.size()))
            return false;
        if (truth_.at.front().text().find('*') == std::string::npos)
            return true;
        const auto& places = truths_.heldBy(star);
        return std::any_of(places.begin(), places.end(), [&](const std::string& place) {
            return inForce(place + " off", acts_.size()).has_value();
        });
    }

    Finding atAct(std::size_t at, const std::string& star) const {
        if (!truth_.given.empty() && !firstOf(truth_.given, 0, at))
            return {};
        if (isSpared(star))
            return {};
        Finding worst{Verdict::Held, {}, {}};
        for (const Finding& finding : {whileAt(at, star), neededAt(at, star), noneAt(at, star)})
            if (isWorse(finding, worst))
                worst = finding;
        return worst;
    }

    [[nodiscard]] Finding whileAt(std::size_t at, const std::string& star) const {
        for (const std::string& name : truth_.onlyWhile) {
            const std::string state = bound(name, star);
            if (inForce(state, at))
                continue;
            const Truths::State is = truths_.state(state);
            const Found ended = lastOf(is.ends, 0, at);
            if (!anySayable(is.begins, sayable_))
                return {Verdict::CannotBeSaid, "never: " + wordsOf(is.begins), acts_[at]};
            return {Verdict::Broken, ended ? acts_[*ended] : "not yet: " + wordsOf(is.begins), acts_[at]};
        }
        return notWhileAt(at, star);
    }

    [[nodiscard]] Finding notWhileAt(std::size_t at, const std::string& star) const {
        for (const std::string& name : truth_.notWhile) {
            const std::string state = bound(name, star);
            const Found begun = inForce(state, at);
            if (!begun)
                continue;
            Verdict verdict = Verdict::Broken;
            for (const std::string& unless : truth_.unlessWhile) {
                if (inForce(unless, at))
                    verdict = Verdict::Held;
                else if (!anySayable(truths_.state(unless).begins, sayable_))
                    verdict = Verdict::CannotBeSaid;
            }
            if (verdict != Verdict::Held)
                return {verdict, acts_[*begun], acts_[at]};
        }
        return canBegin(star) ? Finding{}
                              : Finding{Verdict::CannotBeSaid, truth_.notWhile.front(), acts_[at]};
    }

    // Whether there are words for any of the states that must not be: else nothing is held by silence.
    [[nodiscard]] bool canBegin(const std::string& star) const {
        if (truth_.notWhile.empty() || !sayable_)
            return true;
        if (!canBegin_)
            canBegin_ = std::any_of(truth_.notWhile.begin(), truth_.notWhile.end(), [&](const auto& name) {
                return anySayable(truths_.state(bound(name, star)).begins, sayable_);
            });
        return *canBegin_;
    }

    // The stretch in which a needed act may stand.
    [[nodiscard]] std::pair<std::size_t, std::size_t> stretch(std::size_t at) const {
        if (truth_.when == When::Before) {
            const Found since = lastOf(truth_.since, 0, at);
            return {since ? *since : 0, at};
        }
        if (truth_.when == When::After) {
            const Found until = firstOf(truth_.until, at + 1, acts_.size());
            return {at + 1, until ? *until : acts_.size()};
        }
        return {0, acts_.size()};
    }

    [[nodiscard]] Finding neededAt(std::size_t at, const std::string& star) const {
        if (truth_.needs.empty())
            return {};
        const Patterns needed = withStar(truth_.needs, star);
        const auto [from, end] = stretch(at);
        if (firstOf(needed, from, end))
            return {};
        Finding finding = missing(needed, at);
        if (const Found elsewhere = firstOf(needed, 0, acts_.size()))
            finding.first = "not there: " + acts_[*elsewhere];
        return finding;
    }

    [[nodiscard]] Finding noneAt(std::size_t at, const std::string& star) const {
        if (truth_.needsNone.empty())
            return {};
        const auto [from, end] = stretch(at);
        const Found there = firstOf(withStar(truth_.needsNone, star), from, end);
        return there ? Finding{Verdict::Broken, acts_[*there], acts_[at]} : Finding{};
    }

    // Backwards from the last act of the row: each one before the one that follows it.
    Finding episode(std::size_t from) const {
        const Found next = firstOf(truth_.from, from + 1, acts_.size());
        const std::size_t end = next ? *next : acts_.size();
        std::size_t before = end;
        std::optional<Finding> absent;
        std::size_t count = 0;
        for (auto row = truth_.inOrder.rbegin(); row != truth_.inOrder.rend(); ++row) {
            const Found found = lastOf(*row, from, before);
            if (found) {
                before = *found;
                ++count;
                continue;
            }
            if (const Found late = firstOf(*row, from, end))
                return {Verdict::Broken, acts_[before], acts_[*late]};
            if (truth_.all && (!absent || isWorse(missing(*row, from), *absent)))
                absent = missing(*row, from);
        }
        if (absent)
            return *absent;
        return {count == truth_.inOrder.size() ? Verdict::Held : Verdict::NotConcerned, {}, {}};
    }

    const Truths& truths_;
    const Truth& truth_;
    const Acts& acts_;
    const Sayable& sayable_;
    mutable std::optional<bool> canBegin_{};
};

}  // namespace

Pattern::Pattern(std::string text) : text_(std::move(text)), star_(text_.find('*')) {}

std::optional<std::string> Pattern::starIn(const std::string& act) const {
    if (star_ == std::string::npos)
        return act == text_ ? std::optional<std::string>{std::in_place} : std::nullopt;
    const std::size_t tail = text_.size() - star_ - 1;
    if (act.size() < star_ + tail || act.compare(0, star_, text_, 0, star_) != 0 ||
        act.compare(act.size() - tail, tail, text_, star_ + 1, tail) != 0)
        return std::nullopt;
    return act.substr(star_, act.size() - star_ - tail);
}

Pattern Pattern::with(const std::string& star) const {
    std::string text = text_;
    if (star_ != std::string::npos && !star.empty())
        text.replace(star_, 1, star);
    return Pattern(std::move(text));
}

Truths::Truths(const Json& file) {
    for (const auto& [name, state] : file.at("states").items())
        states_[name] = {patternsOf(state, "begins"), patternsOf(state, "ends")};
    for (const auto& [joint, places] : file.at("holds").items())
        holds_[joint] = places.get<std::vector<std::string>>();
    for (const Json& truth : file.at("truths"))
        truths_.push_back(truthOf(truth));
}

const Truth& Truths::named(const std::string& name) const {
    const auto found =
        std::find_if(truths_.begin(), truths_.end(), [&](const Truth& truth) { return truth.name == name; });
    if (found == truths_.end())
        throw std::invalid_argument("no truth " + name);
    return *found;
}

Truths::State Truths::state(const std::string& name) const {
    if (const auto known = states_.find(name); known != states_.end())
        return known->second;
    const std::size_t space = name.rfind(' ');
    const std::string thing = space == std::string::npos ? "" : name.substr(0, space);
    const auto made = [&](const char* begin, const char* end) {
        return State{{Pattern(begin + thing)}, {Pattern(end + thing)}};
    };
    if (name.ends_with(" off"))
        return made("off ", "on ");
    if (name.ends_with(" loose"))
        return made("crack ", "torque ");
    if (name.ends_with(" held"))
        return made("hold ", "release ");
    throw std::invalid_argument("no state " + name);
}

const std::vector<std::string>& Truths::heldBy(const std::string& joint) const {
    static const std::vector<std::string> kNone;
    const auto found = holds_.find(joint);
    return found == holds_.end() ? kNone : found->second;
}

Finding Truths::judge(const Truth& truth, const Acts& acts, const Sayable& sayable) const {
    return Judge(*this, truth, acts, sayable).run();
}

bool Truths::canConcern(const Truth& truth, const Sayable& sayable) {
    return anySayable(truth.from.empty() ? truth.at : truth.from, sayable);
}

}  // namespace wm::order
