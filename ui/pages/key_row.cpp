// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/key_row.h"

#include <QHBoxLayout>
#include <QToolButton>

#include "ui/theme/type.h"

namespace wm::ui {

QHBoxLayout* keyRow(QWidget* parent, const std::vector<KeyAct>& acts) {
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceHair);
    for (const KeyAct& each : acts) {
        auto* key = new QToolButton(parent);
        key->setObjectName(each.name);
        key->setText(each.words);
        QObject::connect(key, &QToolButton::clicked, parent, each.act);
        row->addWidget(key);
    }
    return row;
}

}  // namespace wm::ui
