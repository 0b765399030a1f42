// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>
#include <utility>

#include "ui/fields/act_choices.h"
#include "ui/fields/choices.h"
#include "ui/pages/weekend/step_fields.h"
#include "ui/words/caution_words.h"
#include "ui/words/figures.h"

// What the fields of an access step offer to choose from.

namespace wm::ui {

namespace {

struct Offer {
    std::shared_ptr<const book::Book> book;
    weekend::StepVersion base;

    [[nodiscard]] Choices otherSteps() const {
        Choices choices = byCode(book->steps(base.machine));
        std::erase_if(choices, [&](const auto& choice) { return choice.first == text(base.code); });
        return apart(std::move(choices));
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
        if (auto ofActs = ActChoices{book, base.machine, upkeep::Deed::Off, base.code}(asked))
            return std::move(*ofActs);
        if (asked.list == "needs" || asked.list == "loose_before")
            return otherSteps();
        if (asked.list == "joints")
            return apart(byCode(book->joints(base.machine)));
        if (asked.list == "frees")
            return positions();
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

ChoicesOf stepChoices(std::shared_ptr<const book::Book> book, weekend::StepVersion base) {
    return Offer{std::move(book), std::move(base)};
}

}  // namespace wm::ui
