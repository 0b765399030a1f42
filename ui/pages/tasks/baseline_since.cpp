// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/baseline_since.h"

#include <QLabel>
#include <QLineEdit>
#include <utility>

#include "core/upkeep/typed_bracket.h"
#include "ui/entry/flow.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"

namespace wm::ui {

BaselineSince::BaselineSince(QWidget* parent) : QWidget(parent) {
    auto* row = new Flow(kSpaceClose, kSpaceHair);
    auto* head = plainLabel(this, "note", "baseline-since-label");
    head->setWordWrap(false);
    head->setText(tr("Since then, for all jobs at once (none, 8, 6..8..12):"));
    row->addWidget(head);
    washes_ = field("baseline-washes", tr("washes"));
    mud_ = field("baseline-mud", tr("mud days"));
    for (QLineEdit* each : {washes_, mud_})
        row->addWidget(each);
    row->setContentsMargins(0, 0, 0, 0);
    setLayout(row);
}

QLineEdit* BaselineSince::field(const char* name, const QString& words) {
    auto* edit = new QLineEdit(this);
    edit->setObjectName(QLatin1String(name));
    edit->setAccessibleName(tr("%1 since then, for all jobs").arg(words));
    edit->setPlaceholderText(words);
    edit->setMaximumWidth(fontMetrics().averageCharWidth() * 14);
    connect(edit, &QLineEdit::textChanged, this, &BaselineSince::changed);
    connect(edit, &QLineEdit::returnPressed, this, &BaselineSince::entered);
    return edit;
}

base::Result<verbs::SinceThen> BaselineSince::said() const {
    verbs::SinceThen all;
    for (const auto& [edit, counter] :
         {std::pair(washes_, upkeep::Counter::Washes), std::pair(mud_, upkeep::Counter::MudDays)}) {
        if (edit->text().trimmed().isEmpty())
            continue;
        const auto bracket = upkeep::parseBracket("count", edit->text().toStdString(), counter);
        if (!bracket)
            return tl::unexpected(bracket.error());
        all.pieces.push_back({counter, {bracket->low, bracket->best, bracket->high}});
    }
    return all;
}

bool BaselineSince::isEmpty() const {
    return washes_->text().trimmed().isEmpty() && mud_->text().trimmed().isEmpty();
}

void BaselineSince::clear() {
    washes_->clear();
    mud_->clear();
}

void BaselineSince::setReadOnly(bool readOnly) {
    washes_->setEnabled(!readOnly);
    mud_->setEnabled(!readOnly);
}

}  // namespace wm::ui
