// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <string>
#include <string_view>
#include <vector>

#include "core/definitions/renewal.h"

namespace wm::ui {

/// "order and joints"
QString groupWords(definitions::RenewalGroup group);
/// What a field of a definition is about: "what comes off first". Empty for one that no schedule renews.
QString renewedWords(std::string_view field);
/// "interval, what it brings"; each once.
QString renewedWords(const std::vector<std::string>& fields);

}  // namespace wm::ui
