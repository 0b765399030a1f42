// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/job_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>
#include <utility>

#include "core/book/joint_owners.h"
#include "core/upkeep/measures.h"
#include "ui/entry/last_used.h"
#include "ui/entry/tool_names.h"
#include "ui/entry/used_parts.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using upkeep::RecordKind;

namespace {

constexpr std::int64_t kMostMinutes = 10'000;

std::vector<std::string> openingOf(const book::Book& book, const upkeep::TaskVersion& task) {
    std::vector<std::string> wanted;
    for (const auto& step : task.steps)
        wanted.push_back(step.code);
    const auto steps = book.steps(task.machine);
    const auto opening = weekend::opening(steps, wanted);
    if (!opening)
        return wanted;
    std::vector<std::string> codes;
    for (const auto* step : *opening)
        codes.push_back(step->code);
    return codes;
}

QString lastWords(const book::Book& book, TaskId task, const std::string& measure) {
    const auto last = book.lastMeasured(task, measure, 1);
    return last.empty() ? QString() : tr("last %1").arg(text(last.front().second->value.text(decimalMark())));
}

std::vector<std::string> stepCodes(const upkeep::Record& record) {
    std::vector<std::string> codes;
    for (const base::Code& step : record.steps)
        codes.push_back(step.code);
    return codes;
}

using Joints = std::vector<const fastening::JointVersion*>;
Joints withConfirmed(const book::Book& book, Joints joints, const std::vector<JointId>& confirmed) {
    for (const JointId each : confirmed) {
        const auto* joint = book.joint(each);
        if (joint != nullptr && std::find(joints.begin(), joints.end(), joint) == joints.end())
            joints.push_back(joint);
    }
    return joints;
}

// The containers that the same amounts were taken from before.
void keepLots(const std::vector<upkeep::Use>& before, std::vector<upkeep::Use>& uses) {
    for (auto& use : uses)
        for (const auto& old : before)
            if (!use.lot && use.line == old.line && use.amount == old.amount)
                use.lot = old.lot;
}

}  // namespace

JobForm::JobForm(Workbench& workbench, const EntryRequest& request) : EntryForm(workbench, tr("job done")) {
    machine_ = addMachine(request.machine ? request.machine : lastMachine(book()));
    task_ = addSuggested(QStringLiteral("task"), tr("task or snag"), QString(), {}, 30);
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    meter_ = addText(QStringLiteral("meter"), tr("meter"), QString(), 8);
    kind_ = addChoice(QStringLiteral("kind"), tr("how"),
                      {{RecordKind::Done, tr("done")},
                       {RecordKind::LookedFine, tr("looked fine")},
                       {RecordKind::Baseline, tr("done before, by word")}},
                      RecordKind::Done);
    uses_ = addText(QStringLiteral("uses"), tr("parts and fluids used"), QString(), 34);
    minutes_ = addText(QStringLiteral("minutes"), tr("minutes"), QString(), 5);
    by_ = addPerson(QStringLiteral("by"), tr("by"), lastMechanic(book()));
    note_ = addText(QStringLiteral("note"), tr("note"), QString(), 20);
    startAt(task_);
    connect(machine_, &QComboBox::currentIndexChanged, this, &JobForm::followMachine);
    connect(task_, &QLineEdit::textChanged, this, &JobForm::followTask);
    connect(date_, &QLineEdit::textChanged, this, &JobForm::followDay);
    followMachine();
    if (request.task)
        if (const auto* task = book().task(*request.task)) {
            task_->setText(text(task->name));
            startAt(uses_);
        }
    if (request.snag)
        if (const auto* snag = book().ledger().find<upkeep::Snag>(*request.snag)) {
            task_->setText(text(snag->what));
            startAt(uses_);
        }
    if (request.how) {
        chooseIn(*kind_, *request.how);
        note_->setText(request.note);
        startAt(date_);
    }
    if (request.corrects)
        if (const auto draft = verbs::draftOf(book().ledger(), RecordId{*request.corrects}))
            fill(*draft);
}

void JobForm::fill(const verbs::JobDraft& draft) {
    const auto& record = draft.record;
    corrected_ = draft;
    correctedName_ = text(record.what);
    if (record.task)
        if (const auto* task = book().task(*record.task))
            correctedName_ = text(task->name);
    if (record.snag)
        if (const auto* snag = book().ledger().find<upkeep::Snag>(*record.snag))
            correctedName_ = text(snag->what);
    correctedName_ = correctedName_.simplified();
    chooseIn(*machine_, record.machine);
    task_->setText(correctedName_);
    date_->setText(text(record.date.iso()));
    chooseIn(*kind_, record.kind);
    minutes_->setText(record.minutes ? QString::number(record.minutes->count()) : QString());
    note_->setText(text(record.note));
    const auto* person = record.by ? book().ledger().find<items::Person>(*record.by) : nullptr;
    by_->setText(person != nullptr ? text(person->name) : QString());
    meter_->setText(record.meter ? text(units::hoursText(*record.meter, decimalMark())) : QString());
    uses_->setText(usesText(book(), record.uses));
    // What was noted is not to be filled in by the form again when the day or the task changes.
    meter_->setModified(true);
    uses_->setModified(true);
    const auto* tool = draft.tool ? book().ledger().find<fastening::Tool>(*draft.tool) : nullptr;
    if (tool_ != nullptr && tool != nullptr)
        tool_->setText(text(tool->name));
    for (const auto& [joint, tick] : joints_)
        tick->setChecked(std::count(draft.confirmed.begin(), draft.confirmed.end(), joint) > 0);
    if (extra_ != nullptr)
        extra_->setChecked(record.extraDone);
    for (auto* field : measures_)
        for (const auto& measured : record.measured)
            if (text(measured.name) == field->property("measure").toString())
                field->setText(text(measured.value.text(decimalMark())));
}

QStringList JobForm::jobNames() const {
    QStringList names;
    const auto machine = machineIn(machine_);
    if (!machine)
        return names;
    for (const auto* task : book().tasks(*machine))
        names << text(task->name);
    for (const auto& snag : book().snags(*machine))
        names << text(snag.snag->what);
    return names;
}

void JobForm::followMachine() {
    suggest(task_, jobNames());
    followDay();
    followTask();
}

void JobForm::followDay() {
    if (meter_->isModified())
        return;
    const auto machine = machineIn(machine_);
    const auto day = dayIn(date_, Lean::Past);
    const auto shown = machine && day && *day == book().today() ? book().meterNow(*machine) : std::nullopt;
    meter_->setPlaceholderText(shown ? tr("was %1").arg(text(units::hoursText(*shown, decimalMark())))
                                     : QString());
}

const upkeep::TaskVersion* JobForm::taskTyped() const {
    const auto machine = machineIn(machine_);
    const QString name = task_->text().simplified();
    if (!machine || name.isEmpty())
        return nullptr;
    const upkeep::TaskVersion* partly = nullptr;
    int matches = 0;
    for (const auto* task : book().tasks(*machine)) {
        if (text(task->name).compare(name, Qt::CaseInsensitive) == 0)
            return task;
        if (text(task->name).contains(name, Qt::CaseInsensitive)) {
            partly = task;
            ++matches;
        }
    }
    return matches == 1 && name.size() >= 3 ? partly : nullptr;
}

const upkeep::Snag* JobForm::snagTyped() const {
    const auto machine = machineIn(machine_);
    if (!machine)
        return nullptr;
    for (const auto& open : book().snags(*machine))
        if (text(open.snag->what).compare(task_->text().simplified(), Qt::CaseInsensitive) == 0)
            return open.snag;
    return nullptr;
}

const verbs::JobDraft* JobForm::sameJob() const {
    const bool isSame = corrected_ && machineIn(machine_) == corrected_->record.machine &&
                        task_->text().simplified() == correctedName_;
    return isSame ? &*corrected_ : nullptr;
}

void JobForm::followTask() {
    const auto* task = taskTyped();
    if (task != nullptr && asksFor_ == task->task)
        return;
    forgetTask();
    if (task != nullptr)
        askFor(*task);
}

void JobForm::forgetTask() {
    for (auto* field : std::exchange(measures_, {}))
        remove(field);
    for (const auto& [joint, tick] : std::exchange(joints_, {}))
        remove(tick);
    if (extra_ != nullptr)
        remove(std::exchange(extra_, nullptr));
    if (sends_ != nullptr) {
        remove(std::exchange(sends_, nullptr));
        remove(std::exchange(where_, nullptr));
        remove(std::exchange(back_, nullptr));
    }
    if (tool_ != nullptr)
        remove(std::exchange(tool_, nullptr));
    steps_.clear();
    asksFor_.reset();
    if (says_ != nullptr)
        remove(std::exchange(says_, nullptr));
    uses_->setPlaceholderText(QString());
    if (!uses_->isModified())
        uses_->clear();
}

void JobForm::askFor(const upkeep::TaskVersion& task) {
    asksFor_ = task.task;
    if (!uses_->isModified()) {
        uses_->setText(kitText(book(), task));
        uses_->setCursorPosition(0);
        uses_->setPlaceholderText(untiedKitText(task));
    }
    const auto* again = sameJob();
    steps_ = again != nullptr ? stepCodes(again->record) : openingOf(book(), task);
    for (const auto& point : task.measures) {
        const QString name = text(point.name);
        const QString unit = point.unit.empty() ? QString() : QStringLiteral(", ") + text(point.unit);
        auto* field = addText(QStringLiteral("measured"), name + unit, QString(), 8);
        field->setProperty("measure", name);
        field->setPlaceholderText(lastWords(book(), task.task, point.name));
        measures_.push_back(field);
    }
    const auto* due = book().dueLine(task.task);
    const bool hadExtra = again != nullptr && again->record.extraDone;
    if (((due != nullptr && due->countdown.extraDue()) || hadExtra) && !task.extra.empty())
        extra_ = addTick(QStringLiteral("extraDone"), tr("also done: %1").arg(text(task.extra)), false);
    askWhere(task);
    auto opened = book::jointsToTorque(
        book(), task, steps_,
        {dayIn(date_, Lean::Past).value_or(book().today()), calendar::DayPart::AfterRiding});
    if (again != nullptr)
        opened = withConfirmed(book(), std::move(opened), again->confirmed);
    if (!opened.empty())
        says_ = addCaption(tr("torqued and marked (else hand-tight):"));
    for (const auto* joint : opened)
        joints_.emplace_back(joint->joint, addTick(QStringLiteral("torqued"), text(joint->name), false));
    const QStringList tools = toolNames(book());
    if (!opened.empty() && !tools.isEmpty())
        tool_ = addSuggested(QStringLiteral("tool"), tr("all of these with"), QString(), tools, 14);
}

// A job that sends something out ends with it away: that is the first thing to say of it.
void JobForm::askWhere(const upkeep::TaskVersion& task) {
    const auto* again = sameJob();
    const bool wasSent = again != nullptr && again->sends.has_value();
    if (!task.sendsOut && !wasSent)
        return;
    sends_ = addTick(QStringLiteral("sends"), tr("it is away now"), wasSent || again == nullptr);
    where_ = addText(QStringLiteral("where"), tr("at which workshop"), QString(), 18);
    back_ = addDay(QStringLiteral("back_on"), tr("back on"), QString(), Lean::Future);
    if (!wasSent)
        return;
    where_->setText(text(again->sends->where));
    if (again->sends->backOn)
        back_->setText(text(again->sends->backOn->iso()));
}

void JobForm::readSending(Answers& read, verbs::JobDraft& draft) const {
    draft.sends.reset();
    if (sends_ == nullptr || !sends_->isChecked() || draft.record.kind != RecordKind::Done)
        return;
    draft.sends = verbs::Sending{.where = typed(where_)};
    draft.sends->backOn = read(dayOrNothingIn(back_, Lean::Future));
}

// A measurement of the job that is put right stays where the task has no field for it any more.
void JobForm::readMeasures(Answers& read, upkeep::Record& record) const {
    const auto* task = asksFor_ ? book().task(*asksFor_) : nullptr;
    for (const auto* field : measures_) {
        const std::string name = field->property("measure").toString().toStdString();
        const auto noted = std::find_if(record.measured.begin(), record.measured.end(),
                                        [&](const auto& each) { return each.name == name; });
        if (typed(field).empty() || task == nullptr) {
            if (noted != record.measured.end())
                record.measured.erase(noted);
            continue;
        }
        const auto value = read(units::parseDecimal("measured", typed(field)));
        if (noted != record.measured.end())
            noted->value = value;
        else if (const auto* point = upkeep::pointNamed(*task, name))
            record.measured.push_back({point->name, point->unit, value});
    }
}

// What an earlier job asked to have done again is settled by doing it.
void JobForm::readAnswers(verbs::JobDraft& draft) const {
    const auto* task = draft.record.task ? book().task(*draft.record.task) : nullptr;
    if (task == nullptr)
        return;
    for (const auto& follow : book().followUps(draft.record.machine))
        if (!follow.rule.code.empty() && follow.rule.code == task->code)
            draft.answers.emplace_back(follow.origin, follow.rule.what);
}

// Which job it was: the one that is put right, a task, or an open snag.
void JobForm::readSubject(Answers& read, verbs::JobDraft& draft) const {
    auto& record = draft.record;
    if (sameJob() != nullptr)
        return;
    if (const auto* task = taskTyped())
        record.task = task->task;
    else if (const auto* snag = snagTyped())
        record.snag = snag->id;
    else if (typed(task_).empty())
        read.fault({base::Fault::Empty, "task", {}, {}});
    else
        read.fault({base::Fault::Unknown, "task", typed(task_),
                    "a task or an open snag of this machine; F4 notes a new snag"});
    record.what = record.snag ? typed(task_) : std::string();
}

tl::expected<store::Verb, Faults> JobForm::verb() {
    Answers read;
    const auto* again = sameJob();
    auto draft = again != nullptr ? *again : verbs::JobDraft{};
    draft.notesMeter = corrected_ && corrected_->notesMeter;
    auto& record = draft.record;
    record.machine = read(needMachineIn(machine_));
    readSubject(read, draft);
    record.date = read(dayIn(date_, Lean::Past));
    record.meter = read(hoursIn(meter_));
    record.kind = chosenOf<RecordKind>(*kind_);
    record.uses = read(parseUses(book(), uses_->text()));
    record.minutes = std::nullopt;
    if (const auto minutes = read(countIn(minutes_, kMostMinutes)); minutes > 0)
        record.minutes = units::Minutes{minutes};
    record.by = read(personIn(by_));
    record.note = typed(note_);
    readMeasures(read, record);
    record.extraDone = extra_ != nullptr && extra_->isChecked();
    const bool openedNone = again != nullptr && !again->opensJoints && again->record.kind == record.kind;
    draft.opensJoints = record.kind == RecordKind::Done && !openedNone;
    if (again != nullptr)
        keepLots(again->record.uses, record.uses);
    else if (draft.opensJoints)
        for (const auto& step : steps_)
            record.steps.push_back({step});
    draft.confirmed.clear();
    for (const auto& [joint, tick] : joints_)
        if (tick->isChecked())
            draft.confirmed.push_back(joint);
    draft.tool.reset();
    if (tool_ != nullptr && !draft.confirmed.empty())
        draft.tool = read(toolNamed(book(), tool_->text()));
    readSending(read, draft);
    if (again == nullptr)
        readAnswers(draft);
    return std::move(read).answer(
        [draft](const verbs::VerbContext& context) { return verbs::recordJob(context, draft); });
}

}  // namespace wm::ui
