// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "core/book/book.h"
#include "ui/fields/field_spec.h"

namespace wm::ui {

/// Two things of one name are told apart by their codes.
Choices apart(Choices choices);

/// Adds what is not there yet, if it has words.
void addMissing(Choices& choices, const QString& value, const QString& words);

/// What the lines of "edges" and "doings" offer while a definition of a machine is typed.
struct ActChoices {
    std::shared_ptr<const book::Book> book;
    MachineId machine{};
    upkeep::Deed own = upkeep::Deed::Off;  ///< what the definition is: Off an access step, Job a task
    std::string code{};                    ///< the one that it has in the file; empty for a new one

    /// Nothing where the field is another one.
    [[nodiscard]] std::optional<Choices> operator()(const Asked& asked) const;

  private:
    [[nodiscard]] Choices ofDeed(const QString& name, const Draft& draft) const;
    [[nodiscard]] Choices doings(const Draft& draft) const;
    [[nodiscard]] Choices withOwn(Choices others, const Draft& draft) const;
};

/// The code that the definition has, or gets from its name.
std::string codeOf(const std::string& code, const Draft& draft);

}  // namespace wm::ui
