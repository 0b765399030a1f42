// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/hand_tight_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <set>

#include "core/book/drawer_of_book.h"
#include "core/book/state.h"
#include "ui/pages/columns.h"
#include "ui/pages/torque/mark_form.h"
#include "ui/pages/torque/torque_rows.h"
#include "ui/tables/row_table.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/words/state_words.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

TableRow rowOf(const book::Book& book, const fastening::JointVersion& joint, const QString& why,
               calendar::Date since) {
    const auto* tool = book::usualTool(book, joint);
    const auto* card = book.ledger().find<items::Machine>(joint.machine);
    return {.id = joint.joint.value(),
            .cells = {{.text = text(joint.name)},
                      {.text = card == nullptr ? QString() : text(card->name)},
                      {.text = joint.torque ? torqueWords(joint) : HandTightView::tr("torque not known yet"),
                       .pencil = !joint.torque,
                       .unconfirmed = joint.torque && !joint.confirmed},
                      {.text = why},
                      {.text = dayWords(since, book.today()), .sort = since.daysSinceEpoch()},
                      {.text = tool == nullptr ? QString() : text(tool->name)}}};
}

// What is loose, then what is in doubt: the same confirmation settles both.
std::vector<TableRow> rowsOf(const book::Book& book, std::optional<MachineId> machine) {
    std::vector<TableRow> rows;
    for (const items::Machine* card : book.machines()) {
        if (machine && card->id != *machine)
            continue;
        const book::State state = book::stateOf(book, card->id);
        std::set<JointId> seen;
        for (const book::OpenJoint& open : state.handTight) {
            seen.insert(open.joint->joint);
            rows.push_back(rowOf(book, *open.joint, nameWords(open.state.why), open.state.since));
        }
        for (const book::Doubt& doubt : state.doubts)
            for (const JointId id : doubt.joints)
                if (const auto* joint = book.joint(id); joint != nullptr && seen.insert(id).second)
                    rows.push_back(rowOf(book, *joint,
                                         doubt.why == book::Doubting::Wrench ? whyDoubtedWords(book, doubt)
                                                                             : inDoubtWords(book, doubt),
                                         doubt.since));
    }
    return rows;
}

// What can't be torqued before something is back on.
QString outOf(const book::Book& book, std::optional<MachineId> machine) {
    QStringList all;
    for (const items::Machine* card : book.machines()) {
        const auto out = machine && card->id != *machine ? std::vector<book::JointOut>{}
                                                         : book::stateOf(book, card->id).out;
        if (!out.empty())
            all << (machine ? HandTightView::tr("Also %1.").arg(outWords(out))
                            : HandTightView::tr("%1: %2.").arg(text(card->name), outWords(out)));
    }
    return all.join(QLatin1Char('\n'));
}

}  // namespace

HandTightView::HandTightView(const PageTools& tools, QWidget* parent)
    : TorqueView(tools, parent),
      words_(plainLabel(this, "note")),
      joints_(new RowTable({tr("Joint"), tr("Machine"), tr("Torque"), tr("Why"), tr("Since"), tr("Wrench")},
                           0, this)),
      confirm_(new QPushButton(tr("Torqued and marked… (Enter)"), this)) {
    joints_->setObjectName(QStringLiteral("handTightJoints"));
    joints_->setAccessibleName(tr("Joints that are hand-tight"));
    confirm_->setObjectName(QStringLiteral("handTightConfirm"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(confirm_);
    buttons->addStretch();
    auto* lines = linesOf(this);
    lines->addWidget(words_);
    lines->addWidget(joints_, 1);
    lines->addLayout(buttons);
    connect(confirm_, &QPushButton::clicked, this, &HandTightView::confirm);
    connect(joints_, &RowTable::activatedId, this, &HandTightView::confirm);
}

QWidget* HandTightView::firstFocus() {
    return joints_;
}

void HandTightView::choose(JointId joint) {
    joints_->choose(joint.value());
}

void HandTightView::refresh() {
    const auto machine = workbench().chosen();
    auto rows = rowsOf(*workbench().book(), machine);
    const QString out = outOf(*workbench().book(), machine);
    words_->setText(
        rows.empty() && !out.isEmpty() ? tr("Nothing that is fitted is hand-tight or in doubt.")
        : rows.empty()
            ? tr("Nothing is hand-tight or in doubt: every joint that was opened is torqued and marked.")
            : tr("Opened and not torqued since, or in doubt. Enter says that the chosen one is torqued "
                 "and marked; a machine is not logged as ridden before what is loose is answered."));
    if (!out.isEmpty())
        words_->setText(words_->text() + QLatin1Char('\n') + out);
    joints_->setVisible(!rows.empty());
    confirm_->setVisible(!rows.empty());
    confirm_->setEnabled(!workbench().readOnly());
    joints_->setColumnHidden(1, machine.has_value());
    joints_->show(std::move(rows));
}

void HandTightView::confirm() {
    if (const auto id = joints_->chosenId())
        guide().enter(new MarkForm(workbench(), JointId(*id), fastening::MarkKind::Confirmed));
}

}  // namespace wm::ui
