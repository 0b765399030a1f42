// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/torque_desk.h"

#include <QVBoxLayout>
#include <utility>

#include "core/book/drawer_of_book.h"
#include "core/book/state.h"
#include "ui/pages/torque/chart_view.h"
#include "ui/pages/torque/confirm_view.h"
#include "ui/pages/torque/drawer_view.h"
#include "ui/pages/torque/hand_tight_view.h"
#include "ui/pages/torque/loosened_view.h"
#include "ui/pages/torque/torque_page.h"
#include "ui/pages/views.h"
#include "ui/theme/type.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

TorqueDesk::TorqueDesk(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      seen_(new Views(QStringLiteral("torqueViews"), tr("What the page Torque shows"), this)),
      figures_(new TorquePage(tools, seen_)),
      handTight_(new HandTightView(tools, seen_)) {
    seen_->add(tr("Figures"), figures_);
    addView(tr("Hand-tight"), handTight_);
    addView(tr("Drawer"), new DrawerView(tools, seen_));
    addView(tr("Came loose"), new LoosenedView(tools, seen_));
    addView(tr("Chart"), new ChartView(tools, seen_));
    addView(tr("Confirm"), new ConfirmView(tools, seen_));
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->addWidget(seen_);
    connect(seen_, &Views::changed, this, [this] {
        if (workbench().book())
            refresh();
    });
    connect(seen_, &Views::keysNeedAPlace, this, [this] { firstFocus()->setFocus(Qt::OtherFocusReason); });
}

void TorqueDesk::addView(const QString& name, TorqueView* view) {
    view->setContentsMargins(kSpaceSection, kSpaceGroup, kSpaceSection, kSpaceGroup);
    seen_->add(name, view);
    views_.push_back(view);
}

TorqueView* TorqueDesk::view() const {
    const int at = seen_->shown();
    return at < 1 ? nullptr : views_.at(static_cast<std::size_t>(at - 1));
}

// What waits behind a view stands on its name.
void TorqueDesk::nameViews() {
    const auto book = workbench().book();
    std::size_t open = 0;
    std::size_t doubtful = 0;
    for (const items::Machine* machine : book->machines())
        if (!workbench().chosen() || workbench().chosen() == machine->id)
            open += book::toConfirm(*book, machine->id).size();
    for (const book::ToolRecall& recall : book::recallsOf(*book))
        for (const fastening::RecallLine& line : recall.recall.lines)
            doubtful += book::stillDoubted(*book, recall, line) ? 1 : 0;
    seen_->rename(1, open == 0 ? tr("Hand-tight") : tr("Hand-tight (%1)").arg(open));
    seen_->rename(2, doubtful == 0 ? tr("Drawer") : tr("Drawer (%1 to re-check)").arg(doubtful));
}

void TorqueDesk::refresh() {
    nameViews();
    if (auto* shown = view())
        shown->refresh();
    else
        figures_->refresh();
    if (sought_)
        handTight_->choose(*std::exchange(sought_, std::nullopt));
}

QWidget* TorqueDesk::firstFocus() {
    auto* shown = view();
    return seen_->focusOn(shown != nullptr ? shown->firstFocus() : figures_->firstFocus());
}

void TorqueDesk::aimAt(const Aim& aim) {
    if (aim.view != Aim::View::HandTight)
        return;
    const QSignalBlocker quiet(seen_);
    seen_->turnTo(1);
    sought_ = aim.joint;
}

bool TorqueDesk::find() {
    seen_->turnTo(0);
    return figures_->find();
}

std::optional<MachineId> TorqueDesk::machineHere() const {
    return view() == nullptr ? figures_->machineHere() : std::nullopt;
}

QStringList TorqueDesk::unsaved() const {
    QStringList all = figures_->unsaved();
    for (const TorqueView* each : views_)
        all << each->unsaved();
    return all;
}

void TorqueDesk::why() {
    if (view() == nullptr)
        figures_->why();
}

}  // namespace wm::ui
