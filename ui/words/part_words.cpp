// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/part_words.h"

#include <QCoreApplication>

#include "ui/words/figures.h"

namespace wm::ui {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("PartWords", words);
}

}  // namespace

QString partWords(const upkeep::TaskVersion& task) {
    const std::string head = task.position.substr(0, task.position.find('/'));
    if (head.empty())
        return tr("machine");
    return head.ends_with("wheel") ? tr("wheels") : text(head);
}

}  // namespace wm::ui
