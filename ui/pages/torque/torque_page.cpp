// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/torque_page.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/book/stand_figures.h"
#include "core/fastening/lookup.h"
#include "core/verbs/verbs.h"
#include "ui/entry/flow.h"
#include "ui/pages/columns.h"
#include "ui/pages/key_row.h"
#include "ui/pages/torque/generic_panel.h"
#include "ui/pages/torque/joint_answer.h"
#include "ui/pages/torque/joint_form.h"
#include "ui/pages/torque/torque_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

// The line, the list, the answer. What the keys do at a joint is in torque_actions.cpp.

namespace wm::ui {

namespace {

constexpr std::size_t kMostFound = 30;
constexpr int kWideEnough = 1500;  // for what the answer says as well, in the list

}  // namespace

TorquePage::TorquePage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      find_(new QLineEdit(this)),
      progress_(plainLabel(this, "note", "torqueProgress")),
      handTight_(plainLabel(this, nullptr, "torqueHandTight")),
      joints_(new RowTable(
          {tr("Joint"), tr("Machine"), tr("Figure"), tr("Thread"), tr("Condition"), tr("Source"), tr("Mark")},
          0, this)),
      empty_(plainLabel(this, "note", "torqueEmpty")),
      answer_(new JointAnswer(this)),
      generic_(new GenericPanel(this)),
      job_(plainLabel(this, "note", "torqueJob")),
      jobKeys_(new QWidget(this)),
      marks_(new RowTable({tr("Day"), tr("Mark"), tr("Torque"), tr("By"), tr("Job")}, 4, this)),
      confirm_(new QPushButton(tr("Torqued and marked"), this)),
      loosen_(new QPushButton(tr("Loosened"), this)),
      checked_(new QPushButton(tr("Figure confirmed, next (F12)"), this)),
      form_(new JointForm(tools.workbench, this)) {
    QFont bold = font();
    bold.setBold(true);
    handTight_->setFont(bold);
    find_->setObjectName(QStringLiteral("torqueFind"));
    find_->setPlaceholderText(tr("what is it: rear axle, m8 caliper, fork oil amount, chain slack … ft lb"));
    find_->setAccessibleName(tr("Find a figure"));
    find_->setClearButtonEnabled(true);
    find_->setFont(pageTitleFont(font()));
    find_->installEventFilter(this);
    joints_->setObjectName(QStringLiteral("torqueJoints"));
    joints_->setAccessibleName(tr("Joints and other figures"));
    joints_->setMostLines(RowTable::kAsManyAsItTakes);
    marks_->setObjectName(QStringLiteral("torqueMarks"));
    marks_->setAccessibleName(tr("When the chosen joint was torqued or loosened"));
    confirm_->setObjectName(QStringLiteral("jointConfirm"));
    loosen_->setObjectName(QStringLiteral("jointLoosen"));
    checked_->setObjectName(QStringLiteral("jointChecked"));
    layOut();
    connectParts();
}

TorquePage::~TorquePage() = default;

void TorquePage::layOut() {
    auto* through =
        keyRow(jobKeys_,
               {{QStringLiteral("torque-before"), tr("joint before Ctrl+Up"), [this] { goThroughJob(-1); }},
                {QStringLiteral("torque-next"), tr("next joint Ctrl+Down"), [this] { goThroughJob(1); }}});
    through->setContentsMargins(0, 0, 0, 0);
    through->addStretch();
    jobKeys_->setLayout(through);
    auto* left = new QWidget(this);
    auto* leftLines = linesOf(left);
    leftLines->addWidget(empty_);
    leftLines->addWidget(joints_, 1);
    auto* right = new QWidget(this);
    auto* rightLines = linesOf(right);
    auto* buttons = new Flow(kSpaceClose, kSpaceHair);
    for (QPushButton* each : {confirm_, loosen_, checked_})
        buttons->addWidget(each);
    rightLines->addWidget(answer_);
    rightLines->addWidget(generic_);
    rightLines->addWidget(job_);
    rightLines->addWidget(jobKeys_);
    rightLines->addLayout(buttons);
    rightLines->addWidget(marks_, 1);
    rightLines->addStretch();
    auto* top = new QHBoxLayout;
    top->setSpacing(kSpaceLine);
    top->addWidget(find_, 1);
    progress_->setWordWrap(false);
    top->addWidget(progress_);
    auto* lines = pageLines(this);
    lines->addLayout(top);
    lines->addWidget(handTight_);
    lines->addWidget(columnsOf(this, {{left, 640}, {scrolled(right, this), 600}}), 1);
    lines->addWidget(form_);
}

void TorquePage::connectParts() {
    connect(find_, &QLineEdit::textChanged, this, &TorquePage::search);
    connect(find_, &QLineEdit::returnPressed, this, &TorquePage::takeUp);
    connect(joints_, &RowTable::chosenChanged, this, &TorquePage::showChosen);
    connect(joints_, &RowTable::activatedId, this, &TorquePage::takeUp);
    connect(confirm_, &QPushButton::clicked, this, [this] { mark(fastening::MarkKind::Confirmed); });
    connect(loosen_, &QPushButton::clicked, this, [this] { mark(fastening::MarkKind::Loosened); });
    connect(checked_, &QPushButton::clicked, this, &TorquePage::confirmFigure);
    const auto on = [this](const QKeySequence& keys, auto act) {
        auto* shortcut = new QShortcut(keys, this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this, act);
    };
    on(QKeySequence(Qt::Key_F12), &TorquePage::confirmFigure);
    on(QKeySequence(Qt::CTRL | Qt::Key_Down), [this] { goThroughJob(1); });
    on(QKeySequence(Qt::CTRL | Qt::Key_Up), [this] { goThroughJob(-1); });
}

// What was asked last time is typed over.
QWidget* TorquePage::firstFocus() {
    find_->selectAll();
    return find_;
}

bool TorquePage::find() {
    find_->setFocus();
    find_->selectAll();
    return true;
}

std::optional<MachineId> TorquePage::machineHere() const {
    const auto* joint = chosenJoint();
    return joint != nullptr ? std::optional(joint->machine) : std::nullopt;
}

// Up and down choose in the list while the line keeps the keys; Escape empties the line before the window
// takes it for "all machines".
bool TorquePage::eventFilter(QObject* watched, QEvent* event) {
    const bool override = event->type() == QEvent::ShortcutOverride;
    if (watched != find_ || (!override && event->type() != QEvent::KeyPress))
        return Page::eventFilter(watched, event);
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_Escape && !find_->text().isEmpty()) {
        event->accept();
        if (!override)
            find_->clear();
        return true;
    }
    const bool moves = key->key() == Qt::Key_Up || key->key() == Qt::Key_Down ||
                       key->key() == Qt::Key_PageUp || key->key() == Qt::Key_PageDown;
    if (override || !moves || key->modifiers() != Qt::NoModifier)
        return Page::eventFilter(watched, event);
    QKeyEvent again(QEvent::KeyPress, key->key(), Qt::NoModifier);
    QCoreApplication::sendEvent(joints_, &again);
    return true;
}

const fastening::Lookup& TorquePage::lookup() {
    if (lookup_ == nullptr)
        lookup_ = std::make_unique<fastening::Lookup>(book::figuresOf(*workbench().book(), std::nullopt));
    return *lookup_;
}

void TorquePage::refresh() {
    lookup_.reset();
    sayIn(handTight_, handTightWords(*workbench().book(), workbench().chosen()), true);
    search();
    countConfirmed();
}

void TorquePage::search() {
    const auto book = workbench().book();
    const auto chosen = workbench().chosen();
    const std::string typed = find_->text().toStdString();
    const bool asked = !find_->text().trimmed().isEmpty();
    // What is found stands in the order of the finding.
    joints_->horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
    std::vector<TableRow> rows;
    unit_ = {};
    if (asked) {
        const auto found = lookup().find(typed, chosen, kMostFound);
        unit_ = found.unit;
        rows = foundRows(*book, lookup(), found);
    } else {
        rows = jointRows(*book, chosen);
    }
    empty_->setText(
        asked ? tr("Nothing is called that here. Other words, a thread (M8) or the job find it too.")
              : tr("No joints here yet: a starter schedule brings their names, without any torque. "
                   "The figures come from your service manual."));
    empty_->setVisible(rows.empty());
    joints_->setVisible(!rows.empty());
    joints_->setColumnHidden(1, chosen.has_value());
    fitColumns();
    const auto first = asked && !rows.empty() ? std::optional(rows.front().id) : std::nullopt;
    joints_->show(std::move(rows));
    if (first)
        joints_->choose(*first);
    showChosen();
}

// Nothing is cut off where there is little room: condition and source stand in the answer.
void TorquePage::fitColumns() {
    for (const int column : {4, 5})
        joints_->setColumnHidden(column, width() < kWideEnough);
}

void TorquePage::resizeEvent(QResizeEvent* event) {
    Page::resizeEvent(event);
    fitColumns();
}

const fastening::Figure* TorquePage::chosenFigure() const {
    const auto id = joints_->isVisibleTo(this) ? joints_->chosenId() : std::nullopt;
    if (!id || lookup_ == nullptr)
        return nullptr;
    const auto& figures = lookup_->figures();
    if (*id < 0) {
        const auto at = static_cast<std::size_t>(-1 - *id);
        return at < figures.size() ? &figures[at] : nullptr;
    }
    for (const fastening::Figure& figure : figures)
        if (figure.kind == fastening::FigureKind::Joint && figure.id == *id)
            return &figure;
    return nullptr;
}

const fastening::JointVersion* TorquePage::chosenJoint() const {
    const auto id = joints_->isVisibleTo(this) ? joints_->chosenId() : std::nullopt;
    return id && *id > 0 ? workbench().book()->joint(JointId(*id)) : nullptr;
}

void TorquePage::showChosen() {
    const auto book = workbench().book();
    (void)lookup();
    const auto* figure = chosenFigure();
    const auto* joint = chosenJoint();
    answer_->setVisible(figure != nullptr);
    if (figure != nullptr)
        answer_->show(*book, *figure, unit_);
    for (QWidget* widget : std::initializer_list<QWidget*>{marks_, confirm_, loosen_, checked_, form_})
        widget->setVisible(joint != nullptr);
    const bool writes = !workbench().readOnly();
    for (QPushButton* button : {confirm_, loosen_})
        button->setEnabled(writes);
    // The room is the generic band's where there is no figure.
    marks_->setVisible(joint != nullptr && joint->torque.has_value());
    checked_->setEnabled(writes && joint != nullptr && joint->torque && !joint->confirmed);
    generic_->setJoint(joint);
    form_->setJoint(joint);
    job_->setVisible(joint != nullptr);
    jobKeys_->setVisible(joint != nullptr);
    if (joint != nullptr)
        showJob(*joint);
    settle(answer_);
    settle(form_);
}

void TorquePage::showJob(const fastening::JointVersion& joint) {
    const auto book = workbench().book();
    const JobJoints job = jobOf(*book, joint);
    const auto here = std::find(job.joints.begin(), job.joints.end(), joint.joint);
    job_->setVisible(here != job.joints.end());
    jobKeys_->setVisible(here != job.joints.end() && job.joints.size() > 1);
    if (here != job.joints.end())
        job_->setText(tr("%1: joint %2 of %3")
                          .arg(job.job, QString::number(here - job.joints.begin() + 1),
                               QString::number(job.joints.size())));
    marks_->show(markRows(*book, joint.joint));
}

}  // namespace wm::ui
