// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_form.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <algorithm>
#include <array>
#include <utility>

#include "ui/entry/choice.h"
#include "ui/entry/flow.h"
#include "ui/shell/notebook_preview.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/words/notebook_words.h"

namespace wm::ui {

namespace {

using notebook::Column;
using notebook::DateForm;

constexpr int kWidestChoice = 300;
constexpr std::size_t kMostSpellings = 40;  ///< more than that is hardly a column of machines
constexpr std::array kSeparators{';', ',', '\t', '|'};

// Wheeling over the form, or going through a list, must not change what it says: a column that is passed on
// the way would be taken from where it stood.
class CalmChoice : public QComboBox {
  public:
    using QComboBox::QComboBox;

  protected:
    void wheelEvent(QWheelEvent* event) override { event->ignore(); }
    void keyPressEvent(QKeyEvent* event) override {
        const int key = event->key();
        const bool moves = key == Qt::Key_Up || key == Qt::Key_Down || key == Qt::Key_PageUp ||
                           key == Qt::Key_PageDown || key == Qt::Key_Home || key == Qt::Key_End;
        const bool seeks = !event->text().isEmpty() && event->text().front().isLetterOrNumber() &&
                           (event->modifiers() & ~Qt::ShiftModifier) == Qt::NoModifier;
        if (!moves && !seeks)
            return QComboBox::keyPressEvent(event);
        showPopup();
        if (seeks)
            view()->keyboardSearch(event->text());
    }
};

QString newWords(const QString& machine, const QString& schedule) {
    return schedule.isEmpty() ? NotebookForm::tr("new: %1").arg(machine)
                              : NotebookForm::tr("new: %1, %2")
                                    .arg(machine, nameWords(std::string_view(schedule.toStdString())));
}

QLabel* caption(const QString& words, const char* role, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setTextFormat(Qt::PlainText);
    label->setProperty("role", QString::fromLatin1(role));
    return label;
}

QString columnTip(const notebook::Table& table, std::size_t at) {
    QStringList cells;
    for (const auto& line : table.lines) {
        const QString cell = cellsInWords({std::string(notebook::cellAt(line, at))});
        if (!cell.isEmpty() && !cells.contains(cell))
            cells << cell;
        if (cells.size() == 4)
            break;
    }
    return cells.join(QStringLiteral(" · "));
}

}  // namespace

NotebookForm::NotebookForm(const NotebookPreview& preview, QStringList schedules, QWidget* parent)
    : QWidget(parent),
      preview_(preview),
      schedules_(std::move(schedules)),
      forms_(new Flow(kSpaceLine, kSpaceClose)),
      columns_(new Flow(kSpaceLine, kSpaceClose)),
      machines_(new Flow(kSpaceLine, kSpaceClose)),
      columnsTitle_(caption(tr("Columns"), "section", this)),
      machinesTitle_(caption(tr("Machines"), "section", this)),
      byHand_(caption(QString(), "note", this)),
      asFound_(new QPushButton(tr("As found"), this)) {
    asFound_->setObjectName(QStringLiteral("notebook-as-found"));
    asFound_->setAutoDefault(false);
    asFound_->setToolTip(tr("Forgets what was set by hand about this header"));
    connect(asFound_, &QPushButton::clicked, this, &NotebookForm::asFoundAsked);
    auto* hand = new QHBoxLayout;
    hand->setSpacing(kSpaceClose);
    hand->addWidget(columnsTitle_);
    hand->addSpacing(kSpaceLine);
    hand->addWidget(byHand_);
    hand->addWidget(asFound_);
    hand->addStretch();
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    lines->addLayout(hand);
    lines->addLayout(columns_);
    lines->addSpacing(kSpaceHair);
    lines->addLayout(forms_);
    lines->addSpacing(kSpaceHair);
    lines->addWidget(machinesTitle_);
    lines->addLayout(machines_);
    lines->addStretch();
}

QComboBox* NotebookForm::place(Flow* into, const QString& name, const QString& label, const QString& tip) {
    auto* box = new QWidget(this);
    auto* lines = new QVBoxLayout(box);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(2);
    auto* words = caption(label, "note", box);
    words->setFont(noteFont(font()));
    words->setMaximumWidth(kWidestChoice);
    auto* choice = new CalmChoice(box);
    choice->setObjectName(name);
    choice->setAccessibleName(label);
    choice->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    choice->setMaximumWidth(kWidestChoice);
    box->setToolTip(asTip(tip));
    lines->addWidget(words);
    lines->addWidget(choice);
    into->addWidget(box);
    boxes_.push_back(box);
    box->show();
    return choice;
}

void NotebookForm::clear() {
    for (Flow* flow : {forms_, columns_, machines_})
        while (QLayoutItem* item = flow->takeAt(0))
            delete item;
    for (QWidget* box : boxes_) {
        box->hide();
        // The choice that was just made is one of them, and still at work.
        box->deleteLater();
        for (auto* choice : box->findChildren<QComboBox*>())
            choice->setObjectName(QString());
    }
    boxes_.clear();
}

void NotebookForm::refresh() {
    const auto* focus = QApplication::focusWidget();
    const QString kept = focus != nullptr && isAncestorOf(focus) ? focus->objectName() : QString();
    clear();
    showColumns();
    showForms();
    showMachines();
    const bool byHand = preview_.isSetByHand();
    byHand_->setText(byHand ? tr("as you set them for this header") : tr("as found; change what is wrong"));
    asFound_->setVisible(byHand);
    const auto choices = findChildren<QComboBox*>();
    for (qsizetype at = 1; at < choices.size(); ++at)
        setTabOrder(choices[at - 1], choices[at]);
    if (auto* again = kept.isEmpty() ? nullptr : findChild<QWidget*>(kept))
        again->setFocus(Qt::OtherFocusReason);
    updateGeometry();
}

void NotebookForm::showForms() {
    auto* separator = place(forms_, QStringLiteral("notebook-separator"), tr("cells parted by"), {});
    std::vector<char> signs(kSeparators.begin(), kSeparators.end());
    const char used = preview_.table().separator;
    if (used != '\0' && std::find(signs.begin(), signs.end(), used) == signs.end())
        signs.push_back(used);
    for (const char sign : signs)
        separator->addItem(separatorWord(sign), int{sign});
    separator->setCurrentIndex(separator->findData(int{used}));
    connect(separator, &QComboBox::activated, this,
            [this, separator] { emit separatorSaid(static_cast<char>(separator->currentData().toInt())); });
    if (preview_.layout().columns.empty())
        return;
    auto* decimal = place(forms_, QStringLiteral("notebook-decimal"), tr("decimal mark"), {});
    for (const char mark : {',', '.'})
        decimal->addItem(decimalWord(mark), int{mark});
    decimal->setCurrentIndex(decimal->findData(int{preview_.layout().decimal}));
    connect(decimal, &QComboBox::activated, this,
            [this, decimal] { emit decimalSaid(static_cast<char>(decimal->currentData().toInt())); });
    auto* dates = place(forms_, QStringLiteral("notebook-dates"),
                        preview_.layout().datesUnsure ? tr("dates (nothing tells: look)") : tr("dates"), {});
    for (const auto form : {DateForm::DayFirst, DateForm::MonthFirst, DateForm::YearFirst, DateForm::Serial})
        dates->addItem(dateFormWord(form), static_cast<int>(form));
    dates->setCurrentIndex(dates->findData(static_cast<int>(preview_.layout().dates)));
    connect(dates, &QComboBox::activated, this,
            [this, dates] { emit datesSaid(static_cast<DateForm>(dates->currentData().toInt())); });
    if (!preview_.layout().at(Column::Machine))
        showOnlyMachine();
}

void NotebookForm::showOnlyMachine() {
    auto* only = place(forms_, QStringLiteral("notebook-only-machine"), tr("all of it is about"), {});
    for (const auto* machine : preview_.book().machines())
        only->addItem(text(machine->name), QVariant::fromValue<qlonglong>(machine->id.value()));
    const auto now = preview_.onlyMachine();
    only->setCurrentIndex(now ? only->findData(QVariant::fromValue<qlonglong>(now->value())) : -1);
    connect(only, &QComboBox::activated, this,
            [this, only] { emit onlyMachineSaid(MachineId{only->currentData().toLongLong()}); });
}

void NotebookForm::showColumns() {
    const auto& columns = preview_.layout().columns;
    columnsTitle_->setVisible(!columns.empty());
    byHand_->setVisible(!columns.empty());
    for (std::size_t at = 0; at < columns.size(); ++at) {
        const QString header = cellsInWords({preview_.table().header[at]});
        auto* choice =
            place(columns_, QStringLiteral("notebook-column-%1").arg(at),
                  header.isEmpty() ? tr("column %1").arg(at + 1) : header, columnTip(preview_.table(), at));
        addChoices(*choice, eachOf<Column>(columnWord));
        chooseIn(*choice, columns[at]);
        connect(choice, &QComboBox::activated, this,
                [this, at, choice] { emit columnSaid(at, chosenOf<Column>(*choice)); });
    }
}

void NotebookForm::showMachines() {
    const auto* notebook = preview_.notebook();
    const bool any = notebook != nullptr && !notebook->spellings.empty();
    machinesTitle_->setVisible(any);
    if (!any)
        return;
    const auto& spellings = notebook->spellings;
    machinesTitle_->setText(spellings.size() > kMostSpellings
                                ? tr("Machines: the %1 commonest of %2 names; is that the right column?")
                                      .arg(kMostSpellings)
                                      .arg(spellings.size())
                                : tr("Machines"));
    for (std::size_t at = 0; at < std::min(spellings.size(), kMostSpellings); ++at)
        showSpelling(at, spellings[at]);
}

void NotebookForm::showSpelling(std::size_t at, const notebook::NameSpelling& spelling) {
    const auto& machines = preview_.notebook()->machines;
    const QString name = quoted(text(spelling.text));
    auto* choice = place(machines_, QStringLiteral("notebook-machine-%1").arg(at),
                         tr("%1, %n line(s)", nullptr, static_cast<int>(spelling.lines)).arg(name), {});
    if (spelling.reading.machines.size() > 1) {
        QStringList both;
        for (const std::size_t machine : spelling.reading.machines)
            both << text(machines[machine].name);
        choice->addItem(both.join(QStringLiteral(" + ")));
    }
    for (const auto* machine : preview_.file().machines())
        choice->addItem(text(machine->name), QVariant::fromValue<qlonglong>(machine->id.value()));
    const QString added = cellsInWords({spelling.text});
    const int own = offerNew(choice, added, text(preview_.scheduleOf(spelling.text)));
    const auto& means = spelling.reading.machines;
    if (means.size() == 1 && spelling.reading.fit != notebook::NameFit::Unknown) {
        const auto& machine = machines[means.front()];
        const QString schedule = text(preview_.scheduleOf(machine.name));
        const bool isNew = !machine.id || !schedule.isEmpty();
        if (isNew && text(machine.name) != added)  // the new one under its other spelling
            choice->insertItem(0, newWords(text(machine.name), schedule));
        choice->setCurrentIndex(!isNew ? choice->findData(QVariant::fromValue<qlonglong>(machine.id->value()))
                                : text(machine.name) == added ? own
                                                              : 0);
    } else if (means.size() < 2) {
        choice->setCurrentIndex(-1);
    }
    connect(choice, &QComboBox::activated, this, [this, choice, written = text(spelling.text)] {
        const QVariant said = choice->currentData();
        if (said.typeId() == QMetaType::QString)
            emit newMachineSaid(written, said.toString());
        else if (said.isValid())
            emit meaningSaid(written, MachineId{said.toLongLong()});
    });
}

int NotebookForm::offerNew(QComboBox* choice, const QString& machine, const QString& chosen) const {
    int at = choice->count();
    choice->addItem(newWords(machine, {}), QString());
    for (const QString& schedule : schedules_) {
        if (schedule == chosen)
            at = choice->count();
        choice->addItem(newWords(machine, schedule), schedule);
    }
    return at;
}

}  // namespace wm::ui
