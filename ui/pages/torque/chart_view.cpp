// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/chart_view.h"

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "core/definitions/sharing.h"
#include "core/verbs/verbs.h"
#include "ui/entry/choice.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/torque/holds.h"
#include "ui/print/paged_output.h"
#include "ui/print/pdf_words.h"
#include "ui/print/print_dialogs.h"
#include "ui/print/torque_card_layout.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/doubt_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/speech.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/prompts.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr int kBlankRows = 12;  ///< that stand ready below what is typed
constexpr int kMostRows = 1000;

// Tab goes from cell to cell, and from the last one on to what comes after the grid.
class ChartGrid : public QTableWidget {
  public:
    using QTableWidget::QTableWidget;

    /// The first column takes what the others leave over, and has room for a name in any case.
    void shareWidth(int leastOfFirst) {
        least_ = leastOfFirst;
        int room = viewport()->width();
        for (int column = 1; column < columnCount(); ++column)
            room -= columnWidth(column);
        setColumnWidth(0, std::max(room, least_));
    }

  protected:
    void resizeEvent(QResizeEvent* event) override {
        QTableWidget::resizeEvent(event);
        shareWidth(least_);
    }
    bool focusNextPrevChild(bool next) override {
        const bool isAtEnd = next ? currentRow() == rowCount() - 1 && currentColumn() == columnCount() - 1
                                  : currentRow() <= 0 && currentColumn() <= 0;
        // Out of the table at its ends, where the view itself would go round within it.
        if (isAtEnd)
            return QAbstractScrollArea::focusNextPrevChild(next);  // NOLINT(bugprone-parent-virtual-call)
        return QTableWidget::focusNextPrevChild(next);
    }

  private:
    int least_ = 0;
};

QStringList headings() {
    return {ChartView::tr("Joint"),     ChartView::tr("Thread"),  ChartView::tr("Pieces"),
            ChartView::tr("Torque"),    ChartView::tr("Unit"),    ChartView::tr("Stages"),
            ChartView::tr("Condition"), ChartView::tr("Locking"), ChartView::tr("New each time"),
            ChartView::tr("Page"),      ChartView::tr("Manual"),  ChartView::tr("Confirmed")};
}

QString doubtWords(const definitions::ChartDoubt& asked) {
    const auto unit = base::nameOf(asked.doubt.meantUnit);
    return ChartView::tr(
               "Row %1: that is far from what such a thread takes (about %2 to %3 N·m). Was %4 %5 meant? "
               "Look at the manual again.")
        .arg(asked.row + 1)
        .arg(asked.doubt.low, 0, 'f', 0)
        .arg(asked.doubt.high, 0, 'f', 0)
        .arg(text(asked.doubt.meant.text(decimalMark())),
             QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size())));
}

QString cellText(const QTableWidget& grid, int row, int column) {
    const auto* item = grid.item(row, column);
    return item == nullptr ? QString() : item->text();
}

// An empty cell of stages is at fault where they can't follow the torque.
QString faultWords(const definitions::ChartFault& fault, const QTableWidget& grid) {
    const bool follows =
        fault.column == definitions::ChartColumn::Stages &&
        cellText(grid, static_cast<int>(fault.row), static_cast<int>(fault.column)).trimmed().isEmpty();
    return follows ? stagesWords(fault.error) : wordsFor(fault.error);
}

}  // namespace

ChartView::ChartView(const PageTools& tools, QWidget* parent)
    : TorqueView(tools, parent),
      head_(plainLabel(this, "note")),
      grid_(new ChartGrid(kBlankRows, static_cast<int>(definitions::kChartColumns), this)),
      words_(plainLabel(this, nullptr)),
      holds_(new QWidget(this)),
      sharedWith_(plainLabel(holds_, "note", "chartSharedWith")),
      sharing_(new QComboBox(holds_)),
      yearFrom_(new QLineEdit(this)),
      yearTo_(new QLineEdit(this)),
      paste_(new QPushButton(tr("Paste (Ctrl+V)"), this)),
      enter_(new QPushButton(this)),
      clear_(new QPushButton(tr("Clear"), this)),
      card_(new QPushButton(tr("Card for the wall as PDF…"), this)),
      print_(new QPushButton(tr("Print it…"), this)) {
    grid_->setObjectName(QStringLiteral("chartGrid"));
    grid_->setAccessibleName(tr("Torque chart"));
    grid_->setHorizontalHeaderLabels(headings());
    grid_->installEventFilter(this);
    words_->setObjectName(QStringLiteral("chartWords"));
    sharing_->setObjectName(QStringLiteral("chartSharing"));
    sharing_->setAccessibleName(tr("For which machines the figures hold"));
    sharing_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    yearFrom_->setObjectName(QStringLiteral("chartYearFrom"));
    yearTo_->setObjectName(QStringLiteral("chartYearTo"));
    yearFrom_->setAccessibleName(tr("First model year that has the same figures"));
    yearTo_->setAccessibleName(tr("Last model year that has the same figures"));
    paste_->setObjectName(QStringLiteral("chartPaste"));
    enter_->setObjectName(QStringLiteral("chartEnter"));
    clear_->setObjectName(QStringLiteral("chartClear"));
    card_->setObjectName(QStringLiteral("chartCard"));
    print_->setObjectName(QStringLiteral("chartPrint"));
    print_->setAccessibleName(tr("Print the card for the wall"));
    layOut();
    connect(grid_, &QTableWidget::cellChanged, this, &ChartView::check);
    connect(sharing_, &QComboBox::currentIndexChanged, this, &ChartView::check);
    connect(yearFrom_, &QLineEdit::textChanged, this, &ChartView::check);
    connect(yearTo_, &QLineEdit::textChanged, this, &ChartView::check);
    connect(paste_, &QPushButton::clicked, this, &ChartView::paste);
    connect(enter_, &QPushButton::clicked, this, &ChartView::enterAll);
    connect(clear_, &QPushButton::clicked, this, &ChartView::clear);
    connect(card_, &QPushButton::clicked, this, &ChartView::saveCard);
    connect(print_, &QPushButton::clicked, this, &ChartView::printCard);
}

void ChartView::layOut() {
    const int letter = fontMetrics().averageCharWidth();
    for (QLineEdit* year : {yearFrom_, yearTo_})
        year->setMaximumWidth(letter * 6 + kSpaceSection);
    const std::array<int, definitions::kChartColumns> letters{26, 11, 7, 10, 8, 16, 14, 12, 14, 8, 20, 9};
    auto* header = grid_->horizontalHeader();
    header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    for (int at = 0; at < grid_->columnCount(); ++at)
        grid_->setColumnWidth(at, std::max(letters.at(static_cast<std::size_t>(at)) * letter,
                                           header->sectionSizeHint(at) + kSpaceClose));
    static_cast<ChartGrid*>(grid_)->shareWidth(letters.front() * letter);
    grid_->verticalHeader()->setDefaultAlignment(Qt::AlignCenter);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(kSpaceClose);
    buttons->addWidget(enter_);
    buttons->addWidget(paste_);
    buttons->addWidget(clear_);
    buttons->addSpacing(kSpaceGroup);
    buttons->addWidget(new QLabel(tr("the same for model years"), this));
    buttons->addWidget(yearFrom_);
    buttons->addWidget(new QLabel(tr("to"), this));
    buttons->addWidget(yearTo_);
    buttons->addStretch();
    buttons->addWidget(card_);
    buttons->addWidget(print_);
    auto* holds = new QHBoxLayout(holds_);
    holds->setContentsMargins(0, 0, 0, 0);
    holds->setSpacing(kSpaceClose);
    holds->addWidget(sharing_);
    holds->addWidget(sharedWith_, 1);
    auto* lines = linesOf(this);
    lines->addWidget(head_);
    lines->addWidget(grid_, 1);
    lines->addWidget(words_);
    lines->addWidget(holds_);
    lines->addLayout(buttons);
}

QWidget* ChartView::firstFocus() {
    return grid_;
}

QStringList ChartView::unsaved() const {
    return rows().empty() ? QStringList() : QStringList{tr("a torque chart that was not entered")};
}

void ChartView::refresh() {
    const auto before = machine_;
    machine_ = machineShown(workbench());
    const auto* machine = machine_ ? workbench().book()->ledger().find<items::Machine>(*machine_) : nullptr;
    head_->setText(
        machine == nullptr
            ? tr("Choose the machine first (F5 to F8): a chart is of one machine.")
            : tr("The chart of %1 from its service manual. Type, or paste from a spreadsheet (Ctrl+V): "
                 "cells parted by tabs or semicolons, with or without a line of headings. A range is "
                 "18-22; a unit may stand behind the figure. Nothing is written until you say so.")
                  .arg(text(machine->name)));
    grid_->setEnabled(machine != nullptr && !workbench().readOnly());
    card_->setEnabled(machine != nullptr);
    print_->setEnabled(machine != nullptr);
    if (machine != nullptr && machine_ != before) {
        const QSignalBlocker quiet(sharing_);
        sharing_->clear();
        addChoices<Holds>(*sharing_, {{Holds::ForAll, tr("for all of the model")},
                                      {Holds::ForOne, tr("for %1 only").arg(text(machine->name))}});
    }
    check();
}

bool ChartView::eventFilter(QObject* watched, QEvent* event) {
    if (watched == grid_ && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Paste)) {
            paste();
            return true;
        }
        if (key->matches(QKeySequence::Delete) || key->key() == Qt::Key_Backspace) {
            const auto chosen = grid_->selectedItems();
            settling_ = true;
            for (QTableWidgetItem* item : chosen)
                item->setText(QString());
            settling_ = false;
            check();
            return true;
        }
    }
    return TorqueView::eventFilter(watched, event);
}

std::vector<definitions::ChartRow> ChartView::rows() const {
    std::vector<definitions::ChartRow> rows;
    for (int row = 0; row < grid_->rowCount(); ++row) {
        definitions::ChartRow cells;
        for (std::size_t column = 0; column < cells.size(); ++column)
            cells.at(column) = cellText(*grid_, row, static_cast<int>(column)).toStdString();
        rows.push_back(std::move(cells));
    }
    const auto isBlank = [](const definitions::ChartRow& row) {
        return std::all_of(row.begin(), row.end(), [](const std::string& cell) { return cell.empty(); });
    };
    while (!rows.empty() && isBlank(rows.back()))
        rows.pop_back();
    return rows;
}

void ChartView::growTo(int rows) {
    if (grid_->rowCount() < std::min(rows, kMostRows))
        grid_->setRowCount(std::min(rows, kMostRows));
}

void ChartView::put(int at, const std::vector<definitions::ChartRow>& rows) {
    settling_ = true;
    growTo(at + static_cast<int>(rows.size()) + kBlankRows);
    for (std::size_t row = 0; row < rows.size(); ++row)
        for (std::size_t column = 0; column < rows[row].size(); ++column) {
            const int line = at + static_cast<int>(row);
            if (line < grid_->rowCount())
                grid_->setItem(line, static_cast<int>(column),
                               new QTableWidgetItem(text(rows[row].at(column))));
        }
    settling_ = false;
    check();
}

// A single cell goes where the cursor is; more than that are whole rows from there on.
void ChartView::paste() {
    const QString pasted = QApplication::clipboard()->text();
    const bool single = !pasted.contains(QLatin1Char('\t')) && !pasted.contains(QLatin1Char(';')) &&
                        !pasted.trimmed().contains(QLatin1Char('\n'));
    const int row = std::max(0, grid_->currentRow());
    if (single) {
        grid_->setItem(row, std::max(0, grid_->currentColumn()), new QTableWidgetItem(pasted.trimmed()));
        return;
    }
    const auto rows = definitions::readChart(pasted.toStdString());
    if (static_cast<int>(rows.size()) + row > kMostRows) {
        words_->setText(tr("That is more than %1 rows: paste a part of it.").arg(kMostRows));
        return;
    }
    put(row, rows);
}

void ChartView::showFaults(const std::vector<definitions::ChartFault>& faults) {
    const Tokens tokens = tokensFor(palette());
    settling_ = true;
    for (int row = 0; row < grid_->rowCount(); ++row)
        for (int column = 0; column < grid_->columnCount(); ++column)
            if (auto* item = grid_->item(row, column)) {
                item->setToolTip(QString());
                item->setFont(grid_->font());
                item->setForeground(tokens.ink);
                item->setBackground(QBrush());
            }
    for (const definitions::ChartFault& fault : faults) {
        const int row = static_cast<int>(fault.row);
        const int column = static_cast<int>(fault.column);
        if (grid_->item(row, column) == nullptr)
            grid_->setItem(row, column, new QTableWidgetItem);
        QTableWidgetItem* item = grid_->item(row, column);
        item->setToolTip(asTip(faultWords(fault, *grid_)));
        // By shape first: bold and underlined.
        QFont font = grid_->font();
        font.setBold(true);
        font.setUnderline(true);
        item->setFont(font);
        item->setForeground(tokens.over);
        item->setBackground(item->text().isEmpty() ? QBrush(tokens.select) : QBrush());
    }
    settling_ = false;
}

void ChartView::check() {
    if (settling_)
        return;
    definitions::Chart chart;
    if (machine_ && workbench().book())
        chart = definitions::checkChart(*workbench().book(), *machine_, rows());
    growTo(static_cast<int>(rows().size()) + kBlankRows);
    showFaults(chart.faults);
    const auto ready = chart.versions.size();
    QString words;
    for (std::size_t at = 0; at < std::min<std::size_t>(4, chart.faults.size()); ++at)
        words += tr("Row %1, %2: %3")
                     .arg(chart.faults[at].row + 1)
                     .arg(headings().at(static_cast<int>(chart.faults[at].column)),
                          faultWords(chart.faults[at], *grid_)) +
                 QLatin1Char('\n');
    for (std::size_t at = 0; chart.faults.empty() && at < std::min<std::size_t>(4, chart.doubts.size()); ++at)
        words += doubtWords(chart.doubts[at]) + QLatin1Char('\n');
    if (chart.faults.size() > 4)
        words +=
            tr("and %n more cell(s) that can't be read", nullptr, static_cast<int>(chart.faults.size()) - 4);
    else if (chart.faults.empty() && chart.unchanged > 0)
        words +=
            tr("%n of the rows say(s) what is there already.", nullptr, static_cast<int>(chart.unchanged));
    words_->setText(words.trimmed());
    enter_->setText(ready == 0 ? tr("Enter the chart")
                               : tr("Enter %n joint(s)", nullptr, static_cast<int>(ready)));
    enter_->setEnabled(ready > 0 && chart.faults.empty() && !workbench().readOnly());
    const bool any = !rows().empty();
    clear_->setEnabled(any);
    paste_->setEnabled(grid_->isEnabled());
    offerSharing(chart);
}

// A figure of a joint that is shared goes to every machine of the model, or stays with this one: that is
// chosen, never guessed.
void ChartView::offerSharing(const definitions::Chart& chart) {
    QStringList others;
    std::size_t most = 0;
    if (workbench().book())
        for (const auto& [other, versions] : definitions::forOthers(*workbench().book(), chart.versions)) {
            others << text(workbench().book()->ledger().find<items::Machine>(other)->name);
            most = std::max(most, versions.size());
        }
    holds_->setVisible(!others.isEmpty());
    const QString names = others.join(QStringLiteral(", "));
    const QString rows = tr("%n row(s) shared with %1", nullptr, static_cast<int>(most)).arg(names);
    sharedWith_->setText(isForThisOneOnly() ? tr("%1: what stands there stays.").arg(rows)
                                            : tr("%1: what is typed goes there as well.").arg(rows));
    for (QLineEdit* year : {yearFrom_, yearTo_})
        year->setEnabled(!isForThisOneOnly());
}

bool ChartView::isForThisOneOnly() const {
    return holds_->isVisibleTo(this) && chosenOf<Holds>(*sharing_) == Holds::ForOne;
}

std::optional<std::vector<fastening::JointVersion>> ChartView::withYears(
    std::vector<fastening::JointVersion> versions) {
    const bool none = yearFrom_->text().trimmed().isEmpty() && yearTo_->text().trimmed().isEmpty();
    if (none)
        return versions;
    const auto from = units::parseCount("shared_from", yearFrom_->text().trimmed().toStdString(), 2199);
    const auto to = units::parseCount("shared_to", yearTo_->text().trimmed().toStdString(), 2199);
    if (!from || !to) {
        words_->setText(wordsFor(from ? to.error() : from.error()));
        return std::nullopt;
    }
    for (fastening::JointVersion& version : versions) {
        version.sharedFrom = *from;
        version.sharedTo = *to;
    }
    return versions;
}

void ChartView::enterAll() {
    if (!machine_)
        return;
    const auto chart = definitions::checkChart(*workbench().book(), *machine_, rows());
    if (!chart.faults.empty() || chart.versions.empty())
        return;
    const auto versions = isForThisOneOnly() ? std::optional(definitions::forThisOneOnly(chart.versions))
                                             : withYears(chart.versions);
    if (!versions)
        return;
    const auto done =
        workbench().attempt([machine = *machine_, joints = *versions](const verbs::VerbContext& context) {
            return verbs::saveJoints(context, machine, joints);
        });
    if (!done) {
        words_->setText(wordsFor(done.error()));
        return;
    }
    clear();
    guide().say(text(done->text));
}

void ChartView::clear() {
    settling_ = true;
    grid_->clearContents();
    grid_->setRowCount(kBlankRows);
    settling_ = false;
    chooseIn(*sharing_, Holds::ForAll);
    check();
}

std::optional<sheet::TorqueCard> ChartView::card() {
    if (!machine_)
        return std::nullopt;
    auto made = sheet::torqueCard(*workbench().book(), *machine_, speech());
    if (made)
        return std::move(*made);
    words_->setText(tr("This machine has no torque figure yet: type them in from its service manual first."));
    return std::nullopt;
}

void ChartView::printCard() {
    const auto content = card();
    if (!content)
        return;
    const auto layOut = [&](QSizeF area) { return layOutTorqueCard(*content, area); };
    const QString title = torqueCardTitle(*content);
    const Printing printing = printPages(layOut, title, this);
    if (printing.answer == PrintAnswer::Failed)
        prompts().report(tr("The printer did not take the card."), tr("Try again, or save it as PDF."));
    else if (!printing.file.isEmpty())
        guide().say(tr("the torque card is in %1").arg(printing.file));
}

void ChartView::saveCard() {
    const auto content = card();
    if (!content)
        return;
    const QString title = torqueCardTitle(*content);
    const auto path = prompts().choosePdf(tr("Save the torque card"), title);
    if (!path)
        return;
    const auto layOut = [&](QSizeF area) { return layOutTorqueCard(*content, area); };
    const PdfResult result = writePagesPdf(layOut, title, *path, PaperSize::A4, workbench().path());
    if (!result.isWritten())
        prompts().report(wordsFor(result), result.detail);
    else
        guide().say(tr("the torque card is in %1").arg(*path));
}

}  // namespace wm::ui
