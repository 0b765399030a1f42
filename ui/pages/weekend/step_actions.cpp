// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QLineEdit>
#include <QTimer>

#include "core/verbs/verbs.h"
#include "ui/fields/fields_editor.h"
#include "ui/fields/outcome.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/weekend/step_rows.h"
#include "ui/pages/weekend/steps_page.h"
#include "ui/tables/row_table.h"
#include "ui/words/apply_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

// What the keys of the page do: save, add, switch off, go to a step.

namespace wm::ui {

namespace {

std::optional<std::int64_t> stepIn(const picture::Change& change) {
    for (const picture::Row& row : change.rows)
        if (const auto* version = std::get_if<weekend::StepVersion>(&row))
            return version->step.value();
    return std::nullopt;
}

// A code is made from the name, and is no field of its own.
base::Error atTheName(base::Error fault) {
    if (fault.field == base::Place("code"))
        fault.field = base::Place("name");
    return fault;
}

}  // namespace

bool StepsPage::save() {
    const auto* begun = chosen_ ? drafts_.find(*chosen_) : nullptr;
    if (begun == nullptr || workbench().readOnly())
        return false;
    const std::int64_t id = *chosen_;
    const auto version = versionFrom(begun->draft, begun->base, workbench().today());
    const auto refused = [this](const Faults& faults) {
        settle_->stop();
        isBlamed_ = true;
        outcome_->complain(wordsAtField(faults.front()));
        editor_->showFaults(faults);
        return false;
    };
    if (!version)
        return refused(version.error());
    const auto written = workbench().attempt([version = *version](const verbs::VerbContext& context) {
        return verbs::saveStep(context, version);
    });
    if (!written && written.error().kind == store::ApplyError::Kind::Refused)
        return refused({atTheName(written.error().error)});
    if (!written) {
        outcome_->complain(wordsFor(written.error()));
        return false;
    }
    drafts_.drop(id);
    refresh();
    if (const auto saved = stepIn(*written))
        table_->choose(*saved);
    return true;
}

// Back at the list Ctrl+Z takes the change back, which in a field would take back letters.
void StepsPage::saveAndReturn() {
    if (save())
        table_->setFocus(Qt::OtherFocusReason);
}

void StepsPage::dropDraft() {
    if (!chosen_)
        return;
    drafts_.drop(*chosen_);
    refresh();
    firstFocus()->setFocus(Qt::OtherFocusReason);
}

void StepsPage::addStep() {
    const auto book = workbench().book();
    if (workbench().readOnly() || book->machines().empty())
        return;
    const auto* beside = chosenVersion();
    weekend::StepVersion blank;
    blank.machine = workbench().chosen() ? *workbench().chosen()
                    : beside != nullptr  ? beside->machine
                                         : book->machines().front()->id;
    const auto id = drafts_.addNew(blank);
    find_->clear();
    refresh();
    table_->choose(id);
    editor_->goTo("name");
}

void StepsPage::switchOnOrOff() {
    if (!chosen_ || *chosen_ < 0 || workbench().readOnly())
        return;
    Draft draft = editor_->draft();
    QString& active = draft.fields["active"];
    active = active.isEmpty() ? kTicked : QString();
    editor_->show(draft);
    keep(draft);
    foretell();
    outcome_->focusSave();
}

// What stands in the fields of the step that is left waits with it.
void StepsPage::openByCode(const QString& code) {
    const auto* version = chosenVersion();
    const auto* step =
        version == nullptr ? nullptr : workbench().book()->step(version->machine, code.toStdString());
    if (step == nullptr)
        return guide().say(tr("There is no access step of that name here."));
    find_->clear();
    table_->choose(step->step.value());
    table_->setFocus(Qt::OtherFocusReason);
}

void StepsPage::addOrder() {
    if (chosen_ && !workbench().readOnly())
        editor_->addLine("edges");
}

// The order of work is what is changed most.
void StepsPage::goToFirst() {
    const auto* version = chosenVersion();
    if (version != nullptr)
        editor_->goTo(version->edges.empty() ? base::Place("name")
                                             : base::Place("earlier_code").within("edges", 0));
}

}  // namespace wm::ui
