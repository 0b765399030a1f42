// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/heads_strip.h"

#include <QButtonGroup>
#include <QPainter>

#include "ui/drawing/device_space.h"
#include "ui/pages/machine_columns.h"
#include "ui/shell/head.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

QString eventWords(const book::Book& book, MachineId machine) {
    const auto& events = book.ahead(machine).events;
    if (events.empty())
        return HeadsStrip::tr("nothing planned");
    const auto& next = events.front();
    const auto today = book.today();
    const QString day = next.first <= today ? HeadsStrip::tr("now") : dayWords(next.first, today);
    const int days = next.first - today;
    const QString away = days > 1 ? HeadsStrip::tr("%n day(s)", nullptr, days) : awayWords(next.first, today);
    return next.first <= today ? QStringLiteral("%1 · %2").arg(day, text(next.name))
                               : QStringLiteral("%1 · %2 · %3").arg(day, away, text(next.name));
}

}  // namespace

HeadsStrip::HeadsStrip(Workbench& workbench, QStringList keys, QWidget* parent)
    : QWidget(parent),
      workbench_(workbench),
      keys_(std::move(keys)),
      group_(new QButtonGroup(this)),
      all_(new Head(this)) {
    setObjectName(QStringLiteral("heads"));
    setAccessibleName(tr("machines"));
    all_->setObjectName(QStringLiteral("head-all"));
    all_->setChecked(true);
    group_->addButton(all_);
    setFixedHeight(all_->sizeHint().height());
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(all_, &Head::clicked, this, [this] { workbench_.choose(std::nullopt); });
    connect(&workbench_, &Workbench::chosenChanged, this, &HeadsStrip::followChosen);
}

void HeadsStrip::refresh() {
    const auto book = workbench_.book();
    const auto machines = book ? book->machines() : std::vector<const items::Machine*>();
    while (heads_.size() > machines.size()) {
        heads_.back().second->deleteLater();
        heads_.pop_back();
    }
    while (heads_.size() < machines.size()) {
        auto* head = new Head(this);
        group_->addButton(head);
        QWidget::setTabOrder(heads_.empty() ? all_ : heads_.back().second, head);
        const std::size_t place = heads_.size();
        head->setObjectName(QStringLiteral("head-%1").arg(place + 1));
        connect(head, &Head::clicked, this, [this, place] { chooseAt(place); });
        heads_.emplace_back(MachineId{}, head);
        head->show();
    }
    for (std::size_t at = 0; at < machines.size(); ++at) {
        heads_[at].first = machines[at]->id;
        heads_[at].second->say(text(machines[at]->name), shortHoursWords(book->life(machines[at]->id).hours),
                               eventWords(*book, machines[at]->id),
                               keys_.value(static_cast<qsizetype>(at) + 1));
    }
    if (book)
        all_->say(workbench_.dayIsPinned() ? tr("day held at") : tr("today"), QString(),
                  dayWords(book->today(), book->today()), keys_.value(0));
    layOut();
    followChosen();
}

void HeadsStrip::chooseAt(std::size_t place) {
    if (place < heads_.size())
        workbench_.choose(heads_[place].first);
}

void HeadsStrip::followChosen() {
    const auto chosen = workbench_.chosen();
    Head* head = all_;
    for (const auto& [machine, each] : heads_)
        if (chosen == machine)
            head = each;
    head->setChecked(true);
}

void HeadsStrip::layOut() {
    const int width = columnWidth(this->width(), static_cast<int>(heads_.size()));
    all_->setGeometry(0, 0, kGutter, height());
    int x = kGutter;
    for (const auto& [machine, head] : heads_) {
        head->setGeometry(x, 0, width, height());
        x += width;
    }
}

void HeadsStrip::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    layOut();
}

void HeadsStrip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens tokens = tokensFor(palette());
    paintHorizontal(painter, 0, width(), height() - 1, tokens.rule);
    for (const auto& [machine, head] : heads_)
        paintVertical(painter, head->x(), kSpaceClose, height() - kSpaceClose, tokens.rule);
}

}  // namespace wm::ui
