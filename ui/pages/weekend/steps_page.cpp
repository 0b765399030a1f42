// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/steps_page.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPointer>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "core/verbs/what_if.h"
#include "ui/fields/act_choices.h"
#include "ui/fields/fields_editor.h"
#include "ui/fields/outcome.h"
#include "ui/pages/columns.h"
#include "ui/pages/weekend/step_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

// The list, the chosen step and the keys. What the keys do is in step_actions.cpp.

namespace wm::ui {

namespace {

constexpr int kRestMs = 150;

}  // namespace

StepsPage::StepsPage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      find_(new QLineEdit(this)),
      new_(new QPushButton(tr("New access step (Ins)"), this)),
      empty_(
          new QLabel(tr("No access steps yet. Begin with what everything else stands on: the machine on its "
                        "stand. Then what comes off from there: a wheel, the seat, the tank."),
                     this)),
      list_(new QWidget(this)),
      table_(new RowTable(stepHeaders(), StepName, list_)),
      order_(new RowTable({tr("In this order"), tr("Min")}, 0, list_)),
      side_(new QWidget(this)),
      name_(new QLabel(side_)),
      state_(new QLabel(side_)),
      switch_(new QPushButton(side_)),
      scroll_(new QScrollArea(side_)),
      editor_(new FieldsEditor(stepSheet(), scroll_)),
      outcome_(new Outcome(QStringLiteral("step"), tr("Nothing was changed in this access step."), side_)),
      settle_(new QTimer(this)) {
    settle_->setSingleShot(true);
    settle_->setInterval(kRestMs);
    nameParts();
    layOut();
    connectParts();
    connectKeys();
}

void StepsPage::nameParts() {
    find_->setObjectName(QStringLiteral("stepsFind"));
    find_->setPlaceholderText(tr("find an access step"));
    find_->setAccessibleName(find_->placeholderText());
    find_->setClearButtonEnabled(true);
    new_->setObjectName(QStringLiteral("step-new"));
    empty_->setObjectName(QStringLiteral("steps-empty"));
    empty_->setProperty("role", QStringLiteral("note"));
    empty_->setWordWrap(true);
    table_->setObjectName(QStringLiteral("stepsTable"));
    table_->setAccessibleName(tr("access steps; Enter goes to the fields"));
    order_->setObjectName(QStringLiteral("stepOrder"));
    order_->setAccessibleName(tr("The order of work to reach what lies under this step"));
    order_->setMostLines(RowTable::kAsManyAsItTakes);
    order_->setSortingEnabled(false);
    name_->setObjectName(QStringLiteral("step-title"));
    name_->setProperty("role", QStringLiteral("section"));
    name_->setWordWrap(true);
    state_->setObjectName(QStringLiteral("step-state"));
    state_->setProperty("role", QStringLiteral("note"));
    state_->setWordWrap(true);
    for (auto* label : {name_, state_})
        label->setTextFormat(Qt::PlainText);
    switch_->setObjectName(QStringLiteral("step-switch"));
    switch_->setToolTip(tr("It leaves all plans; what it says stays"));
    scroll_->setObjectName(QStringLiteral("step-scroll"));
    scroll_->setFocusPolicy(Qt::NoFocus);
}

void StepsPage::layOut() {
    scroll_->setWidgetResizable(true);
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setWidget(editor_);
    scroll_->viewport()->setAutoFillBackground(false);
    editor_->setAutoFillBackground(false);
    auto* listLines = linesOf(list_);
    listLines->addWidget(table_, 3);
    listLines->addWidget(order_, 2);
    auto* words = new QVBoxLayout;
    words->setSpacing(2);
    words->addWidget(name_);
    words->addWidget(state_);
    auto* head = new QHBoxLayout;
    head->addLayout(words, 1);
    head->addWidget(switch_, 0, Qt::AlignTop);
    auto* sideLines = linesOf(side_);
    sideLines->addLayout(head);
    sideLines->addWidget(scroll_, 1);
    sideLines->addWidget(outcome_);
    parts_ = columnsOf(this, {{list_, 370}, {side_, 850}});
    auto* top = new QHBoxLayout;
    top->setSpacing(kSpaceLine);
    top->addWidget(find_, 1);
    top->addWidget(new_);
    top->addStretch();
    auto* lines = pageLines(this);
    lines->addLayout(top);
    lines->addWidget(empty_);
    lines->addWidget(parts_, 1);
    lines->addStretch();
}

void StepsPage::connectParts() {
    connect(find_, &QLineEdit::textChanged, table_, &RowTable::filter);
    connect(table_, &RowTable::chosenChanged, this, &StepsPage::showStep);
    connect(table_, &RowTable::activatedId, this, &StepsPage::goToFirst);
    connect(editor_, &FieldsEditor::edited, this, [this] { keep(editor_->draft()); });
    connect(editor_, &FieldsEditor::saveAsked, this, &StepsPage::saveAndReturn);
    connect(editor_, &FieldsEditor::openAsked, this,
            [this](const std::string& /*list*/, const QString& code) { openByCode(code); });
    // Once a fold that was opened for it has its place. The line of the field may be gone by then.
    connect(editor_, &FieldsEditor::wentTo, this, [this](QWidget* field) {
        QTimer::singleShot(0, this, [this, wanted = QPointer<QWidget>(field)] {
            if (wanted && editor_->isAncestorOf(wanted))
                scroll_->ensureWidgetVisible(wanted);
        });
    });
    connect(outcome_, &Outcome::saveAsked, this, &StepsPage::saveAndReturn);
    connect(outcome_, &Outcome::dropAsked, this, &StepsPage::dropDraft);
    connect(switch_, &QPushButton::clicked, this, &StepsPage::switchOnOrOff);
    connect(new_, &QPushButton::clicked, this, &StepsPage::addStep);
    connect(settle_, &QTimer::timeout, this, &StepsPage::foretell);
    connect(&workbench(), &Workbench::fileChanged, this, [this] {
        drafts_.dropAll();
        chosen_.reset();
    });
}

void StepsPage::connectKeys() {
    const auto on = [this](const QKeySequence& keys, QWidget* where, Qt::ShortcutContext context, auto act) {
        auto* shortcut = new QShortcut(keys, where);
        shortcut->setContext(context);
        connect(shortcut, &QShortcut::activated, this, act);
    };
    on(QKeySequence(Qt::Key_Insert), this, Qt::WidgetWithChildrenShortcut, &StepsPage::addStep);
    on(QKeySequence(Qt::ALT | Qt::Key_Insert), this, Qt::WidgetWithChildrenShortcut, &StepsPage::addOrder);
    on(QKeySequence::Save, this, Qt::WidgetWithChildrenShortcut, &StepsPage::saveAndReturn);
    on(QKeySequence(Qt::Key_Delete), table_, Qt::WidgetShortcut, &StepsPage::switchOnOrOff);
}

void StepsPage::aimAt(const Aim& aim) {
    aimed_ = aim.step;
}

QWidget* StepsPage::firstFocus() {
    return parts_->isVisibleTo(this) ? static_cast<QWidget*>(table_) : new_;
}

bool StepsPage::find() {
    find_->setFocus();
    find_->selectAll();
    return true;
}

QStringList StepsPage::unsaved() const {
    return namesOf(drafts_);
}

// Escape in the fields goes back to the list; the window would take it for "all machines".
bool StepsPage::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && side_->isAncestorOf(focusWidget()) &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return Page::event(event);
}

void StepsPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && side_->isAncestorOf(focusWidget()))
        table_->setFocus(Qt::OtherFocusReason);
    else
        Page::keyPressEvent(event);
}

void StepsPage::refresh() {
    showRows();
    if (aimed_) {
        find_->clear();
        table_->choose(aimed_->value());
        aimed_.reset();
    }
    chosen_.reset();  // the choices in the fields may be others now
    showStep();
}

void StepsPage::showRows() {
    const auto chosen = workbench().chosen();
    auto rows = stepRows(*workbench().book(), chosen, drafts_);
    empty_->setVisible(rows.empty());
    find_->setVisible(!rows.empty());
    parts_->setVisible(!rows.empty());
    new_->setEnabled(!workbench().readOnly());
    table_->setColumnHidden(StepMachine, chosen.has_value());
    table_->show(std::move(rows));
}

const weekend::StepVersion* StepsPage::chosenVersion() const {
    const auto id = table_->chosenId();
    if (!id)
        return nullptr;
    if (const auto* begun = drafts_.find(*id))
        return &begun->base;
    return *id > 0 ? book::stepOf(*workbench().book(), StepId(*id)) : nullptr;
}

void StepsPage::showStep() {
    const auto* version = chosenVersion();
    side_->setVisible(version != nullptr);
    order_->setVisible(version != nullptr);
    if (version == nullptr) {
        chosen_.reset();
        return;
    }
    const auto id = table_->chosenId();
    if (id == chosen_)
        return;
    chosen_ = id;
    isBlamed_ = false;
    const auto* begun = drafts_.find(*id);
    editor_->setEnabled(!workbench().readOnly());
    editor_->clearFaults();
    editor_->offer(stepChoices(workbench().book(), *version));
    editor_->show(begun != nullptr ? begun->draft : draftOf(*version));
    showHead();
    foretell();
}

void StepsPage::showHead() {
    const auto book = workbench().book();
    const auto* version = chosenVersion();
    const auto* now = book::stepOf(*book, version->step);
    const auto* machine = book->ledger().find<items::Machine>(version->machine);
    const bool isNew = *chosen_ < 0;
    QString state = machine == nullptr ? QString() : text(machine->name);
    if (isNew)
        state += tr(" · not in the file yet");
    else if (now != nullptr && now->id != version->id)
        state += tr(" · changed in the file since this was begun: saving puts what stands here");
    else
        state += QStringLiteral(" · ") + stepStateWords(*book, *version);
    name_->setText(version->name.empty() ? tr("New access step") : text(version->name));
    state_->setText(state);
    switch_->setText(version->active ? tr("Switch off (Del)") : tr("Switch on (Del)"));
    switch_->setEnabled(!isNew && !workbench().readOnly());
}

void StepsPage::showOrder(const book::Book& book, MachineId machine, const std::string& code,
                          const weekend::Plan* before) {
    const auto plan = book::planOfStep(book, machine, code);
    order_->show(plan ? stepOrderRows(book, machine, *plan, before) : std::vector<TableRow>{});
}

void StepsPage::keep(const Draft& draft) {
    const auto* version = chosenVersion();
    if (version == nullptr)
        return;
    const bool wasBegun = drafts_.find(*chosen_) != nullptr;
    drafts_.keep(*chosen_, weekend::StepVersion(*version), draft);
    if (*chosen_ < 0 || wasBegun != (drafts_.find(*chosen_) != nullptr))
        showRows();
    settle_->start();
}

void StepsPage::foretell() {
    settle_->stop();
    const auto book = workbench().book();
    const auto* chosen = chosenVersion();
    if (chosen == nullptr)
        return;
    const MachineId machine = chosen->machine;
    const auto* begun = drafts_.find(*chosen_);
    if (begun == nullptr) {
        editor_->clearFaults();
        showOrder(*book, machine, chosen->code, nullptr);
        return outcome_->rest();
    }
    const auto version = versionFrom(begun->draft, begun->base, workbench().today());
    if (!version)
        return refuse(begun->draft, version.error());
    const auto seen = verbs::whatIf(
        *book, [&](const verbs::VerbContext& context) { return verbs::saveStep(context, *version); },
        machine);
    if (!seen)
        return refuse(begun->draft, {seen.error()});
    editor_->clearFaults();
    const std::string code = codeOf(begun->base.code, begun->draft);
    const auto effect = book::effectOf(*book, *seen->after, machine, code);
    showOrder(*seen->after, machine, code, effect.alone.now ? &*effect.alone.now : nullptr);
    outcome_->foretell(effectWords(effect));
}

// The plan stays the one of the file. A line that was just begun is blank and needs no reproach yet.
void StepsPage::refuse(const Draft& draft, const Faults& faults) {
    showOrder(*workbench().book(), chosenVersion()->machine, codeOf(chosenVersion()->code, draft), nullptr);
    outcome_->complain(wordsAtField(faults.front()));
    Faults loud = faults;
    if (!isBlamed_)
        std::erase_if(loud, [](const base::Error& fault) { return fault.fault == base::Fault::Empty; });
    editor_->markFaults(loud);
}

}  // namespace wm::ui
