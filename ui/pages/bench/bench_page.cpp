// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/bench/bench_page.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QResizeEvent>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pages/bench/bench_grid.h"
#include "ui/pages/bench/bench_model.h"
#include "ui/pages/key_row.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

using Kind = BenchCell::Kind;
constexpr int kFewestRows = 8;

}  // namespace

BenchPage::BenchPage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      model_(new BenchModel(this)),
      grid_(new BenchGrid(this)),
      keys_(new QWidget(this)) {
    setObjectName(QStringLiteral("bench"));
    grid_->setBench(model_);
    const auto here = [this] { return grid_->currentIndex(); };
    auto* keys = keyRow(
        keys_, {{QStringLiteral("bench-pick"), tr("into the weekend Space"), [this, here] { pick(here()); }},
                {QStringLiteral("bench-record"), tr("record Enter"), [this, here] { record(here()); }},
                {QStringLiteral("bench-put-off"), tr("put off D"), [this, here] { putOff(here()); }}});
    keys->insertStretch(0);
    auto* others = plainWords(keys_, tr("Ctrl+B what is known    Ctrl+E add an event"), "note");
    others->setWordWrap(false);  // beside the stretch a label that may break does, whatever room there is
    keys->addWidget(others);
    keys->setContentsMargins(kSpaceGroup, 0, kSpaceGroup, 0);
    keys_->setLayout(keys);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(0);
    lines->addWidget(grid_, 1);
    lines->addWidget(keys_);
    connect(grid_, &BenchGrid::recordAsked, this, &BenchPage::record);
    connect(grid_, &BenchGrid::pickAsked, this, &BenchPage::pick);
    connect(grid_, &BenchGrid::putOffAsked, this, &BenchPage::putOff);
}

QWidget* BenchPage::firstFocus() {
    return grid_;
}

void BenchPage::refresh() {
    const auto book = workbench().book();
    const QModelIndex before = grid_->currentIndex();
    const BenchCell kept = before.isValid() ? model_->cell(before) : BenchCell{};
    std::vector<MachineId> all;
    std::vector<QString> names;
    std::vector<BenchColumn> columns;
    for (const auto* machine : book->machines())
        all.push_back(machine->id);
    const auto chosen = workbench().chosen();
    for (const auto* machine : book->machines()) {
        if (chosen && *chosen != machine->id)
            continue;
        names.push_back(text(machine->name));
        columns.push_back(benchColumn(*book, machine->id, all));
    }
    model_->show(std::move(names), std::move(columns));
    fit();
    const QModelIndex again = model_->find(kept);
    const QModelIndex near =
        before.isValid() && before.row() < model_->rowCount() && before.column() < model_->columnCount()
            ? model_->index(before.row(), before.column())
            : QModelIndex();
    grid_->setCurrentIndex(again.isValid()                                      ? again
                           : near.isValid() && model_->cell(near).canBeChosen() ? near
                                                                                : model_->firstChoice());
}

void BenchPage::fit() {
    grid_->layOutColumns(width());
    const int headers = grid_->horizontalHeader()->isVisible() ? grid_->horizontalHeader()->height() : 0;
    // The page knows its height before its parts have followed.
    const int room = height() - keys_->sizeHint().height() - headers;
    const int fits = std::max(room / grid_->rowHeight(), kFewestRows);
    // One machine alone may be scrolled; all of them are for one glance.
    model_->fit(workbench().chosen() ? 1000 : fits);
}

void BenchPage::resizeEvent(QResizeEvent* event) {
    Page::resizeEvent(event);
    if (!workbench().book())
        return;
    const QModelIndex before = grid_->currentIndex();
    const BenchCell kept = before.isValid() ? model_->cell(before) : BenchCell{};
    fit();
    const QModelIndex again = model_->find(kept);
    grid_->setCurrentIndex(again.isValid() ? again : model_->firstChoice());
}

void BenchPage::record(const QModelIndex& index) {
    const BenchCell cell = model_->cell(index);
    EntryRequest request;
    request.kind = EntryKind::Job;
    request.machine = cell.machine;
    request.task = cell.task;
    request.snag = cell.snag;
    switch (cell.kind) {
        case Kind::More:
            if (index.data(BenchModel::BandRole).toInt() == static_cast<int>(Band::NeverRecorded))
                return guide().goTo(PageId::Tasks, {.view = Aim::View::Baseline, .machine = cell.machine});
            return workbench().choose(cell.machine);
        case Kind::NoTasks:
            return guide().goTo(PageId::Tasks, {.machine = cell.machine});
        case Kind::Joint:
            return guide().goTo(PageId::Torque,
                                {.view = Aim::View::HandTight, .machine = cell.machine, .joint = cell.joint});
        case Kind::FollowUp:
            return cell.task ? guide().enter(request) : answer(cell);
        case Kind::Job:
        case Kind::Snag:
            return guide().enter(request);
        case Kind::Nothing:
        case Kind::Words:
            break;
    }
}

// A check that is no task of its own is answered on the spot: it was looked at and is fine. Undo takes it
// back.
void BenchPage::answer(const BenchCell& cell) {
    upkeep::FollowUpAnswer answer;
    answer.machine = cell.machine;
    answer.origin = cell.origin;
    answer.what = cell.words.toStdString();
    answer.date = workbench().today();
    answer.fine = true;
    workbench().perform(
        [answer](const verbs::VerbContext& context) { return verbs::answerFollowUp(context, answer); });
}

void BenchPage::pick(const QModelIndex& index) {
    const BenchCell cell = model_->cell(index);
    if (!cell.task && !cell.snag)
        return;
    const auto* due = cell.task ? workbench().book()->dueLine(*cell.task) : nullptr;
    const bool isPicked = due != nullptr ? due->picked : cell.picked;
    workbench().perform([cell, isPicked](const verbs::VerbContext& context) {
        return verbs::pick(context, cell.machine, cell.task, cell.snag, !isPicked);
    });
}

void BenchPage::putOff(const QModelIndex& index) {
    const BenchCell& cell = model_->cell(index);
    if (!cell.task && !cell.snag)
        return;
    EntryRequest request;
    request.kind = EntryKind::PutOff;
    request.machine = cell.machine;
    request.task = cell.task;
    request.snag = cell.snag;
    guide().enter(request);
}

std::optional<MachineId> BenchPage::machineHere() const {
    const QModelIndex here = grid_->currentIndex();
    if (!here.isValid() || !model_->cell(here).canBeChosen())
        return std::nullopt;
    return model_->cell(here).machine;
}

void BenchPage::why() {
    const auto& cell = model_->cell(grid_->currentIndex());
    const auto book = workbench().book();
    if (!cell.task)
        return;
    if (const auto* line = book->dueLine(*cell.task))
        guide().explain(grid_, whyOf(*book, *line));
}

}  // namespace wm::ui
