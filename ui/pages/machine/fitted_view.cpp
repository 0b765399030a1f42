// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/fitted_view.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QToolButton>
#include <QTreeView>
#include <QVBoxLayout>
#include <tuple>

#include "ui/pages/machine/fitted_model.h"
#include "ui/theme/row_delegate.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/standing_words.h"
#include "ui/words/state_words.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

FittedView::FittedView(const PageTools& tools, QWidget* parent)
    : QWidget(parent),
      tools_(tools),
      model_(new FittedModel(this)),
      tree_(new QTreeView(this)),
      state_(new QLabel(this)),
      nothing_(new QLabel(this)) {
    state_->setObjectName(QStringLiteral("state"));
    state_->setWordWrap(true);
    tree_->setObjectName(QStringLiteral("fitted"));
    tree_->setAccessibleName(tr("what is fitted"));
    tree_->setModel(model_);
    dressRows(*tree_);
    tree_->setItemDelegate(new FittedDelegate(tree_));
    tree_->setHeaderHidden(true);
    tree_->setUniformRowHeights(false);
    tree_->setIndentation(kSpaceGroup);
    tree_->installEventFilter(this);
    nothing_->setProperty("role", QStringLiteral("note"));
    nothing_->setWordWrap(true);
    nothing_->setText(
        tr("No item is tracked yet. F fits the first one: an engine, a wheel, a shock, whatever has a life "
           "of its own."));
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceHair);
    const std::tuple<const char*, QString, void (FittedView::*)()> actions[] = {
        {"fit-key", tr("fit F"), &FittedView::fit},
        {"take-off-key", tr("take off T"), &FittedView::takeOff},
        {"swap-key", tr("swap W"), &FittedView::swap},
        {"where-it-was-key", tr("where it was H"), &FittedView::placesAsked},
        {"what-if-key", tr("what if I"), &FittedView::whatIfAsked}};
    for (const auto& [name, words, act] : actions) {
        auto* key = new QToolButton(this);
        key->setText(words);
        key->setObjectName(QLatin1String(name));
        connect(key, &QToolButton::clicked, this, act);
        row->addWidget(key);
    }
    row->addStretch();
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    lines->addWidget(state_);
    lines->addWidget(nothing_);
    lines->addWidget(tree_, 1);
    lines->addLayout(row);
    connect(tree_->selectionModel(), &QItemSelectionModel::currentChanged, this, &FittedView::showState);
}

QWidget* FittedView::firstFocus() const {
    return tree_;
}

const FittedNode* FittedView::current() const {
    return tree_->currentIndex().isValid() ? model_->node(tree_->currentIndex()) : nullptr;
}

std::optional<MachineId> FittedView::machineHere() const {
    const auto* node = current();
    return node == nullptr ? std::nullopt : node->machine;
}

void FittedView::refresh() {
    const auto* kept = current();
    const auto item = kept != nullptr ? kept->id : std::nullopt;
    const auto book = tools_.workbench.book();
    model_->show(fittedOn(*book, tools_.workbench.chosen()));
    tree_->expandAll();
    nothing_->setVisible(book->ledger().all<items::Item>().empty());
    const QModelIndex again = item ? model_->find(*item) : QModelIndex();
    tree_->setCurrentIndex(again.isValid() ? again : model_->index(0, 0));
    showState();
}

// Before all that is fitted: may the machine under the cursor be ridden at all?
void FittedView::showState() {
    const auto book = tools_.workbench.book();
    const auto machine = tools_.workbench.chosen() ? tools_.workbench.chosen() : machineHere();
    const auto* card = book && machine ? book->ledger().find<items::Machine>(*machine) : nullptr;
    state_->setVisible(card != nullptr);
    if (card == nullptr)
        return;
    const Tokens tokens = tokensFor(palette());
    inkWith(state_, book::stateOf(*book, *machine).isWhole() ? tokens.pencil : tokens.over);
    state_->setText(stateWords(*book, *machine));
}

void FittedView::fit() {
    const auto* node = current();
    EntryRequest request;
    request.kind = EntryKind::Fit;
    request.machine = tools_.workbench.chosen();
    if (node != nullptr && node->machine)
        request.machine = node->machine;
    if (node != nullptr && node->id && !node->isFitted)
        request.item = node->id;
    if (node != nullptr && node->isGap)
        request.position = node->place;
    tools_.guide.enter(request);
}

void FittedView::takeOff() {
    const auto* node = current();
    if (node == nullptr || !node->id || !node->isFitted)
        return tools_.guide.say(tr("Choose an item that is fitted."));
    EntryRequest request;
    request.kind = EntryKind::TakeOff;
    request.item = node->id;
    tools_.guide.enter(request);
}

void FittedView::swap() {
    const auto* node = current();
    if (node == nullptr || !node->id || !node->isFitted)
        return tools_.guide.say(tr("Choose the item that comes off."));
    EntryRequest request;
    request.kind = EntryKind::Swap;
    request.item = node->id;
    tools_.guide.enter(request);
}

void FittedView::record() {
    const auto* node = current();
    if (node == nullptr || !node->task)
        return;
    EntryRequest request;
    request.kind = EntryKind::Job;
    request.machine = node->machine;
    request.task = node->task;
    tools_.guide.enter(request);
}

void FittedView::why() {
    const auto* node = current();
    const auto book = tools_.workbench.book();
    const auto* line = node != nullptr && node->task ? book->dueLine(*node->task) : nullptr;
    if (line != nullptr)
        tools_.guide.explain(tree_, whyOf(*book, *line));
}

bool FittedView::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->modifiers() != Qt::NoModifier)
        return false;
    switch (key->key()) {
        case Qt::Key_F:
            fit();
            return true;
        case Qt::Key_T:
            takeOff();
            return true;
        case Qt::Key_W:
            swap();
            return true;
        case Qt::Key_H:
            emit placesAsked();
            return true;
        case Qt::Key_I:
            emit whatIfAsked();
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            record();
            return true;
        default:
            return false;
    }
}

}  // namespace wm::ui
