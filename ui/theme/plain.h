// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

class QLabel;
class QLineEdit;
class QWidget;

namespace wm::ui {

/// Words that are never read as markup, wrapped. `role` "note" for pencil, "section" for a heading, or
/// nullptr; `name` is the object's name, if it needs one.
QLabel* plainLabel(QWidget* parent, const char* role = nullptr, const char* name = nullptr);

/// A label that shows `words` from the beginning.
QLabel* plainWords(QWidget* parent, const QString& words, const char* role = nullptr);

/// Words as a tip shows them: never read as markup, wrapped. Whatever a person may have typed is passed
/// through this before it becomes a tip.
QString asTip(const QString& words);

/// Words as a button, a menu or a tab shows them: an "&" in them marks no letter.
QString asCaption(const QString& words);

/// Gives a label its words; without any it is hidden. Trouble stands in the colour of what is overdue.
void sayIn(QLabel* label, const QString& words, bool isTrouble = false);

/// A line to type in that says itself what belongs there, as wide as so many letters (0 = as wide as it
/// gets).
QLineEdit* captionedField(QWidget* parent, const QString& name, const QString& caption, int letters);

}  // namespace wm::ui
