// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/harness/states.h"

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

#include "core/book/expiry.h"
#include "core/book/fitting.h"
#include "core/fastening/danger.h"
#include "core/upkeep/unknown.h"
#include "core/verbs/task_verbs.h"
#include "core/verbs/verbs.h"
#include "ui/entry/entry_form.h"
#include "ui/entry/starters.h"
#include "ui/fields/fields_editor.h"
#include "ui/pages/machine/fitted_view.h"
#include "ui/pages/tasks/task_fields.h"
#include "ui/pages/weekend/step_fields.h"
#include "ui/tables/row_table.h"
#include "ui/words/figures.h"

namespace wm::ui {

namespace {

using fastening::JointVersion;

template <class W>
W& part(QWidget& of, const char* name) {
    auto* found = of.findChild<W*>(QString::fromLatin1(name));
    if (found == nullptr)
        qFatal("%s is not there any more", name);
    return *found;
}

void click(QWidget& on, const char* name) {
    part<QAbstractButton>(on, name).click();
}

void type(QWidget& on, const char* name, const QString& words) {
    auto& field = part<QLineEdit>(on, name);
    field.setText(words);
    emit field.textEdited(words);
    emit field.editingFinished();
}

void choose(QWidget& on, const char* name, int at) {
    auto& box = part<QComboBox>(on, name);
    ASSERT_LT(at, box.count()) << name;
    box.setCurrentIndex(at);
    emit box.activated(at);
}

// The last one of a box: "three times as often", "a new line".
void chooseLast(QWidget& on, const char* name) {
    choose(on, name, part<QComboBox>(on, name).count() - 1);
}

// --- Torque

using IsWanted = std::function<bool(const book::Book& book, const JointVersion& joint)>;

void chooseJoint(Page& page, Garage& garage, const IsWanted& isWanted) {
    garage.workbench().choose(std::nullopt);
    const book::Book& book = garage.book();
    for (const auto* machine : book.machines())
        for (const JointVersion* joint : book.joints(machine->id))
            if (isWanted(book, *joint)) {
                part<RowTable>(page, "torqueJoints").choose(joint->joint.value());
                return;
            }
    ADD_FAILURE() << "no joint of the garage is so";
}

bool isOpen(const book::Book& book, const JointVersion& joint) {
    const auto open = book.handTight(joint.machine);
    return std::any_of(open.begin(), open.end(),
                       [&](const auto& each) { return each.joint->joint == joint.joint; });
}

void showAJointThatIsOpen(Page& page, Garage& garage) {
    chooseJoint(page, garage, isOpen);
}

void showAJointWithItsFigure(Page& page, Garage& garage) {
    chooseJoint(page, garage, [](const book::Book& book, const JointVersion& joint) {
        const auto& marks = book.ledger().all<fastening::JointMark>();
        return joint.torque && std::any_of(marks.begin(), marks.end(),
                                           [&](const auto& mark) { return mark.joint == joint.joint; });
    });
}

void showAGenericBand(Page& page, Garage& garage) {
    chooseJoint(page, garage, [](const book::Book&, const JointVersion& joint) {
        return !joint.torque && !fastening::dangerousKind(joint.kind);
    });
    type(page, "genericThread", QStringLiteral("M8x1.25"));
    chooseLast(page, "genericClass");
}

// --- Tasks

void chooseTask(Page& page, Garage& garage, const std::function<bool(const book::DueLine&)>& isWanted) {
    garage.workbench().choose(std::nullopt);
    for (const auto* machine : garage.book().machines())
        for (const book::DueLine& line : garage.book().due(machine->id))
            if (isWanted(line)) {
                part<RowTable>(page, "tasksTable").choose(line.task->task.value());
                return;
            }
    ADD_FAILURE() << "no task of the garage is so";
}

void showATaskWithoutRecord(Page& page, Garage& garage) {
    chooseTask(page, garage, [](const book::DueLine& line) {
        return line.countdown.noRecord && upkeep::isALook(*line.task);
    });
}

constexpr std::size_t kWidestLine = 6;  ///< fields of a row of one of its lists, at most

// Each field with its fault below it, and one field of each line of a list.
Faults faultsOfAll(const std::vector<GroupSpec>& groups, std::size_t column) {
    constexpr std::size_t kMostLines = 12;
    Faults faults;
    const auto add = [&faults](base::Place place) {
        faults.push_back({base::Fault::TooLarge, std::move(place), "123456", "1000"});
    };
    for (const GroupSpec& group : groups) {
        for (const FieldSpec& field : group.fields)
            add(base::Place(field.name));
        for (const ListSpec& list : group.lists) {
            const auto inRow = std::count_if(list.columns.begin(), list.columns.end(),
                                             [](const FieldSpec& field) { return !field.below; });
            EXPECT_LE(inRow, static_cast<std::ptrdiff_t>(kWidestLine)) << list.name;
            for (std::size_t at = 0; at < kMostLines; ++at)
                for (std::size_t field = column; field < list.columns.size(); field += kWidestLine)
                    add(base::Place(list.columns[field].name).within(list.name, at));
        }
    }
    return faults;
}

// Two lines more in each list, and every field refused.
void refuse(Page& page, const SheetSpec& sheet, std::size_t column) {
    for (const GroupSpec& group : sheet.groups)
        for (const ListSpec& list : group.lists)
            for (int twice = 0; twice < 2; ++twice)
                click(page, qPrintable(QStringLiteral("%1-%2-add").arg(sheet.prefix, text(list.name))));
    // What it would change is said after a pause.
    const QString drop = sheet.prefix + QStringLiteral("-drop");
    ASSERT_TRUE(QTest::qWaitFor([&] { return part<QPushButton>(page, qPrintable(drop)).isEnabled(); }));
    QTest::qWait(200);
    page.findChild<FieldsEditor*>()->showFaults(faultsOfAll(sheet.groups, column));
}

void drop(Page& page, const char* key) {
    page.findChild<FieldsEditor*>()->clearFaults();
    for (auto* fold : page.findChildren<QToolButton*>())
        if (fold->isCheckable() && fold->objectName().contains(QLatin1String("-fold-")))
            fold->setChecked(false);
    click(page, key);
}

// A task that has lines in its lists, and two more in each.
void refuseTheTask(Page& page, Garage& garage, std::size_t column) {
    chooseTask(page, garage, [](const book::DueLine& line) {
        return line.task->triggers.size() > 1 && !line.task->joints.empty() && !line.task->cautions.empty();
    });
    refuse(page, taskSheet(), column);
}

// --- Weekend

void refuseTheStep(Page& page, Garage& garage, std::size_t column) {
    garage.workbench().choose(std::nullopt);
    for (const auto* machine : garage.book().machines())
        for (const auto* step : garage.book().steps(machine->id))
            if (step->edges.size() > 1 && !step->doings.empty() && !step->joints.empty()) {
                part<RowTable>(page, "stepsTable").choose(step->step.value());
                return refuse(page, stepSheet(), column);
            }
    ADD_FAILURE() << "no access step of the garage is so";
}

void markAGroup(Page& page, Garage& garage) {
    for (const auto* machine : garage.book().machines()) {
        garage.workbench().choose(machine->id);
        auto& table = part<RowTable>(page, "baselineTable");
        if (table.shownIds().empty())
            continue;
        table.choose(table.shownIds().front());
        click(page, "baseline-group");
        return;
    }
    ADD_FAILURE() << "every task has its record";
}

void refuseThePercent(Page& page, Garage& garage) {
    garage.workbench().choose(garage.book().machines().front()->id);
    type(page, "adjust-percent", QStringLiteral("123456"));
}

// --- Machine

void supposeALot(Page& page, Garage& garage) {
    garage.workbench().choose(garage.book().machines().front()->id);
    emit page.findChild<FittedView*>()->whatIfAsked();
    chooseLast(page, "what-if-ridden");
    type(page, "what-if-event", QStringLiteral("0"));
}

void supposeNothing(Page& page) {
    type(page, "what-if-event", QString());
    choose(page, "what-if-ridden", 0);
    emit page.findChild<FittedView*>()->whatIfAsked();
}

// --- Shelf

void typeANewLine(Page& page, Garage& /*garage*/) {
    chooseLast(page, "stockWhat");
    type(page, "stockAmount", QStringLiteral("?"));
    emit part<QLineEdit>(page, "stockAmount").returnPressed();
}

void dropTheLine(Page& page) {
    type(page, "stockAmount", QString());
    choose(page, "stockWhat", 0);
}

// --- A machine more, of the make, model and year of the first: nothing is known of it.

// The schedule said it otherwise when the machine took it over: the way with the oil, minutes of a step.
void takeOlderWords(Page& page, Garage& garage) {
    for (const exchange::Starter& starter : starters())
        for (const auto* machine : garage.book().machines()) {
            if (machine->starter != starter.name)
                continue;
            definitions::Schedule older{starter.steps, starter.joints, starter.tasks};
            for (upkeep::TaskVersion& task : older.tasks)
                task.howTo += task.code == "engine-oil" ? " Let it drip." : "";
            for (weekend::StepVersion& step : older.steps)
                step.off += units::Minutes{step.code == "seat-off" ? 5 : 0};
            for (const auto group : {definitions::RenewalGroup::Order, definitions::RenewalGroup::Words})
                garage.say([&](const verbs::VerbContext& context) {
                    return verbs::renewSchedule(context, machine->id, older, group);
                });
            garage.workbench().choose(machine->id);
            return page.refresh();
        }
}

void bringATwin(Page& /*page*/, Garage& garage) {
    const items::Machine& first = *garage.book().machines().front();
    items::Machine twin;
    twin.name = first.name + " 2";
    twin.maker = first.maker;
    twin.model = first.model;
    twin.year = first.year;
    twin.since = garage.book().today();
    twin.startedNew = true;
    twin.pastHigh = units::Hours{};
    garage.say([twin](const verbs::VerbContext& context) { return verbs::saveMachine(context, twin); });
    for (const auto* machine : garage.book().machines())
        if (machine->name == twin.name)
            garage.workbench().choose(machine->id);
    ASSERT_TRUE(garage.workbench().chosen());
}

// The figure of a joint is said to hold for the twin as well.
JointVersion share(Garage& garage) {
    const items::Machine& first = *garage.book().machines().front();
    JointVersion joint;
    for (const JointVersion* each : garage.book().joints(first.id))
        if (each->torque)
            joint = *each;
    EXPECT_TRUE(joint.torque && first.year);
    if (!joint.sharedFrom) {
        joint.sharedFrom = joint.sharedTo = first.year;
        joint.validFrom = garage.book().today();
        garage.say([joint](const verbs::VerbContext& context) { return verbs::saveJoint(context, joint); });
    }
    return joint;
}

void showASharedJoint(Page& page, Garage& garage) {
    const JointVersion joint = share(garage);
    garage.workbench().choose(joint.machine);
    part<RowTable>(page, "torqueJoints").choose(joint.joint.value());
}

// The same figure, found on another page.
void typeASharedRow(Page& page, Garage& garage) {
    const JointVersion joint = share(garage);
    garage.workbench().choose(joint.machine);
    QStringList cells{text(joint.name)};
    for (int column = 1; column < 12; ++column)
        cells << (column == 9 ? QStringLiteral("9-99") : QString());
    cells[3] = text(joint.torque->text());
    QApplication::clipboard()->setText(cells.join(QLatin1Char('\t')));
    click(page, "chartPaste");
}

}  // namespace

std::vector<PageState> pageStates() {
    const auto nothing = [](Page&, Garage&) {};
    const auto press = [](const char* name) { return [name](Page& page) { click(page, name); }; };
    std::vector<PageState> states{
        {PageId::Torque, "TorquePage", "open", showAJointThatIsOpen},
        {PageId::Torque, "TorquePage", "with its figure", showAJointWithItsFigure},
        {PageId::Torque, "TorquePage", "generic", showAGenericBand},
        {PageId::Tasks, "TasksPage", "no record", showATaskWithoutRecord},
        {PageId::Tasks, "BaselineView", "a group marked", markAGroup},
        {PageId::Tasks, "AdjustView", "refused", refuseThePercent, press("adjust-clear")},
        {PageId::Machine, nullptr, "supposed", supposeALot, supposeNothing},
        {PageId::Shelf, nullptr, "a new line", typeANewLine, dropTheLine},
        {PageId::Tasks, "RenewView", "older words", takeOlderWords},
        {PageId::Tasks, "TasksPage", "no schedule", bringATwin},
        {PageId::Machine, nullptr, "no history", nothing},
        {PageId::Weekend, "StepsPage", "no steps", nothing},
        {PageId::Torque, "TorquePage", "no joints", nothing},
        {PageId::Torque, "TorquePage", "shared", showASharedJoint},
        {PageId::Torque, "ChartView", "shared", typeASharedRow, press("chartClear")},
    };
    for (std::size_t column = 0; column < kWidestLine; ++column) {
        const QString name = QStringLiteral("refused %1").arg(column);
        states.insert(states.begin(),
                      {PageId::Tasks, "TasksPage", name,
                       [column](Page& page, Garage& garage) { refuseTheTask(page, garage, column); },
                       [](Page& page) { drop(page, "task-drop"); }});
        states.insert(states.begin(),
                      {PageId::Weekend, "StepsPage", name,
                       [column](Page& page, Garage& garage) { refuseTheStep(page, garage, column); },
                       [](Page& page) { drop(page, "step-drop"); }});
    }
    return states;
}

EntryRequest aWornItemAgain(Garage& garage) {
    for (const auto* machine : garage.book().machines())
        for (const book::DueLine& line : garage.book().due(machine->id)) {
            if (!line.item || book::expiriesOf(garage.book(), *line.item).empty())
                continue;
            items::Move off;
            off.item = *line.item;
            off.date = garage.book().today();
            off.part = calendar::DayPart::BeforeRiding;
            off.kind = items::MoveKind::Removed;
            EntryRequest request;
            request.kind = EntryKind::Fit;
            request.machine = machine->id;
            request.position = text(line.task->position);
            request.item = off.item;
            garage.say([off](const verbs::VerbContext& context) { return verbs::moveItem(context, off); });
            return request;
        }
    ADD_FAILURE() << "no item has a life that ends";
    return {};
}

EntryRequest aPlaceThatIsTaken(const book::Book& book) {
    const calendar::Moment now{book.today()};
    for (const auto* machine : book.machines())
        for (const auto& [position, item] : book.fittings().on(machine->id, now))
            for (const auto& fitting :
                 book::whatFits(book, {.date = book.today(), .machine = machine->id, .position = position}))
                if (fitting.lies == items::MoveKind::Removed) {
                    EntryRequest request;
                    request.kind = EntryKind::Fit;
                    request.machine = machine->id;
                    request.position = text(position);
                    request.item = fitting.item->id;
                    return request;
                }
    ADD_FAILURE() << "nothing lies there that fits where something sits";
    return {};
}

void sendAway(EntryForm& form) {
    auto* to = form.findChild<QComboBox*>(QStringLiteral("kind"));
    ASSERT_NE(to, nullptr);
    to->setCurrentIndex(1);
}

void replaceTheMeter(EntryForm& form) {
    choose(form, "event", 1);
}

}  // namespace wm::ui
