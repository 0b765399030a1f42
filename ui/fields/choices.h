// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/names.h"
#include "ui/fields/field_spec.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"

namespace wm::ui {

inline const QString kNoChoice = QStringLiteral("–");

/// The names that the file uses, where they are the mechanic's words already.
template <class E>
Choices byName() {
    Choices choices;
    for (const auto name : base::Names<E>::names)
        choices.emplace_back(text(std::string(name)), nameWords(name));
    return choices;
}

template <class E, class Words>
Choices inWords(Words words) {
    Choices choices;
    for (std::size_t at = 0; at < base::Names<E>::names.size(); ++at)
        choices.emplace_back(text(std::string(base::Names<E>::names.at(at))), words(static_cast<E>(at)));
    return choices;
}

template <class V>
Choices byCode(const std::vector<const V*>& versions) {
    Choices choices;
    for (const auto* version : versions)
        choices.emplace_back(text(version->code), text(version->name));
    return choices;
}

}  // namespace wm::ui
