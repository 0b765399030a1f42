// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/weekend_desk.h"

#include <QVBoxLayout>

#include "ui/pages/views.h"
#include "ui/pages/weekend/steps_page.h"
#include "ui/pages/weekend/weekend_page.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

WeekendDesk::WeekendDesk(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      seen_(new Views(QStringLiteral("weekendViews"), tr("What the page Weekend shows"), this)),
      order_(new WeekendPage(tools, seen_)),
      steps_(new StepsPage(tools, seen_)) {
    seen_->add(tr("Next window"), order_);
    seen_->add(tr("Access steps"), steps_);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->addWidget(seen_);
    connect(seen_, &Views::changed, this, [this] {
        if (workbench().book())
            refresh();
    });
    connect(seen_, &Views::keysNeedAPlace, this, [this] { firstFocus()->setFocus(Qt::OtherFocusReason); });
}

Page* WeekendDesk::view() const {
    return seen_->shown() == static_cast<int>(View::Steps) ? static_cast<Page*>(steps_) : order_;
}

void WeekendDesk::aimAt(const Aim& aim) {
    if (aim.view != Aim::View::Steps)
        return;
    const QSignalBlocker quiet(seen_);
    seen_->turnTo(static_cast<int>(View::Steps));
    steps_->aimAt(aim);
}

void WeekendDesk::refresh() {
    view()->refresh();
}

QWidget* WeekendDesk::firstFocus() {
    return seen_->focusOn(view()->firstFocus());
}

// What wants doing is a list of few; access steps are many.
bool WeekendDesk::find() {
    return view()->find();
}

QStringList WeekendDesk::unsaved() const {
    return steps_->unsaved();
}

}  // namespace wm::ui
