// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QString>
#include <QVariant>
#include <optional>
#include <type_traits>
#include <vector>

#include "core/base/id.h"
#include "core/base/names.h"

namespace wm::ui {

/// A line of a box and the value that it stands for. A box is asked for the value, never for the number of a
/// line, so that lines can be added, left out or put in another order.
template <class T>
struct Choice {
    T value;
    QString words;
};

template <class T>
inline constexpr bool kIsId = false;
template <class Tag>
inline constexpr bool kIsId<base::Id<Tag>> = true;

template <class T>
QVariant asData(const T& value) {
    if constexpr (std::is_enum_v<T>)
        return static_cast<int>(value);
    else if constexpr (kIsId<T>)
        return QVariant::fromValue<qlonglong>(value.value());
    else
        return QVariant::fromValue(value);
}

template <class T>
void addChoices(QComboBox& box, const std::vector<Choice<T>>& choices) {
    for (const Choice<T>& choice : choices)
        box.addItem(choice.words, asData(choice.value));
}

/// A line for each value of an enumeration, in its order.
template <class E, class Words>
std::vector<Choice<E>> eachOf(Words&& words) {
    std::vector<Choice<E>> choices;
    for (std::size_t at = 0; at < base::enumerators<E>(); ++at)
        choices.push_back({static_cast<E>(at), words(static_cast<E>(at))});
    return choices;
}

/// Nothing where no line is chosen, or one that stands for no value ("everything", "a new item").
template <class T>
std::optional<T> chosenIfAny(const QComboBox& box) {
    const QVariant data = box.currentData();
    if (!data.isValid())
        return std::nullopt;
    if constexpr (std::is_enum_v<T>)
        return static_cast<T>(data.toInt());
    else if constexpr (kIsId<T>)
        return T{data.toLongLong()};
    else
        return data.value<T>();
}

/// Of a box in which each line stands for a value and one is always chosen.
template <class T>
T chosenOf(const QComboBox& box) {
    return chosenIfAny<T>(box).value_or(T{});
}

template <class T>
void chooseIn(QComboBox& box, const T& value) {
    box.setCurrentIndex(box.findData(asData(value)));
}

}  // namespace wm::ui
