// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/joint_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include "core/fastening/plausible.h"
#include "core/ledger/verbs.h"
#include "core/units/unit_words.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench.h"

namespace wm::ui {

namespace {

QLineEdit* field(QWidget* parent, const QString& name, const QString& words, int letters) {
    auto* edit = new QLineEdit(parent);
    edit->setObjectName(name);
    edit->setAccessibleName(words);
    edit->setPlaceholderText(words);
    if (letters > 0)
        edit->setMaximumWidth(edit->fontMetrics().averageCharWidth() * letters + 24);
    return edit;
}

QString figureText(const std::optional<units::Decimal>& value) {
    return value ? QString::fromStdString(value->text(decimalMark())) : QString();
}

QString torqueText(const units::Decimal& value, units::TorqueUnit unit) {
    const auto name = base::nameOf(unit);
    return figureText(value) + QChar(0x00A0) +
           QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

QString slipWords(fastening::TorqueSlip slip) {
    switch (slip) {
        case fastening::TorqueSlip::InchForFoot:
            return JointForm::tr("pound-inches and pound-feet are 12 times apart");
        case fastening::TorqueSlip::KilogramMetre:
            return JointForm::tr("kilogram-metres and newton-metres are 9.8 times apart");
        case fastening::TorqueSlip::Centimetre:
            return JointForm::tr("a kilogram-centimetre is a hundredth of a kilogram-metre");
        case fastening::TorqueSlip::DecimalPoint:
            break;
    }
    return JointForm::tr("ten times, like a decimal point in the wrong place");
}

}  // namespace

JointForm::JointForm(Workbench& workbench, QWidget* parent)
    : QWidget(parent),
      workbench_(workbench),
      low_(field(this, QStringLiteral("jointTorque"), tr("torque"), 9)),
      high_(field(this, QStringLiteral("jointTorqueHigh"), tr("up to"), 9)),
      unit_(new QComboBox(this)),
      source_(field(this, QStringLiteral("jointSource"), tr("manual"), 0)),
      page_(field(this, QStringLiteral("jointPage"), tr("page"), 8)),
      confirmed_(new QCheckBox(tr("checked against the manual"), this)),
      problem_(new QLabel(this)) {
    unit_->setObjectName(QStringLiteral("jointUnit"));
    unit_->setAccessibleName(tr("Unit as printed"));
    for (const auto name : base::Names<units::TorqueUnit>::names)
        unit_->addItem(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())));
    confirmed_->setObjectName(QStringLiteral("jointConfirmed"));
    problem_->setObjectName(QStringLiteral("jointProblem"));
    problem_->setTextFormat(Qt::PlainText);
    problem_->setWordWrap(true);
    layOut();
    for (QLineEdit* edit : {low_, high_, source_, page_})
        connect(edit, &QLineEdit::returnPressed, this, &JointForm::save);
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
    lines->addWidget(problem_);
}

void JointForm::setJoint(const fastening::JointVersion* joint) {
    setEnabled(joint != nullptr && !workbench_.readOnly());
    if (joint == nullptr) {
        joint_.reset();
        return;
    }
    if (joint_ && *joint_ == *joint)
        return;
    joint_ = *joint;
    questioned_.clear();
    low_->setText(figureText(joint->torque));
    high_->setText(figureText(joint->torqueHigh));
    unit_->setCurrentIndex(static_cast<int>(joint->unit));
    source_->setText(text(joint->source));
    page_->setText(text(joint->page));
    confirmed_->setChecked(joint->confirmed);
    problem_->clear();
}

void JointForm::focusFigure() {
    low_->setFocus(Qt::OtherFocusReason);
    low_->selectAll();
}

void JointForm::focusPage() {
    page_->setFocus(Qt::OtherFocusReason);
    page_->selectAll();
}

bool JointForm::take(fastening::JointVersion& wording) {
    wording.torque.reset();
    wording.torqueHigh.reset();
    if (low_->text().trimmed().isEmpty() && high_->text().trimmed().isEmpty())
        return true;
    const auto low = units::parseTorqueRange("torque", low_->text().toStdString());
    if (!low) {
        problem_->setText(wordsFor(low.error()));
        return false;
    }
    wording.torque = low->low;
    wording.torqueHigh = low->high;
    std::optional<units::TorqueUnit> unit = low->unit;
    if (!high_->text().trimmed().isEmpty()) {
        const auto high = units::parseTorque("torque_high", high_->text().toStdString());
        if (!high) {
            problem_->setText(wordsFor(high.error()));
            return false;
        }
        wording.torqueHigh = high->value;
        unit = high->unit ? high->unit : unit;
    }
    // A unit that was typed goes before the one that is chosen beside it.
    wording.unit = unit.value_or(static_cast<units::TorqueUnit>(unit_->currentIndex()));
    return true;
}

bool JointForm::questions(const fastening::JointVersion& wording) {
    const auto doubt =
        wording.torque ? fastening::doubtAbout(*wording.torque, wording.unit, wording.kind, wording.thread)
                       : std::nullopt;
    if (!doubt)
        return false;
    const QString typed = torqueText(*wording.torque, wording.unit);
    if (questioned_ == typed)
        return false;
    questioned_ = typed;
    problem_->setText(
        tr("%1 is far from what a thread like this takes (%2 to %3 N·m, for catching slips only). Did "
           "you mean %4? %5. Enter again keeps it.")
            .arg(typed, QString::number(qRound(doubt->low)), QString::number(qRound(doubt->high)),
                 torqueText(doubt->meant, doubt->meantUnit), slipWords(doubt->slip)));
    return true;
}

void JointForm::save() {
    if (!joint_)
        return;
    fastening::JointVersion wording = *joint_;
    if (!take(wording) || questions(wording))
        return;
    wording.source = source_->text().toStdString();
    wording.page = page_->text().toStdString();
    wording.confirmed = confirmed_->isChecked();
    wording.validFrom = workbench_.today();
    const auto done =
        workbench_.attempt([=](const ledger::Pen& pen) { return ledger::saveJoint(pen, wording); });
    problem_->setText(done ? QString() : wordsFor(done.error()));
    if (done)
        questioned_.clear();
}

}  // namespace wm::ui
