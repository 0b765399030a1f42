// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_verdicts.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/shell/notebook_lines.h"
#include "ui/shell/notebook_tabs.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

using notebook::Line;

constexpr int kDetailLines = 3;

}  // namespace

NotebookVerdicts::NotebookVerdicts(NotebookPreview& preview, QWidget* parent)
    : QWidget(parent),
      preview_(preview),
      tabs_(new NotebookTabs(this)),
      lines_(new NotebookLines(preview_, this)),
      table_(new NotebookTable(lines_, this)),
      detail_(new QLabel(this)),
      cure_(key(tr("Accept the cure (Space)"), "notebook-cure")),
      kind_(key(tr("All of this kind (K)"), "notebook-cure-kind")),
      all_(key(tr("All cures (A)"), "notebook-cure-all")),
      leaveOut_(key(tr("Leave out (L)"), "notebook-leave-out")) {
    setFocusProxy(table_);
    layOut();
    connectKeys();
    lines_->show(LineFilter::All);
    if (lines_->countOf(LineFilter::Doubtful) > 0)
        lines_->show(LineFilter::Doubtful);
}

// Enter always means the import: no other button may catch it.
QPushButton* NotebookVerdicts::key(const QString& words, const char* name) {
    auto* made = new QPushButton(words, this);
    made->setObjectName(QString::fromLatin1(name));
    made->setAutoDefault(false);
    return made;
}

void NotebookVerdicts::layOut() {
    detail_->setTextFormat(Qt::PlainText);
    detail_->setProperty("role", QStringLiteral("note"));
    detail_->setObjectName(QStringLiteral("notebook-line"));
    detail_->setWordWrap(true);
    detail_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    detail_->setFixedHeight(kDetailLines * fontMetrics().lineSpacing());
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceHair);
    row->addWidget(tabs_);
    row->addStretch();
    for (QPushButton* each : {cure_, kind_, all_, leaveOut_})
        row->addWidget(each);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    lines->addLayout(row);
    lines->addWidget(table_, 1);
    lines->addWidget(detail_);
}

void NotebookVerdicts::connectKeys() {
    const auto onLine = [this](void (NotebookPreview::*say)(const Line&)) {
        return [this, say] {
            if (const Line* line = current()) {
                (preview_.*say)(*line);
                emit agreed();
            }
        };
    };
    const auto cure = onLine(&NotebookPreview::turnCure);
    const auto kind = onLine(&NotebookPreview::cureKindOf);
    const auto leaveOut = onLine(&NotebookPreview::turnLeftOut);
    const auto all = [this] {
        preview_.cureAll();
        emit agreed();
    };
    connect(cure_, &QPushButton::clicked, this, cure);
    connect(kind_, &QPushButton::clicked, this, kind);
    connect(all_, &QPushButton::clicked, this, all);
    connect(leaveOut_, &QPushButton::clicked, this, leaveOut);
    connect(table_, &NotebookTable::cureAsked, this, cure);
    connect(table_, &NotebookTable::kindAsked, this, kind);
    connect(table_, &NotebookTable::allAsked, this, all);
    connect(table_, &NotebookTable::leaveOutAsked, this, leaveOut);
    connect(table_, &NotebookTable::importAsked, this, &NotebookVerdicts::importAsked);
    connect(table_, &NotebookTable::lineChosen, this, &NotebookVerdicts::showLine);
    connect(tabs_, &NotebookTabs::filterChosen, this, [this](LineFilter filter) {
        lines_->show(filter);
        table_->setCurrentIndex(lines_->index(std::max(lines_->firstOpen(), 0), 0));
        showLine();
    });
    connect(table_, &NotebookTable::sideways, tabs_, &NotebookTabs::goSideways);
}

const Line* NotebookVerdicts::current() const {
    return lines_->lineAt(table_->currentIndex().row());
}

void NotebookVerdicts::refresh() {
    const int row = table_->currentIndex().row();
    lines_->reload();
    tabs_->show(*lines_);
    const int first = row >= 0 ? row : lines_->firstOpen();
    table_->setCurrentIndex(lines_->index(std::clamp(first, 0, std::max(lines_->rowCount() - 1, 0)), 0));
}

void NotebookVerdicts::restate(const NotebookStanding& standing) {
    lines_->restate();
    all_->setEnabled(standing.curable() > 0);
    showLine();
}

void NotebookVerdicts::goToOpen() {
    if (lines_->firstOpen() < 0)
        tabs_->turnTo(LineFilter::Doubtful);
    table_->setCurrentIndex(lines_->index(std::max(lines_->firstOpen(), 0), 0));
    table_->setFocus(Qt::OtherFocusReason);
}

void NotebookVerdicts::showLine() {
    const Line* line = current();
    const bool hasCure = line != nullptr && line->verdict == notebook::Verdict::Doubtful &&
                         line->cure != notebook::Cure::None && !line->inFile;
    const auto state = line != nullptr ? preview_.stateOf(*line) : LineState::Refused;
    cure_->setEnabled(hasCure);
    cure_->setText(state == LineState::Cured ? tr("Not this cure (Space)") : tr("Accept the cure (Space)"));
    kind_->setEnabled(hasCure);
    leaveOut_->setEnabled(state != LineState::Refused && state != LineState::Known);
    if (line == nullptr)
        return detail_->setText(QString());
    detail_->setText(detailWords(preview_, *line));
}

}  // namespace wm::ui
