// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/fields/act_choices.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/base/text.h"
#include "ui/fields/choices.h"
#include "ui/words/act_words.h"
#include "ui/words/figures.h"

namespace wm::ui {

using upkeep::Deed;

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

std::string codeOf(const std::string& code, const Draft& draft) {
    return code.empty() ? base::codeFromName(draft.fields.at("name").trimmed().toStdString()) : code;
}

// As it is typed, first.
Choices ActChoices::withOwn(Choices others, const Draft& draft) const {
    std::erase_if(others, [&](const auto& choice) { return choice.first == text(code); });
    others.emplace(others.begin(), text(codeOf(code, draft)), draft.fields.at("name").trimmed());
    return apart(std::move(others));
}

// Those of the draft as they stand in it, then those of the others.
Choices ActChoices::doings(const Draft& draft) const {
    Choices choices;
    if (const auto typed = draft.lists.find("doings"); typed != draft.lists.end())
        for (const DraftRow& row : typed->second) {
            const QString what = row.at("what").trimmed();
            const QString named = row.at("code").trimmed();
            addMissing(choices, named.isEmpty() ? text(base::codeFromName(what.toStdString())) : named, what);
        }
    const auto add = [&](const auto& version, Deed kind) {
        if (kind == own && version.code == code)
            return;
        for (const upkeep::Doing& doing : version.doings)
            addMissing(choices, text(doing.code), text(doing.what));
    };
    for (const auto* step : book->steps(machine))
        add(*step, Deed::Off);
    for (const auto* task : book->tasks(machine))
        add(*task, Deed::Job);
    return apart(std::move(choices));
}

Choices ActChoices::ofDeed(const QString& name, const Draft& draft) const {
    switch (base::fromName<Deed>(name.toStdString()).value_or(Deed::Off)) {
        case Deed::Crack:
        case Deed::Torque:
            return apart(byCode(book->joints(machine)));
        case Deed::Do:
            return doings(draft);
        case Deed::Job:
            return own == Deed::Job ? withOwn(byCode(book->tasks(machine)), draft)
                                    : apart(byCode(book->tasks(machine)));
        case Deed::Off:
        case Deed::On:
            break;
    }
    return own == Deed::Off ? withOwn(byCode(book->steps(machine)), draft)
                            : apart(byCode(book->steps(machine)));
}

std::optional<Choices> ActChoices::operator()(const Asked& asked) const {
    if (asked.list == "edges") {
        if (asked.field == "earlier" || asked.field == "later")
            return inWords<Deed>(deedWords);
        const auto deed = asked.row.find(asked.field == "earlier_code" ? "earlier" : "later");
        return deed == asked.row.end() ? Choices{} : ofDeed(deed->second, asked.draft);
    }
    if (asked.list == "doings" && asked.field == "comes")
        return inWords<upkeep::Comes>(comesWords);
    return std::nullopt;
}

}  // namespace wm::ui
