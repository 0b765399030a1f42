// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_page.h"

#include <QVBoxLayout>

#include "ui/drawing/places_strip.h"
#include "ui/drawing/season_strip.h"
#include "ui/guide.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine/fitted_view.h"
#include "ui/pages/machine/history_view.h"
#include "ui/pages/machine/places_of.h"
#include "ui/pages/machine/season_of.h"
#include "ui/theme/type.h"
#include "ui/workbench.h"

namespace wm::ui {

MachinePage::MachinePage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      season_(new SeasonStrip(this)),
      places_(new PlacesStrip(this)),
      fitted_(new FittedView(tools, this)),
      history_(new HistoryView(tools, this)) {
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
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpaceLine, kSpaceClose, kSpaceLine, kSpaceHair);
    lines->setSpacing(kSpaceClose);
    lines->addWidget(season_);
    lines->addWidget(places_);
    lines->addWidget(columnsOf(this, {{fitted_, 480}, {history_, 760}}), 1);
}

void MachinePage::refresh() {
    season_->setSeason(seasonOf(*workbench().book(), workbench().chosen()));
    places_->setPlaces(placesOf(*workbench().book(), workbench().chosen()));
    fitted_->refresh();
    history_->refresh();
}

void MachinePage::turnOver() {
    const bool back = season_->isVisibleTo(this);
    if (back && workbench().book()->ledger().all<items::Move>().empty())
        return guide().say(tr("Nothing was ever fitted or taken off."));
    season_->setVisible(!back);
    places_->setVisible(back);
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
