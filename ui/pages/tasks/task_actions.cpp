// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/definitions/confirming.h"
#include "core/verbs/verbs.h"
#include "ui/entry/starters.h"
#include "ui/fields/fields_editor.h"
#include "ui/fields/outcome.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/tasks/tasks_page.h"
#include "ui/tables/row_table.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

#include <QTimer>

// What the keys of the page do: save, add, copy, switch off, confirm, begin a count.

namespace wm::ui {

namespace {

// A starter schedule's word for a figure that no manual stands behind.
constexpr const char* kCommonPractice = "common practice";

std::optional<std::int64_t> taskIn(const picture::Change& change) {
    for (const picture::Row& row : change.rows)
        if (const auto* version = std::get_if<upkeep::TaskVersion>(&row))
            return version->task.value();
    return std::nullopt;
}

}  // namespace

// A machine that came without a schedule begins with one; undo takes all of it back at once.
void TasksPage::begin(const exchange::Starter& starter) {
    const auto machine = machineShown(workbench());
    const auto* card = machine ? workbench().book()->ledger().find<items::Machine>(*machine) : nullptr;
    if (card == nullptr || !workbench().perform(beginSchedule(card->name, starter)))
        return;
    refresh();
    table_->setFocus(Qt::OtherFocusReason);
}

bool TasksPage::save() {
    const auto* begun = chosen_ ? drafts_.find(*chosen_) : nullptr;
    if (begun == nullptr || workbench().readOnly())
        return false;
    const std::int64_t id = *chosen_;
    const auto version = versionFrom(begun->draft, begun->base, workbench().today());
    const auto refused = [this](const Faults& faults) {
        settle_->stop();
        outcome_->complain(wordsAtField(faults.front()));
        editor_->showFaults(faults);
        return false;
    };
    if (!version)
        return refused(version.error());
    const auto written = workbench().attempt([version = *version](const verbs::VerbContext& context) {
        return verbs::saveTask(context, version);
    });
    if (!written && written.error().kind == store::ApplyError::Kind::Refused)
        return refused({written.error().error});
    if (!written) {
        outcome_->complain(wordsFor(written.error()));
        return false;
    }
    drafts_.drop(id);
    refresh();
    if (const auto saved = taskIn(*written))
        table_->choose(*saved);
    return true;
}

// Back at the table Ctrl+Z takes the change back, which in a field would take back letters.
void TasksPage::saveAndReturn() {
    if (save())
        table_->setFocus(Qt::OtherFocusReason);
}

void TasksPage::dropDraft() {
    if (!chosen_)
        return;
    drafts_.drop(*chosen_);
    refresh();
    table_->setFocus(Qt::OtherFocusReason);
}

void TasksPage::addTask() {
    const auto book = workbench().book();
    if (workbench().readOnly() || book->machines().empty())
        return;
    const auto* beside = chosenVersion();
    upkeep::TaskVersion blank;
    blank.machine = workbench().chosen() ? *workbench().chosen()
                    : beside != nullptr  ? beside->machine
                                         : book->machines().front()->id;
    blank.limits = {{}};
    const auto id = drafts_.addNew(blank);
    find_->clear();
    refresh();
    table_->choose(id);
    editor_->goTo("name");
}

void TasksPage::copyTo(MachineId machine) {
    const auto* version = chosenVersion();
    if (version == nullptr)
        return;
    const auto book = workbench().book();
    const auto tasks = book->tasks(machine);
    const auto same = std::find_if(tasks.begin(), tasks.end(),
                                   [&](const auto* task) { return task->code == version->code; });
    if (same != tasks.end()) {
        guide().say(tr("The other machine has this task already: %1.").arg(text((*same)->name)));
        return;
    }
    const auto id = drafts_.addNew(copiedTo(*book, *version, machine));
    find_->clear();
    if (workbench().chosen())
        workbench().choose(machine);
    refresh();
    table_->choose(id);
    editor_->goTo(base::Place("every").within("limits", 0));
}

// What stands in the fields of the task waits here meanwhile.
void TasksPage::openStep(const QString& code) {
    const auto* version = chosenVersion();
    const auto* step =
        version == nullptr ? nullptr : workbench().book()->step(version->machine, code.toStdString());
    if (step != nullptr)
        guide().goTo(PageId::Weekend,
                     {.view = Aim::View::Steps, .machine = version->machine, .step = step->step});
}

void TasksPage::switchOnOrOff() {
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

std::optional<std::int64_t> TasksPage::nextUnconfirmed() const {
    const auto ids = table_->shownIds();
    const auto here = std::find(ids.begin(), ids.end(), chosen_.value_or(0));
    std::vector<std::int64_t> round(here == ids.end() ? ids.begin() : here + 1, ids.end());
    round.insert(round.end(), ids.begin(), here);
    for (const std::int64_t id : round) {
        const auto* task = id > 0 ? workbench().book()->task(TaskId(id)) : nullptr;
        if (task != nullptr && task->active && !task->confirmed)
            return id;
    }
    return std::nullopt;
}

// A figure that nobody has read in a manual so far was read in this machine's manual now; on which page, only
// the mechanic can say.
bool TasksPage::needsPage() {
    Draft draft = editor_->draft();
    QString& source = draft.fields["source"];
    const auto* version = chosenVersion();
    if (source.trimmed().isEmpty() || source.trimmed().endsWith(QLatin1String(kCommonPractice)))
        source = text(definitions::manualOf(*workbench().book(), version->machine));
    const bool blank = draft.fields["page"].trimmed().isEmpty();
    if (!blank)
        draft.fields["confirmed"] = kTicked;
    editor_->show(draft);
    keep(draft);
    if (blank)
        editor_->showFaults({{base::Fault::Empty, "page", {}, {}}});
    return blank;
}

void TasksPage::confirm() {
    const auto* version = chosenVersion();
    if (version == nullptr || *chosen_ < 0 || workbench().readOnly())
        return;
    const auto next = nextUnconfirmed();
    const bool untouched = drafts_.find(*chosen_) == nullptr;
    if (version->confirmed && untouched)
        return goOn(next);
    if (!needsPage() && save())
        goOn(next);
}

void TasksPage::goOn(std::optional<std::int64_t> next) {
    if (!next) {
        table_->setFocus(Qt::OtherFocusReason);
        return guide().say(tr("Every figure here is confirmed."));
    }
    table_->choose(*next);
    editor_->goTo("page");
}

void TasksPage::beginCount(const QString& note) {
    const auto* line = chosenLine();
    if (line == nullptr)
        return;
    guide().enter({.kind = EntryKind::Job,
                   .machine = line->machine,
                   .task = line->task->task,
                   .how = upkeep::RecordKind::Baseline,
                   .note = note});
}

void TasksPage::recordLookedFine() {
    const auto* line = chosenLine();
    if (line == nullptr)
        return;
    verbs::JobDraft draft;
    draft.record.machine = line->machine;
    draft.record.task = line->task->task;
    draft.record.date = workbench().today();
    draft.record.kind = upkeep::RecordKind::LookedFine;
    draft.opensJoints = false;
    if (workbench().perform(
            [draft](const verbs::VerbContext& context) { return verbs::recordJob(context, draft); }))
        table_->setFocus(Qt::OtherFocusReason);
}

}  // namespace wm::ui
