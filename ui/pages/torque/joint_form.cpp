// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/joint_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>
#include <set>
#include <string>
#include <utility>

#include "core/definitions/confirming.h"
#include "core/fastening/plausible.h"
#include "core/fastening/stages.h"
#include "core/units/unit_words.h"
#include "core/verbs/confirm_verb.h"
#include "core/verbs/verbs.h"
#include "ui/entry/choice.h"
#include "ui/pages/columns.h"
#include "ui/pages/torque/confirm_rows.h"
#include "ui/pages/torque/holds.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"
#include "ui/words/doubt_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

QString figureText(const std::optional<units::Decimal>& value) {
    return value ? QString::fromStdString(value->text(decimalMark())) : QString();
}

QString torqueText(const units::Decimal& value, units::TorqueUnit unit) {
    const auto name = base::nameOf(unit);
    return figureText(value) + QChar(0x00A0) +
           QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

}  // namespace

JointForm::JointForm(Workbench& workbench, QWidget* parent)
    : QWidget(parent),
      workbench_(workbench),
      low_(captionedField(this, QStringLiteral("jointTorque"), tr("torque"), 9)),
      high_(captionedField(this, QStringLiteral("jointTorqueHigh"), tr("up to"), 9)),
      unit_(new QComboBox(this)),
      source_(captionedField(this, QStringLiteral("jointSource"), tr("manual"), 0)),
      page_(captionedField(this, QStringLiteral("jointPage"), tr("page"), 8)),
      confirmed_(new QCheckBox(tr("confirmed against the manual"), this)),
      place_(new QComboBox(this)),
      holds_(new QWidget(this)),
      sharing_(new QComboBox(holds_)),
      problem_(new QLabel(this)) {
    unit_->setObjectName(QStringLiteral("jointUnit"));
    unit_->setAccessibleName(tr("Unit as printed"));
    addChoices(*unit_, eachOf<units::TorqueUnit>(
                           [](units::TorqueUnit unit) { return text(std::string(base::nameOf(unit))); }));
    confirmed_->setObjectName(QStringLiteral("jointConfirmed"));
    place_->setObjectName(QStringLiteral("jointPosition"));
    place_->setAccessibleName(tr("What the joint sits in, and goes with"));
    place_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    sharing_->setObjectName(QStringLiteral("jointSharing"));
    sharing_->setAccessibleName(tr("For which machines the figure holds"));
    sharing_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    problem_->setObjectName(QStringLiteral("jointProblem"));
    problem_->setTextFormat(Qt::PlainText);
    problem_->setWordWrap(true);
    layOut();
    for (QLineEdit* edit : {low_, high_, source_, page_})
        connect(edit, &QLineEdit::returnPressed, this, &JointForm::save);
    // Another figure than the one that was confirmed is not confirmed, until somebody says so again.
    const auto unconfirm = [this] { confirmed_->setChecked(false); };
    for (QLineEdit* edit : {low_, high_})
        connect(edit, &QLineEdit::textEdited, this, unconfirm);
    connect(unit_, &QComboBox::activated, this, unconfirm);
    connect(place_, &QComboBox::activated, this, &JointForm::save);
    connect(&workbench_, &Workbench::fileChanged, this, [this] { aside_.clear(); });
    setJoint(nullptr);
}

void JointForm::layOut() {
    auto* label = new QLabel(tr("As the manual prints it:"), this);
    label->setProperty("role", QStringLiteral("note"));
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    auto* line = new QHBoxLayout;
    line->setSpacing(kSpaceClose);
    line->addWidget(label);
    line->addWidget(low_);
    line->addWidget(high_);
    line->addWidget(unit_);
    line->addWidget(source_, 1);
    line->addWidget(page_);
    line->addWidget(confirmed_);
    lines->addLayout(line);
    auto* second = new QHBoxLayout;
    second->setSpacing(kSpaceClose);
    auto* sits = new QLabel(tr("It sits in"), this);
    sits->setProperty("role", QStringLiteral("note"));
    sits->setBuddy(place_);
    second->addWidget(sits);
    second->addWidget(place_);
    second->addWidget(holds_);
    second->addStretch();
    lines->addLayout(second);
    auto* holds = new QHBoxLayout(holds_);
    holds->setContentsMargins(0, 0, 0, 0);
    holds->setSpacing(kSpaceClose);
    auto* word = new QLabel(tr("It holds"), holds_);
    word->setProperty("role", QStringLiteral("note"));
    word->setBuddy(sharing_);
    holds->addWidget(word);
    holds->addWidget(sharing_);
    holds->addStretch();
    lines->addWidget(problem_);
}

// A figure that is put right goes to every machine of the model, or stays with this one: that is chosen,
// never guessed.
void JointForm::offerSharing(const fastening::JointVersion& joint) {
    const auto book = workbench_.book();
    const auto years = definitions::sharedYears(*book, joint);
    const auto* machine = book->ledger().find<items::Machine>(joint.machine);
    holds_->setVisible(years && machine != nullptr);
    sharing_->clear();
    years_ = years;
    if (!years || machine == nullptr)
        return;
    addChoices<Holds>(*sharing_,
                      {{Holds::ForAll, tr("for all %1").arg(text(definitions::sharedText(*machine, *years)))},
                       {Holds::ForOne, tr("for %1 only").arg(text(machine->name))}});
    chooseIn(*sharing_, joint.sharedFrom ? Holds::ForAll : Holds::ForOne);
}

// What something is known to sit at on this machine, and what its jobs and other joints name.
void JointForm::offerPlaces(const fastening::JointVersion& joint) {
    const auto book = workbench_.book();
    std::set<std::string> places;
    for (const auto* task : book->tasks(joint.machine))
        places.insert(task->position);
    for (const auto* other : book->joints(joint.machine))
        places.insert(other->position.value_or(std::string{}));
    for (const auto& [position, item] :
         book->fittings().on(joint.machine, {book->today(), calendar::DayPart::AfterRiding}))
        places.insert(position);
    places.insert(joint.position.value_or(std::string{}));
    places.erase(std::string{});
    place_->clear();
    place_->addItem(tr("nobody said"));
    place_->addItem(tr("the machine itself"), QString());
    for (const std::string& place : places)
        place_->addItem(text(place), text(place));
    place_->setCurrentIndex(joint.position ? place_->findData(text(*joint.position)) : 0);
}

void JointForm::share(fastening::JointVersion& version) const {
    if (!years_)
        return;
    const bool forAll = chosenOf<Holds>(*sharing_) == Holds::ForAll;
    version.sharedFrom = forAll ? std::optional(years_->from) : std::nullopt;
    version.sharedTo = forAll ? std::optional(years_->to) : std::nullopt;
}

bool JointForm::isTyped() const {
    return low_->isModified() || high_->isModified() || source_->isModified() || page_->isModified();
}

void JointForm::setAside() {
    if (joint_ && isTyped())
        aside_[joint_->joint] = {low_->text(),  high_->text(),         source_->text(),
                                 page_->text(), unit_->currentIndex(), confirmed_->isChecked()};
}

void JointForm::bringBack() {
    const auto found = aside_.find(joint_->joint);
    if (found == aside_.end())
        return;
    const Typed& typed = found->second;
    for (const auto& [edit, words] : {std::pair(low_, typed.low), std::pair(high_, typed.high),
                                      std::pair(source_, typed.source), std::pair(page_, typed.page)}) {
        edit->setText(words);
        edit->setModified(true);
    }
    unit_->setCurrentIndex(typed.unit);
    confirmed_->setChecked(typed.isConfirmed);
    problem_->setText(tr("Typed before and not saved yet: Enter saves it."));
    aside_.erase(found);
}

void JointForm::setJoint(const fastening::JointVersion* joint) {
    setEnabled(joint != nullptr && !workbench_.readOnly());
    if (joint == nullptr || !joint_ || joint_->joint != joint->joint || !(*joint_ == *joint))
        setAside();
    if (joint == nullptr)
        return clear();
    if (joint_ && *joint_ == *joint)
        return;
    joint_ = *joint;
    questioned_.clear();
    low_->setText(figureText(joint->torque));
    high_->setText(figureText(joint->torqueHigh));
    chooseIn(*unit_, joint->unit);
    // A torque that is typed now is read in the manual, wherever the name of the joint came from.
    source_->setText(
        text(joint->torque ? joint->source : definitions::manualOf(*workbench_.book(), joint->machine)));
    page_->setText(text(joint->page));
    confirmed_->setChecked(joint->confirmed);
    problem_->clear();
    offerPlaces(*joint);
    offerSharing(*joint);
    bringBack();
}

// Nothing of the joint that was shown before stays.
void JointForm::clear() {
    joint_.reset();
    years_.reset();
    questioned_.clear();
    for (QLineEdit* edit : {low_, high_, source_, page_})
        edit->clear();
    confirmed_->setChecked(false);
    problem_->clear();
    place_->clear();
    sharing_->clear();
    holds_->hide();
}

void JointForm::focusFigure() {
    low_->setFocus(Qt::OtherFocusReason);
    low_->selectAll();
}

void JointForm::focusPage() {
    page_->setFocus(Qt::OtherFocusReason);
    page_->selectAll();
}

bool JointForm::take(fastening::JointVersion& version) {
    version.torque.reset();
    version.torqueHigh.reset();
    if (low_->text().trimmed().isEmpty() && high_->text().trimmed().isEmpty())
        return true;
    const auto low = units::parseTorqueRange("torque", low_->text().toStdString());
    if (!low) {
        problem_->setText(wordsFor(low.error()));
        return false;
    }
    version.torque = low->low;
    version.torqueHigh = low->high;
    std::optional<units::TorqueUnit> unit = low->unit;
    if (!high_->text().trimmed().isEmpty()) {
        const auto high = units::parseTorque("torque_high", high_->text().toStdString());
        if (!high) {
            problem_->setText(wordsFor(high.error()));
            return false;
        }
        version.torqueHigh = high->value;
        unit = high->unit ? high->unit : unit;
        // Before anything is asked about either end.
        if (*version.torqueHigh < *version.torque) {
            problem_->setText(wordsFor({base::Fault::OutOfOrder, "torque_high", version.torqueHigh->text(),
                                        version.torque->text()}));
            return false;
        }
    }
    // A unit that was typed goes before the one that is chosen beside it.
    version.unit = unit.value_or(chosenOf<units::TorqueUnit>(*unit_));
    return true;
}

// Stages that hold the torque are put right with it.
bool JointForm::takeStages(fastening::JointVersion& version) {
    auto stages = fastening::stagesAfter(*joint_, version);
    if (stages)
        version.stages = std::move(*stages);
    else
        problem_->setText(stagesWords(stages.error()));
    return stages.has_value();
}

bool JointForm::questions(const fastening::JointVersion& version) {
    const auto doubt =
        version.torque ? fastening::doubtAbout(*version.torque, version.unit, version.kind, version.thread)
                       : std::nullopt;
    if (!doubt)
        return false;
    const QString typed = torqueText(*version.torque, version.unit);
    if (questioned_ == typed)
        return false;
    questioned_ = typed;
    problem_->setText(questionAbout(typed, *doubt));
    return true;
}

void JointForm::save() {
    if (!joint_)
        return;
    fastening::JointVersion version = *joint_;
    if (!take(version) || questions(version) || !takeStages(version))
        return settle(this);
    version.source = source_->text().toStdString();
    version.page = page_->text().toStdString();
    version.confirmed = confirmed_->isChecked();
    version.validFrom = workbench_.today();
    const QVariant place = place_->currentData();
    version.position = place.isValid() ? std::optional(place.toString().toStdString()) : std::nullopt;
    share(version);
    for (QLineEdit* edit : {low_, high_, source_, page_})
        edit->setModified(false);  // it is said now; a refusal leaves the fields as they stand
    const auto done = workbench_.attempt(
        [=](const verbs::VerbContext& context) { return verbs::saveJoint(context, version); });
    problem_->setText(done ? QString() : refusalWords(done.error()));
    if (done)
        questioned_.clear();
    else
        low_->setModified(true);
    settle(this);
}

}  // namespace wm::ui
