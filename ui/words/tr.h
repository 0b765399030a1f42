// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QString>

namespace wm::ui {

/// The translated words of a free function. lupdate files them under their namespace, so that is what is
/// asked for. Where one text has two meanings, `meaning` tells them apart; `n` chooses the plural form and
/// replaces `%n`.
inline QString tr(const char* words, const char* meaning = nullptr, int n = -1) {
    return QCoreApplication::translate("wm::ui", words, meaning, n);
}

}  // namespace wm::ui
