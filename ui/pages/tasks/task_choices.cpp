// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>
#include <utility>

#include "ui/fields/act_choices.h"
#include "ui/fields/choices.h"
#include "ui/pages/tasks/task_fields.h"
#include "ui/words/caution_words.h"
#include "ui/words/tr.h"
#include "ui/words/weight_words.h"

// What the fields of a task offer to choose from.

namespace wm::ui {

namespace {

// Nothing chosen = any.
template <class E, class Words>
Choices anyOf(const QString& any, Words words) {
    auto choices = inWords<E>(words);
    choices.insert(choices.begin(), {QString(), any});
    return choices;
}

Choices jobs(const book::Book& book, MachineId machine) {
    Choices choices{{QString(), kNoChoice}};
    for (const auto* task : book.tasks(machine))
        choices.emplace_back(text(task->code), text(task->name));
    return choices;
}

Choices shelfLines(const book::Book& book) {
    Choices choices{{QString(), kNoChoice}};
    for (const auto& line : book.ledger().all<stock::StockLine>())
        if (line.active)
            choices.emplace_back(QString::number(line.id.value()), text(line.name));
    return choices;
}

Choices used(const book::Book& book, std::string upkeep::TaskVersion::*field) {
    std::set<QString> seen;
    for (const auto* machine : book.machines())
        for (const auto* task : book.tasks(machine->id))
            seen.insert(text(task->*field));
    Choices choices;
    for (const QString& words : seen)
        if (!words.isEmpty())
            choices.emplace_back(words, words);
    return choices;
}

Choices ofTheTask(const book::Book& book, MachineId machine, const std::string& field) {
    if (field == "position")
        return used(book, &upkeep::TaskVersion::position);
    if (field == "source")
        return used(book, &upkeep::TaskVersion::source);
    if (field == "nth_of")
        return jobs(book, machine);
    if (field == "consequence")
        return inWords<upkeep::Consequence>(consequenceWords);
    if (field == "combine")
        return {{QStringLiteral("first"), tr("the first counts")},
                {QStringLiteral("last"), tr("the last counts")}};
    if (field == "count_from")
        return {{QStringLiteral("completion"), tr("the last time done")},
                {QStringLiteral("fixed marks"), tr("fixed marks (n, 2n, 3n …)")}};
    if (field == "body_state")
        return byName<upkeep::BodyState>();
    return {};
}

QString hazardWords(upkeep::Hazard hazard) {
    return cautionWords(hazard).hazard;
}

Choices choicesFor(const book::Book& book, MachineId machine, const std::string& list,
                   const std::string& field) {
    if (list.empty())
        return ofTheTask(book, machine, field);
    if (field == "counter")
        return inWords<upkeep::Counter>(counterWords);
    if (field == "happening")
        return byName<upkeep::Happening>();
    if (field == "line")
        return shelfLines(book);
    if (list == "kit" && field == "unit")
        return byName<upkeep::Unit>();
    if (field == "ground")
        return anyOf<usage::Ground>(tr("any ground"), groundWords);
    if (field == "pace")
        return anyOf<usage::Pace>(tr("any pace"), paceWords);
    if (field == "hazard")
        return inWords<upkeep::Hazard>(hazardWords);
    if (field == "due")
        return byName<upkeep::When>();
    if (list == "steps")
        return byCode(book.steps(machine));
    if (list == "joints")
        return byCode(book.joints(machine));
    return field == "code" || field == "job" ? jobs(book, machine) : Choices{};
}

}  // namespace

ChoicesOf taskChoices(const std::shared_ptr<const book::Book>& book, const upkeep::TaskVersion& base) {
    return [ofActs = ActChoices{book, base.machine, upkeep::Deed::Job, base.code}, book,
            machine = base.machine](const Asked& asked) {
        auto acts = ofActs(asked);
        return acts ? std::move(*acts) : choicesFor(*book, machine, asked.list, asked.field);
    };
}

}  // namespace wm::ui
