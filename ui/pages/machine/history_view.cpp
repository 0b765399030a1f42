// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/history_view.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QTreeView>
#include <QVBoxLayout>

#include "ui/entry/choice.h"
#include "ui/pages/key_row.h"
#include "ui/pages/machine/history_model.h"
#include "ui/theme/row_delegate.h"
#include "ui/theme/type.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr int kMostFound = 2000;

QTreeView* historyList(HistoryModel* model, QWidget* parent) {
    auto* list = new QTreeView(parent);
    list->setObjectName(QStringLiteral("history"));
    list->setAccessibleName(HistoryView::tr("history, newest first"));
    list->setModel(model);
    dressRows(*list);
    list->setHeaderHidden(true);
    list->setUniformRowHeights(true);
    list->setExpandsOnDoubleClick(true);
    list->setIndentation(kSpaceGroup);
    list->header()->setStretchLastSection(false);
    for (const int column : {HistoryModel::Day, HistoryModel::Machine, HistoryModel::Figure})
        list->header()->setSectionResizeMode(column, QHeaderView::ResizeToContents);
    list->header()->setSectionResizeMode(HistoryModel::Words, QHeaderView::Stretch);
    list->header()->setMinimumSectionSize(0);
    return list;
}

}  // namespace

HistoryView::HistoryView(const PageTools& tools, QWidget* parent)
    : QWidget(parent),
      tools_(tools),
      model_(new HistoryModel(this)),
      search_(new QLineEdit(this)),
      kinds_(new QComboBox(this)),
      list_(historyList(model_, this)),
      nothing_(new QLabel(this)) {
    search_->setObjectName(QStringLiteral("history-search"));
    search_->setAccessibleName(tr("find in the history"));
    search_->setPlaceholderText(tr("find in the history"));
    search_->setClearButtonEnabled(true);
    search_->installEventFilter(this);
    kinds_->setObjectName(QStringLiteral("history-kind"));
    kinds_->setAccessibleName(tr("which entries"));
    kinds_->addItem(tr("everything"));
    addChoices<HistoryKind>(*kinds_, {{HistoryKind::Job, tr("jobs")},
                                      {HistoryKind::Riding, tr("riding")},
                                      {HistoryKind::Snag, tr("snags")},
                                      {HistoryKind::Meter, tr("meters")},
                                      {HistoryKind::Item, tr("items")},
                                      {HistoryKind::PutOff, tr("put off")}});
    list_->installEventFilter(this);
    nothing_->setObjectName(QStringLiteral("history-nothing"));
    nothing_->setProperty("role", QStringLiteral("note"));
    nothing_->setTextFormat(Qt::PlainText);
    nothing_->setWordWrap(true);
    auto* keys = keyRow(this, {{QStringLiteral("history-open"), tr("open Enter"), [this] { open(); }},
                               {QStringLiteral("history-correct"), tr("correct C"), [this] { correct(); }},
                               {QStringLiteral("history-strike"), tr("strike Del"), [this] { strike(); }}});
    keys->insertStretch(0);
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceClose);
    row->addWidget(search_, 1);
    row->addWidget(kinds_);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    lines->addLayout(row);
    lines->addWidget(nothing_);
    lines->addWidget(list_, 1);
    lines->addLayout(keys);
    connect(search_, &QLineEdit::textChanged, this, &HistoryView::narrow);
    connect(kinds_, &QComboBox::currentIndexChanged, this, &HistoryView::narrow);
}

void HistoryView::refresh() {
    const auto* kept = model_->entry(list_->currentIndex());
    const std::int64_t fact = kept != nullptr ? kept->fact : 0;
    const auto chosen = tools_.workbench.chosen();
    model_->show(tools_.workbench.book(), chosen);
    list_->setColumnHidden(HistoryModel::Machine, chosen.has_value());
    narrow();
    keepPlace(fact);
}

void HistoryView::keepPlace(std::int64_t fact) {
    const QModelIndex again = model_->find(fact);
    list_->setCurrentIndex(again.isValid() ? again : model_->index(0, 0));
}

void HistoryView::narrow() {
    const auto* kept = model_->entry(list_->currentIndex());
    const std::int64_t fact = kept != nullptr ? kept->fact : 0;
    HistoryModel::Filter filter;
    filter.kind = chosenIfAny<HistoryKind>(*kinds_);
    filter.words = search_->text().simplified();
    if (!filter.words.isEmpty())
        for (const auto found : tools_.workbench.search(filter.words, kMostFound))
            filter.found.insert(found);
    const bool narrowed = filter.kind || !filter.words.isEmpty();
    model_->filter(std::move(filter));
    nothing_->setVisible(model_->rowCount() == 0);
    nothing_->setText(narrowed
                          ? tr("Nothing in the history holds that.")
                          : tr("Nothing was entered yet. F2 logs a day's riding, F3 records a job done."));
    keepPlace(fact);
}

void HistoryView::find() {
    search_->setFocus(Qt::ShortcutFocusReason);
    search_->selectAll();
}

void HistoryView::open() {
    QModelIndex at = list_->currentIndex();
    if (at.parent().isValid())
        at = at.parent();
    list_->setExpanded(at.siblingAtColumn(0), !list_->isExpanded(at.siblingAtColumn(0)));
}

void HistoryView::strike() {
    const auto* entry = model_->entry(list_->currentIndex());
    if (entry == nullptr || entry->isStruck)
        return;
    EntryRequest request;
    request.kind = EntryKind::Strike;
    request.fact = entry->fact;
    tools_.guide.enter(request);
}

void HistoryView::correct() {
    const auto* entry = model_->entry(list_->currentIndex());
    if (entry == nullptr)
        return;
    if (!entry->corrected)
        return tools_.guide.say(entry->isStruck ? tr("A struck entry stays as it is.")
                                                : tr("Strike this entry, then enter it anew."));
    EntryRequest request;
    request.kind = *entry->corrected;
    request.machine = entry->machine;
    request.corrects = entry->fact;
    tools_.guide.enter(request);
}

bool HistoryView::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (watched == search_) {
        if (key != Qt::Key_Down)
            return false;
        list_->setFocus(Qt::OtherFocusReason);
        return true;
    }
    switch (key) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            open();
            return true;
        case Qt::Key_C:
            correct();
            return true;
        case Qt::Key_Delete:
            strike();
            return true;
        default:
            return false;
    }
}

}  // namespace wm::ui
