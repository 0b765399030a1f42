// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/drawer_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/book/drawer_of_book.h"
#include "core/verbs/verbs.h"
#include "ui/pages/columns.h"
#include "ui/pages/torque/mark_form.h"
#include "ui/pages/torque/tool_forms.h"
#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/words/drawer_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

TableRow toolRow(const book::Book& book, const fastening::Choice& choice) {
    const fastening::Tool& tool = *choice.tool;
    return {.id = tool.id.value(),
            .cells = {{.text = text(tool.name)},
                      {.text = rangeWords(tool), .sort = fastening::inNewtonMetres(tool.high, tool.unit)},
                      {.text = text(tool.drive)},
                      {.text = typeWords(tool)},
                      {.text = tool.active ? standingWords(choice.standing, book.today())
                                           : DrawerView::tr("out of the drawer"),
                       .pencil = !tool.active || !wantsCheck(choice.standing)},
                      {.text = text(tool.note), .pencil = true}}};
}

// What is still to be re-checked first, then the rest.
std::vector<TableRow> recallRows(const book::Book& book) {
    std::vector<TableRow> open;
    std::vector<TableRow> settled;
    for (const book::ToolRecall& recall : book::recallsOf(book))
        for (const fastening::RecallLine& line : recall.recall.lines) {
            const auto* joint = book.joint(line.tightened->joint);
            if (joint == nullptr)
                continue;
            const auto doubt = book::stillDoubted(book, recall, line);
            const auto* machine = book.ledger().find<items::Machine>(doubt ? doubt->machine : joint->machine);
            const bool isSettled = !doubt;
            QString state = DrawerView::tr("to re-check");
            if (isSettled && line.since != nullptr)
                state = line.since->kind == fastening::MarkKind::Confirmed ? DrawerView::tr("torqued again")
                                                                           : DrawerView::tr("loosened since");
            else if (isSettled)
                state = DrawerView::tr("re-checked");
            (isSettled ? settled : open)
                .push_back({.id = joint->joint.value(),
                            .cells = {{.text = text(joint->name)},
                                      {.text = machine == nullptr ? QString() : text(machine->name)},
                                      {.text = text(recall.tool->name)},
                                      {.text = dayWords(line.tightened->date, book.today()),
                                       .sort = line.tightened->date.daysSinceEpoch()},
                                      {.text = state, .pencil = isSettled}}});
        }
    open.insert(open.end(), settled.begin(), settled.end());
    return open;
}

}  // namespace

DrawerView::DrawerView(const PageTools& tools, QWidget* parent)
    : TorqueView(tools, parent),
      empty_(plainLabel(this, "note")),
      tools_(new RowTable({tr("Tool"), tr("Range"), tr("Drive"), tr("ISO 6789"), tr("Check"), tr("Note")}, 4,
                          this)),
      add_(new QPushButton(tr("Add a tool…"), this)),
      change_(new QPushButton(tr("Change…"), this)),
      check_(new QPushButton(tr("It was checked…"), this)),
      strike_(new QPushButton(this)),
      standard_(plainLabel(this, "note", "drawerStandard")),
      recallWords_(plainLabel(this, nullptr)),
      recall_(new RowTable({tr("Joint"), tr("Machine"), tr("Tool"), tr("Last torqued with it"), tr("State")},
                           0, this)),
      fine_(new QPushButton(tr("Re-checked and fine"), this)),
      tight_(new QPushButton(tr("Torqued again…"), this)) {
    empty_->setText(
        tr("No torque tool yet. Add what lies in the drawer with its range: the figures then say which "
           "one serves, and a tool that fails its check names every joint it torqued."));
    standard_->setText(
        tr("A tool without an interval of its own wants its check after 12 months or 5000 cycles. That, and "
           "what other types than II A may be off, is from memory of ISO 6789: the certificate and the "
           "standard decide."));
    tools_->setObjectName(QStringLiteral("drawerTools"));
    tools_->setAccessibleName(tr("Torque tools"));
    recall_->setObjectName(QStringLiteral("drawerRecall"));
    recall_->setAccessibleName(tr("Joints that a failed check put in doubt"));
    recallWords_->setObjectName(QStringLiteral("drawerRecallWords"));
    add_->setObjectName(QStringLiteral("drawerAdd"));
    change_->setObjectName(QStringLiteral("drawerChange"));
    check_->setObjectName(QStringLiteral("drawerCheck"));
    strike_->setObjectName(QStringLiteral("drawerStrike"));
    fine_->setObjectName(QStringLiteral("recallFine"));
    tight_->setObjectName(QStringLiteral("recallTight"));
    layOut();
    connect(add_, &QPushButton::clicked, this, [this] { guide().enter(new ToolForm(workbench(), nullptr)); });
    connect(change_, &QPushButton::clicked, this, &DrawerView::change);
    connect(check_, &QPushButton::clicked, this, &DrawerView::check);
    connect(strike_, &QPushButton::clicked, this, &DrawerView::strikeCheck);
    connect(tools_, &RowTable::chosenChanged, this, &DrawerView::offerStrike);
    connect(tools_, &RowTable::activatedId, this, &DrawerView::change);
    connect(fine_, &QPushButton::clicked, this, &DrawerView::foundFine);
    connect(tight_, &QPushButton::clicked, this, &DrawerView::tightened);
    connect(recall_, &RowTable::activatedId, this, &DrawerView::tightened);
}

void DrawerView::layOut() {
    const auto row = [](std::initializer_list<QPushButton*> buttons) {
        auto* line = new QHBoxLayout;
        for (QPushButton* button : buttons)
            line->addWidget(button);
        line->addStretch();
        return line;
    };
    auto* lines = linesOf(this);
    lines->addWidget(empty_);
    lines->addWidget(tools_, 2);
    lines->addWidget(standard_);
    lines->addLayout(row({add_, change_, check_, strike_}));
    lines->addSpacing(kSpaceGroup);
    lines->addWidget(recallWords_);
    lines->addWidget(recall_, 3);
    lines->addLayout(row({fine_, tight_}));
    lines->addStretch();
}

QWidget* DrawerView::firstFocus() {
    return tools_->isVisibleTo(this) ? static_cast<QWidget*>(tools_) : add_;
}

void DrawerView::refresh() {
    const auto book = workbench().book();
    std::vector<TableRow> rows;
    for (const fastening::Choice& choice : book::drawerOf(*book))
        rows.push_back(toolRow(*book, choice));
    const bool any = !rows.empty();
    empty_->setVisible(!any);
    for (QWidget* widget : std::initializer_list<QWidget*>{tools_, standard_, change_, check_})
        widget->setVisible(any);
    for (QPushButton* button : {add_, change_, check_, fine_, tight_})
        button->setEnabled(!workbench().readOnly());
    tools_->show(std::move(rows));
    offerStrike();
    showRecalls();
}

void DrawerView::showRecalls() {
    const auto book = workbench().book();
    QString words;
    for (const book::ToolRecall& recall : book::recallsOf(*book))
        words += recallWords(recall, book->today()) + QLatin1Char('\n');
    auto rows = recallRows(*book);
    recallWords_->setText(words.trimmed());
    recallWords_->setVisible(!words.isEmpty());
    for (QWidget* widget : std::initializer_list<QWidget*>{recall_, fine_, tight_})
        widget->setVisible(!rows.empty());
    recall_->show(std::move(rows));
}

void DrawerView::change() {
    const auto id = tools_->chosenId();
    if (const auto* tool = id ? workbench().book()->ledger().find<fastening::Tool>(ToolId(*id)) : nullptr)
        guide().enter(new ToolForm(workbench(), tool));
}

void DrawerView::check() {
    const auto id = tools_->chosenId();
    if (const auto* tool = id ? workbench().book()->ledger().find<fastening::Tool>(ToolId(*id)) : nullptr)
        guide().enter(new CalibrationForm(workbench(), *tool));
}

// The check that counts today: the last one of the tool that is chosen.
const fastening::Calibration* DrawerView::lastCheck() const {
    const auto id = tools_->chosenId();
    for (const fastening::Choice& choice : book::drawerOf(*workbench().book()))
        if (id == choice.tool->id.value())
            return choice.standing.last;
    return nullptr;
}

void DrawerView::offerStrike() {
    const auto* last = lastCheck();
    strike_->setVisible(last != nullptr && tools_->isVisibleTo(this));
    strike_->setEnabled(!workbench().readOnly());
    if (last != nullptr)
        strike_->setText(
            tr("Strike the check of %1…").arg(dayWords(last->date, workbench().book()->today())));
}

void DrawerView::strikeCheck() {
    if (const auto* last = lastCheck())
        guide().enter({.kind = EntryKind::Strike, .fact = last->id.value()});
}

// The re-check is a follow-up like any other, and is answered like one.
void DrawerView::foundFine() {
    const auto id = recall_->chosenId();
    const auto book = workbench().book();
    const auto* joint = id ? book->joint(JointId(*id)) : nullptr;
    if (joint == nullptr)
        return;
    for (const upkeep::FollowUp& demand : book->followUps(joint->machine))
        if (demand.joint == joint->code && demand.rule.what == book::recheckText(*joint)) {
            const upkeep::FollowUpAnswer answer{.machine = joint->machine,
                                                .origin = demand.origin,
                                                .what = demand.rule.what,
                                                .date = book->today()};
            workbench().perform([answer](const verbs::VerbContext& context) {
                return verbs::answerFollowUp(context, answer);
            });
            return;
        }
    guide().say(tr("%1 needs no re-check any longer").arg(text(joint->name)));
}

void DrawerView::tightened() {
    if (const auto id = recall_->chosenId())
        guide().enter(new MarkForm(workbench(), JointId(*id), fastening::MarkKind::Confirmed));
}

}  // namespace wm::ui
