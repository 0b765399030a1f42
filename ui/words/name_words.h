// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string_view>

#include "core/base/names.h"

namespace wm::ui {

/// The words for a name that the file and the exchange text use, where that name is the mechanic's word
/// already.
QString nameWords(std::string_view name);

template <class E>
QString nameWords(E value) {
    return nameWords(base::nameOf(value));
}

}  // namespace wm::ui
