// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/machine_page.h"

#include <QVBoxLayout>

#include "ui/drawing/season_strip.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine/fitted_view.h"
#include "ui/pages/machine/history_view.h"
#include "ui/pages/machine/season_of.h"
#include "ui/theme/type.h"
#include "ui/workbench.h"

namespace wm::ui {

MachinePage::MachinePage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      season_(new SeasonStrip(this)),
      fitted_(new FittedView(tools, this)),
      history_(new HistoryView(tools, this)) {
    setObjectName(QStringLiteral("machine"));
    season_->setObjectName(QStringLiteral("season"));
    season_->setAccessibleName(tr("what is coming"));
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpaceLine, kSpaceClose, kSpaceLine, kSpaceHair);
    lines->setSpacing(kSpaceClose);
    lines->addWidget(season_);
    lines->addWidget(columnsOf(this, {{fitted_, 480}, {history_, 760}}), 1);
}

void MachinePage::refresh() {
    season_->setSeason(seasonOf(*workbench().book(), workbench().chosen()));
    fitted_->refresh();
    history_->refresh();
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

void MachinePage::why() {
    fitted_->why();
}

}  // namespace wm::ui
