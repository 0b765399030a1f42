// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

namespace wm::ui {

/// The fact that a form enters anew: it starts from the one that it corrects, so that what has no field in
/// the form stays as it was noted.
template <class Fact>
Fact anew(const std::optional<Fact>& corrected) {
    Fact fact = corrected.value_or(Fact{});
    fact.id = {};
    fact.entered = 0;
    return fact;
}

}  // namespace wm::ui
