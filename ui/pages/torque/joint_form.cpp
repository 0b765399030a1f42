// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/joint_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

#include "core/ledger/verbs.h"
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

base::Result<std::optional<units::Decimal>> parseFigure(const char* name, const QString& typed) {
    if (typed.trimmed().isEmpty())
        return std::optional<units::Decimal>{};
    return units::parseDecimal(name, typed.toStdString()).map([](units::Decimal d) {
        return std::optional(d);
    });
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
    problem_->setWordWrap(true);
    layOut();
    for (QLineEdit* edit : {low_, high_, source_, page_})
        connect(edit, &QLineEdit::returnPressed, this, &JointForm::save);
    setJoint(nullptr);
}

void JointForm::layOut() {
    auto* label = new QLabel(tr("As the manual prints it:"), this);
    label->setProperty("role", QStringLiteral("note"));
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(kSpaceClose);
    line->addWidget(label);
    line->addWidget(low_);
    line->addWidget(high_);
    line->addWidget(unit_);
    line->addWidget(source_, 1);
    line->addWidget(page_);
    line->addWidget(confirmed_);
    line->addWidget(problem_, 1);
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
    low_->setText(figureText(joint->torque));
    high_->setText(figureText(joint->torqueHigh));
    unit_->setCurrentIndex(static_cast<int>(joint->unit));
    source_->setText(text(joint->source));
    page_->setText(text(joint->page));
    confirmed_->setChecked(joint->confirmed);
    problem_->clear();
}

void JointForm::save() {
    if (!joint_)
        return;
    const auto low = parseFigure("torque", low_->text());
    const auto high = parseFigure("torque", high_->text());
    if (!low || !high) {
        problem_->setText(wordsFor(!low ? low.error() : high.error()));
        return;
    }
    fastening::JointVersion wording = *joint_;
    wording.torque = *low;
    wording.torqueHigh = *high;
    wording.unit = static_cast<units::TorqueUnit>(unit_->currentIndex());
    wording.source = source_->text().toStdString();
    wording.page = page_->text().toStdString();
    wording.confirmed = confirmed_->isChecked();
    wording.validFrom = workbench_.today();
    const auto done =
        workbench_.attempt([=](const ledger::Pen& pen) { return ledger::saveJoint(pen, wording); });
    problem_->setText(done ? QString() : wordsFor(done.error()));
}

}  // namespace wm::ui
