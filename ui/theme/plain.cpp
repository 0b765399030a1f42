// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/plain.h"

#include <QLabel>
#include <QLineEdit>
#include <QTextDocument>

#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

QLabel* plainLabel(QWidget* parent, const char* role, const char* name) {
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    if (role != nullptr)
        label->setProperty("role", QLatin1String(role));
    if (name != nullptr)
        label->setObjectName(QLatin1String(name));
    return label;
}

QLabel* plainWords(QWidget* parent, const QString& words, const char* role) {
    auto* label = plainLabel(parent, role);
    label->setText(words);
    return label;
}

QString asTip(const QString& words) {
    return words.isEmpty() ? QString() : Qt::convertFromPlainText(words, Qt::WhiteSpaceNormal);
}

QString asCaption(const QString& words) {
    return QString(words).replace(QLatin1Char('&'), QStringLiteral("&&"));
}

void sayIn(QLabel* label, const QString& words, bool isTrouble) {
    QPalette ink;  // that of the page
    if (isTrouble)
        ink.setColor(QPalette::WindowText, tokensFor(label->palette()).over);
    label->setPalette(ink);
    label->setText(words);
    label->setVisible(!words.isEmpty());
}

QLineEdit* captionedField(QWidget* parent, const QString& name, const QString& caption, int letters) {
    auto* edit = new QLineEdit(parent);
    edit->setObjectName(name);
    edit->setAccessibleName(caption);
    edit->setPlaceholderText(caption);
    if (letters > 0)
        edit->setMaximumWidth(edit->fontMetrics().averageCharWidth() * letters + kSpaceSection);
    return edit;
}

}  // namespace wm::ui
