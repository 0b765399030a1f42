// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/part_words.h"

#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {}  // namespace

QString partWords(const upkeep::TaskVersion& task) {
    const std::string head = task.position.substr(0, task.position.find('/'));
    if (head.empty())
        return tr("machine");
    return head.ends_with("wheel") ? tr("wheels") : text(head);
}

}  // namespace wm::ui
