// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "ui/fields/draft.h"

namespace wm::ui {

/// Search: a choice that is found by typing any part of its name; what names nothing stays as typed.
enum class InputKind : std::uint8_t { Words, Suggested, Figure, Lines, Choice, Search, Tick };

// Which fields of a definition are shown, and where. A field of its version that is not named here is kept
// as it is.

/// One field as the editor shows it. `name` is the field's name in the version, which the errors of the verb
/// use as well.
struct FieldSpec {
    std::string name{};
    QString label{};
    InputKind kind = InputKind::Words;
    int letters = 0;
    bool below = false;     ///< in a list: in a second row of its line
    std::string follows{};  ///< in a list: what can be chosen hangs on this field of the same line
    QString lead{};         ///< in a list that reads as sentences: the words before it
    QString begins{};       ///< in a list: what a new line begins with
};

/// A list within a definition: a line for each, with the same fields.
struct ListSpec {
    std::string name{};
    QString title{};
    QString one{};  ///< "limit"
    std::vector<FieldSpec> columns{};
    bool isDoubted = false;   ///< another line here is not confirmed until somebody says so again
    bool isSentence = false;  ///< a line reads as a sentence, without labels, and wraps at its lead
    QString addKey{};         ///< the key with which the page adds a line, as it is said
    QString opens{};          ///< what a line names can be gone to: "open this access step"
};

struct GroupSpec {
    QString title{};
    bool folded = false;  ///< rarely used: shut until it is opened
    std::vector<ListSpec> lists{};
    std::vector<FieldSpec> fields{};
};

/// All that an editor shows. Its parts are named under `prefix` ("task").
struct SheetSpec {
    QString prefix{};
    QString spoken{};  ///< for who can't see it
    std::vector<GroupSpec> groups{};
};

/// The value as a draft keeps it, and its words.
using Choices = std::vector<std::pair<QString, QString>>;

/// For which field choices are wanted: `list` is empty for one of the definition itself. `row` is what stands
/// in the same line, `draft` all that stands in the editor.
struct Asked {
    const std::string& list;
    const std::string& field;
    const DraftRow& row;
    const Draft& draft;
};
using ChoicesOf = std::function<Choices(const Asked& asked)>;

}  // namespace wm::ui
