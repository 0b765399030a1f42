// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/base/text.h"
#include "ui/fields/choices.h"
#include "ui/pages/weekend/step_fields.h"
#include "ui/words/act_words.h"
#include "ui/words/caution_words.h"
#include "ui/words/figures.h"

// What the fields of an access step offer to choose from.

namespace wm::ui {

namespace {

using upkeep::Deed;

// Two things of one name are told apart by their codes.
Choices apart(Choices choices) {
    std::map<QString, int> often;
    for (const auto& [value, words] : choices)
        ++often[words];
    for (auto& [value, words] : choices)
        if (often[words] > 1)
            words = QStringLiteral("%1 (%2)").arg(words, value);
    return choices;
}

void addMissing(Choices& choices, const QString& value, const QString& words) {
    const bool isThere = std::any_of(choices.begin(), choices.end(),
                                     [&](const auto& choice) { return choice.first == value; });
    if (!isThere && !value.isEmpty() && !words.isEmpty())
        choices.emplace_back(value, words);
}

struct Offer {
    std::shared_ptr<const book::Book> book;
    weekend::StepVersion base;

    [[nodiscard]] Choices otherSteps() const {
        Choices choices = byCode(book->steps(base.machine));
        std::erase_if(choices, [&](const auto& choice) { return choice.first == text(base.code); });
        return apart(std::move(choices));
    }

    [[nodiscard]] Choices steps(const Draft& draft) const {
        Choices choices = otherSteps();
        choices.emplace(choices.begin(), text(codeOf(base, draft)), draft.fields.at("name").trimmed());
        return apart(std::move(choices));
    }

    // Those of the draft as they stand in it, then those of the others.
    [[nodiscard]] Choices doings(const Draft& draft) const {
        Choices choices;
        if (const auto own = draft.lists.find("doings"); own != draft.lists.end())
            for (const DraftRow& row : own->second) {
                const QString what = row.at("what").trimmed();
                const QString code = row.at("code").trimmed();
                addMissing(choices, code.isEmpty() ? text(base::codeFromName(what.toStdString())) : code,
                           what);
            }
        const auto add = [&choices](const auto& version) {
            for (const upkeep::Doing& doing : version.doings)
                addMissing(choices, text(doing.code), text(doing.what));
        };
        for (const auto* step : book->steps(base.machine))
            if (step->code != base.code)
                add(*step);
        for (const auto* task : book->tasks(base.machine))
            add(*task);
        return apart(std::move(choices));
    }

    [[nodiscard]] Choices ofDeed(const QString& name, const Draft& draft) const {
        switch (base::fromName<Deed>(name.toStdString()).value_or(Deed::Off)) {
            case Deed::Crack:
            case Deed::Torque:
                return apart(byCode(book->joints(base.machine)));
            case Deed::Do:
                return doings(draft);
            case Deed::Job:
                return apart(byCode(book->tasks(base.machine)));
            case Deed::Off:
            case Deed::On:
                break;
        }
        return steps(draft);
    }

    [[nodiscard]] Choices positions() const {
        std::set<QString> seen;
        for (const auto* task : book->tasks(base.machine))
            seen.insert(text(task->position));
        for (const auto* step : book->steps(base.machine))
            for (const auto& freed : step->frees)
                seen.insert(text(freed.code));
        Choices choices;
        for (const QString& position : seen)
            addMissing(choices, position, position);
        return choices;
    }

    [[nodiscard]] Choices sources() const {
        std::set<QString> seen;
        for (const auto* step : book->steps(base.machine))
            seen.insert(text(step->source));
        Choices choices;
        for (const QString& source : seen)
            addMissing(choices, source, source);
        return choices;
    }

    Choices operator()(const Asked& asked) const {
        if (asked.list == "edges") {
            if (asked.field == "earlier" || asked.field == "later")
                return inWords<Deed>(deedWords);
            const auto deed = asked.row.find(asked.field == "earlier_code" ? "earlier" : "later");
            return deed == asked.row.end() ? Choices{} : ofDeed(deed->second, asked.draft);
        }
        if (asked.list == "needs" || asked.list == "loose_before")
            return otherSteps();
        if (asked.list == "joints")
            return apart(byCode(book->joints(base.machine)));
        if (asked.list == "frees")
            return positions();
        if (asked.field == "comes")
            return inWords<upkeep::Comes>(comesWords);
        if (asked.field == "hazard")
            return inWords<upkeep::Hazard>([](upkeep::Hazard hazard) { return cautionWords(hazard).hazard; });
        if (asked.field == "due")
            return byName<upkeep::When>();
        if (asked.field == "body_state")
            return byName<upkeep::BodyState>();
        if (asked.field == "source")
            return sources();
        if (asked.list != "follow_ups" || asked.field != "code")
            return {};
        Choices jobs = apart(byCode(book->tasks(base.machine)));
        jobs.emplace(jobs.begin(), QString(), kNoChoice);
        return jobs;
    }
};

}  // namespace

std::string codeOf(const weekend::StepVersion& base, const Draft& draft) {
    return base.code.empty() ? base::codeFromName(draft.fields.at("name").trimmed().toStdString())
                             : base.code;
}

ChoicesOf stepChoices(std::shared_ptr<const book::Book> book, weekend::StepVersion base) {
    return Offer{std::move(book), std::move(base)};
}

}  // namespace wm::ui
