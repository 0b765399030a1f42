// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

namespace wm::ui {

/// A text as a translator meets it.
struct Message {
    QString context{};
    QString source{};
    bool hasForms = false;  ///< its words depend on a count
    QStringList forms{};    ///< the translation: one, or one a form
};
std::vector<Message> messagesIn(const QString& tsFile);

/// Writes what lupdate finds in the sources; what it complains about comes back.
QStringList extractTexts(const QString& tsFile);

/// Writes the pseudo-language of all texts that lupdate finds into `folder`; where it is, or nothing.
QString makePseudoLanguage(const QString& folder);

}  // namespace wm::ui
