// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_page.h"

#include <QKeyEvent>
#include <QSplitter>
#include <QVBoxLayout>

#include "ui/drawing/places_strip.h"
#include "ui/drawing/season_strip.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine/fitted_view.h"
#include "ui/pages/machine/history_view.h"
#include "ui/pages/machine/places_of.h"
#include "ui/pages/machine/season_of.h"
#include "ui/pages/machine/what_if_view.h"
#include "ui/theme/type.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

MachinePage::MachinePage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      season_(new SeasonStrip(this)),
      places_(new PlacesStrip(this)),
      fitted_(new FittedView(tools, this)),
      history_(new HistoryView(tools, this)),
      whatIf_(new WhatIfView(tools, this)) {
    setObjectName(QStringLiteral("machine"));
    season_->setObjectName(QStringLiteral("season"));
    season_->setAccessibleName(tr("what is coming"));
    places_->setObjectName(QStringLiteral("places"));
    places_->setAccessibleName(tr("which item was where, when"));
    places_->hide();
    connect(fitted_, &FittedView::placesAsked, this, &MachinePage::turnOver);
    connect(places_, &PlacesStrip::currentChanged, this, [this](const QString& words) {
        if (!words.isEmpty())
            guide().say(words);
    });
    whatIf_->hide();
    connect(fitted_, &FittedView::whatIfAsked, this, [this] { suppose(whatIf_->isHidden()); });
    connect(whatIf_, &WhatIfView::left, this, [this] { suppose(false); });
    connect(whatIf_, &WhatIfView::supposedChanged, this, &MachinePage::showSeason);
    auto* right = new QWidget(this);
    QVBoxLayout* either = linesOf(right);
    either->addWidget(history_);
    either->addWidget(whatIf_);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpaceLine, kSpaceClose, kSpaceLine, kSpaceHair);
    lines->setSpacing(kSpaceClose);
    lines->addWidget(season_);
    lines->addWidget(places_);
    lines->addWidget(columnsOf(this, {{fitted_, 480}, {right, 760}}), 1);
}

void MachinePage::refresh() {
    showSeason();
    places_->setPlaces(placesOf(*workbench().book(), workbench().chosen()));
    fitted_->refresh();
    history_->refresh();
    if (!whatIf_->isHidden())
        whatIf_->refresh(supposedMachine());
}

void MachinePage::showSeason() {
    const bool supposed = !whatIf_->isHidden() && whatIf_->supposed() != nullptr;
    season_->setSeason(supposed ? seasonOf(*whatIf_->supposed(), supposedMachine())
                                : seasonOf(*workbench().book(), workbench().chosen()));
}

std::optional<MachineId> MachinePage::supposedMachine() const {
    return workbench().chosen() ? workbench().chosen() : fitted_->machineHere();
}

void MachinePage::suppose(bool on) {
    history_->setVisible(!on);
    whatIf_->setVisible(on);
    if (on && season_->isHidden())
        turnOver();
    if (on)
        whatIf_->refresh(supposedMachine());
    else
        showSeason();
    (on ? whatIf_->firstFocus() : fitted_->firstFocus())->setFocus();
}

void MachinePage::turnOver() {
    const bool back = season_->isVisibleTo(this);
    if (back && workbench().book()->ledger().all<items::Move>().empty())
        return guide().say(tr("Nothing was ever fitted or taken off."));
    season_->setVisible(!back);
    places_->setVisible(back);
}

// Escape turns the strip back; the window would take it for "all machines".
bool MachinePage::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && !places_->isHidden() &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return Page::event(event);
}

void MachinePage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && !places_->isHidden())
        turnOver();
    else
        Page::keyPressEvent(event);
}

QWidget* MachinePage::firstFocus() {
    return fitted_->firstFocus();
}

bool MachinePage::find() {
    if (!isVisible())
        return false;
    history_->find();
    return true;
}

std::optional<MachineId> MachinePage::machineHere() const {
    return fitted_->machineHere();
}

void MachinePage::why() {
    fitted_->why();
}

}  // namespace wm::ui
