// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/torque_page.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/ledger/verbs.h"
#include "ui/pages/columns.h"
#include "ui/pages/torque/joint_form.h"
#include "ui/pages/torque/torque_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/workbench.h"

namespace wm::ui {

namespace {

QLabel* plain(QWidget* parent, const char* role) {
    auto* label = new QLabel(parent);
    // What users typed is never read as markup.
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    if (role != nullptr)
        label->setProperty("role", QLatin1String(role));
    return label;
}

}  // namespace

TorquePage::TorquePage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      find_(new QLineEdit(this)),
      joints_(new RowTable(
          {tr("Joint"), tr("Machine"), tr("Torque"), tr("Thread"), tr("Condition"), tr("Source"), tr("Mark")},
          0, this)),
      empty_(plain(this, "note")),
      name_(plain(this, "section")),
      figure_(plain(this, nullptr)),
      unit_(plain(this, nullptr)),
      source_(plain(this, "note")),
      notes_(plain(this, nullptr)),
      marks_(new RowTable({tr("Day"), tr("Mark"), tr("Torque"), tr("By"), tr("Job")}, 4, this)),
      confirm_(new QPushButton(tr("Confirmed to torque"), this)),
      loosen_(new QPushButton(tr("Loosened"), this)),
      form_(new JointForm(tools.workbench, this)) {
    find_->setObjectName(QStringLiteral("torqueFind"));
    find_->setPlaceholderText(tr("find a joint: name, thread, condition"));
    find_->setAccessibleName(tr("Find a joint"));
    find_->setClearButtonEnabled(true);
    joints_->setObjectName(QStringLiteral("torqueJoints"));
    joints_->setAccessibleName(tr("Joints"));
    marks_->setObjectName(QStringLiteral("torqueMarks"));
    marks_->setAccessibleName(tr("When the chosen joint was confirmed or loosened"));
    confirm_->setObjectName(QStringLiteral("jointConfirm"));
    loosen_->setObjectName(QStringLiteral("jointLoosen"));
    figure_->setObjectName(QStringLiteral("jointFigure"));
    figure_->setFont(figureFont(font(), FigureSize::Large));
    figure_->setWordWrap(false);
    unit_->setFont(pageTitleFont(font()));
    unit_->setWordWrap(false);
    empty_->setText(
        tr("No joints here yet: a starter schedule brings their names, without any torque. The figures come "
           "from your service manual."));
    layOut();
    connect(find_, &QLineEdit::textChanged, joints_, &RowTable::filter);
    connect(joints_, &RowTable::chosenChanged, this, &TorquePage::showJoint);
    connect(confirm_, &QPushButton::clicked, this, [this] { mark(fastening::MarkKind::Confirmed); });
    connect(loosen_, &QPushButton::clicked, this, [this] { mark(fastening::MarkKind::Loosened); });
}

void TorquePage::layOut() {
    auto* left = new QWidget(this);
    auto* leftLines = linesOf(left);
    leftLines->addWidget(find_);
    leftLines->addWidget(empty_);
    leftLines->addWidget(joints_, 1);
    auto* right = new QWidget(this);
    auto* rightLines = linesOf(right);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(confirm_);
    buttons->addWidget(loosen_);
    buttons->addStretch();
    rightLines->addWidget(name_);
    auto* figure = new QHBoxLayout;
    figure->setSpacing(kSpaceClose);
    figure->addWidget(figure_, 0, Qt::AlignBottom);
    figure->addWidget(unit_, 1, Qt::AlignBottom);
    rightLines->addLayout(figure);
    rightLines->addWidget(source_);
    rightLines->addWidget(notes_);
    rightLines->addSpacing(kSpaceClose);
    rightLines->addLayout(buttons);
    rightLines->addSpacing(kSpaceClose);
    rightLines->addWidget(marks_, 1);
    auto* lines = pageLines(this);
    lines->addWidget(columnsOf(this, {{left, 760}, {right, 480}}), 1);
    lines->addWidget(form_);
}

QWidget* TorquePage::firstFocus() {
    return find_;
}

bool TorquePage::find() {
    find_->setFocus();
    find_->selectAll();
    return true;
}

void TorquePage::refresh() {
    const auto chosen = workbench().chosen();
    auto rows = jointRows(*workbench().book(), chosen);
    empty_->setVisible(rows.empty());
    joints_->setVisible(!rows.empty());
    joints_->setColumnHidden(1, chosen.has_value());
    joints_->show(std::move(rows));
    showJoint();
}

void TorquePage::showJoint() {
    const auto book = workbench().book();
    const auto id = joints_->chosenId();
    const fastening::JointVersion* joint = id ? book->joint(JointId(*id)) : nullptr;
    for (QWidget* widget :
         std::initializer_list<QWidget*>{name_, figure_, unit_, source_, notes_, marks_, confirm_, loosen_})
        widget->setVisible(joint != nullptr);
    form_->setJoint(joint);
    if (joint == nullptr)
        return;
    name_->setText(text(joint->name));
    // The face for figures is for digits alone; the unit stands beside them.
    const QString words = torqueWords(*joint);
    const auto gap = words.indexOf(QChar(0x00A0));
    figure_->setVisible(joint->torque.has_value());
    figure_->setText(words.left(gap));
    unit_->setText(joint->torque ? words.mid(gap + 1) : tr("torque not typed yet"));
    source_->setText(!joint->torque     ? tr("Look it up in the service manual and type it below.")
                     : joint->confirmed ? tr("%1, p. %2, checked").arg(text(joint->source), text(joint->page))
                                        : tr("NOT CONFIRMED against the service manual"));
    QString notes;
    for (const QString& note : jointNotes(*joint))
        notes += note + QLatin1Char('\n');
    notes_->setText(notes.trimmed());
    marks_->show(markRows(*book, joint->joint));
}

void TorquePage::mark(fastening::MarkKind kind) {
    const auto id = joints_->chosenId();
    if (!id)
        return;
    workbench().perform([=](const ledger::Pen& pen) {
        return ledger::markJoints(pen, {{.joint = JointId(*id), .date = pen.book.today(), .kind = kind}});
    });
}

}  // namespace wm::ui
