// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "core/book/book.h"

namespace wm::ui {

enum class InputKind : std::uint8_t { Words, Suggested, Figure, Lines, Choice, Tick };

// Which fields of a task are shown, and where. A field of TaskVersion that is not named here is kept as it
// is.

/// One field of a task as the editor shows it. `name` is the field's name in TaskVersion, which the errors of
/// the verb use as well.
struct FieldSpec {
    std::string name{};
    QString label{};
    InputKind kind = InputKind::Words;
    int letters = 0;
    bool below = false;  ///< in a list: in a second row of its line
};

/// A list within a task: a line for each, with the same fields.
struct ListSpec {
    std::string name{};
    QString title{};
    QString one{};  ///< "limit"
    std::vector<FieldSpec> columns{};
};

struct GroupSpec {
    QString title{};
    bool folded = false;  ///< rarely used: shut until it is opened
    std::vector<ListSpec> lists{};
    std::vector<FieldSpec> fields{};
};

/// Every field of a task, in the order of the screen: first what is changed often, then what is folded.
std::vector<GroupSpec> taskGroups();

/// The value as a draft keeps it, and its words.
using Choices = std::vector<std::pair<QString, QString>>;
/// What can be chosen, or is suggested, in a field on a machine; `list` is empty for a field of the task
/// itself.
Choices choicesFor(const book::Book& book, MachineId machine, const std::string& list,
                   const std::string& field);

}  // namespace wm::ui
