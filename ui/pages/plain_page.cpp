// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/plain_page.h"

#include <QLabel>
#include <QVBoxLayout>

#include "ui/theme/type.h"

namespace wm::ui {

PlainPage::PlainPage(const PageTools& tools, const QString& title, const QString& sentence, QWidget* parent)
    : Page(tools, parent) {
    auto* heading = new QLabel(title, this);
    heading->setProperty("role", QStringLiteral("title"));
    auto* words = new QLabel(sentence, this);
    words->setProperty("role", QStringLiteral("note"));
    words->setWordWrap(true);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpaceSection, kSpaceSection, kSpaceSection, kSpaceSection);
    lines->setSpacing(kSpaceLine);
    lines->addWidget(heading);
    lines->addWidget(words);
    lines->addStretch();
    setFocusPolicy(Qt::StrongFocus);
}

}  // namespace wm::ui
