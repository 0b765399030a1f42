// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/sheets/sheets_page.h"

#include <QComboBox>
#include <QEvent>
#include <QGraphicsView>
#include <QLabel>
#include <QPrintPreviewWidget>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

#include "core/verbs/verbs.h"
#include "ui/entry/choice.h"
#include "ui/pages/columns.h"
#include "ui/pages/sheets/sheet_rows.h"
#include "ui/print/pdf_words.h"
#include "ui/print/print_dialogs.h"
#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/speech.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/prompts.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

// What is on the sheet goes on record with its number.
weekend::IssuedSheet issuedFrom(const book::Book& book, MachineId machine) {
    weekend::IssuedSheet issued{.machine = machine, .date = book.today()};
    const auto& events = book.ahead(machine).events;
    if (!events.empty())
        issued.target = events.front().name;
    for (const weekend::Job& job : book.pickedJobs(machine))
        issued.jobs.push_back({.task = job.task, .snag = job.snag});
    return issued;
}

}  // namespace

SheetsPage::SheetsPage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      sheets_(new RowTable({tr("Sheet"), tr("Machine"), tr("For"), tr("Jobs"), tr("Day")}, 2, this)),
      words_(new QLabel(this)),
      paper_(new QComboBox(this)),
      print_(new QPushButton(tr("Print (Ctrl+P)"), this)),
      pdf_(new QPushButton(tr("Save as PDF (Ctrl+S)"), this)),
      void_(new QPushButton(tr("Make void"), this)),
      printer_(sheetPrinter(sheet::JobSheet{}, PaperSize::A4)),
      preview_(new QPrintPreviewWidget(printer_.get(), this)) {
    sheets_->setObjectName(QStringLiteral("sheetsTable"));
    sheets_->setAccessibleName(tr("Job sheets"));
    words_->setTextFormat(Qt::PlainText);
    words_->setWordWrap(true);
    words_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    paper_->setObjectName(QStringLiteral("sheetsPaper"));
    paper_->setAccessibleName(tr("Paper"));
    addChoices<PaperSize>(
        *paper_, {{PaperSize::A4, QStringLiteral("A4")}, {PaperSize::Letter, QStringLiteral("Letter")}});
    print_->setObjectName(QStringLiteral("sheetsPrint"));
    print_->setDefault(true);
    print_->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_P));
    pdf_->setObjectName(QStringLiteral("sheetsPdf"));
    pdf_->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_S));
    void_->setObjectName(QStringLiteral("sheetsVoid"));
    void_->setToolTip(tr("A sheet that went out is not undone: its number stays, and so does the reason"));
    preview_->setObjectName(QStringLiteral("sheetsPreview"));
    preview_->setAccessibleName(tr("What will be printed"));
    preview_->setZoomMode(QPrintPreviewWidget::FitInView);
    layOut();
    connect(sheets_, &RowTable::chosenChanged, this, &SheetsPage::showSheet);
    connect(paper_, &QComboBox::currentIndexChanged, this, &SheetsPage::showSheet);
    connect(print_, &QPushButton::clicked, this, &SheetsPage::print);
    connect(pdf_, &QPushButton::clicked, this, &SheetsPage::savePdf);
    connect(void_, &QPushButton::clicked, this, &SheetsPage::makeVoid);
    connect(preview_, &QPrintPreviewWidget::paintRequested, this, [this](QPrinter* printer) {
        if (shown_)
            paintSheet(*shown_, *printer, {});
    });
}

SheetsPage::~SheetsPage() {
    delete preview_;
}  // before the printer that it previews

void SheetsPage::layOut() {
    auto* left = new QWidget(this);
    auto* leftLines = linesOf(left);
    leftLines->setSpacing(kSpaceLine);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(print_);
    buttons->addWidget(pdf_);
    buttons->addWidget(paper_);
    buttons->addWidget(void_);
    buttons->addStretch();
    leftLines->addWidget(sheets_, 1);
    leftLines->addWidget(words_);
    leftLines->addLayout(buttons);
    pageLines(this)->addWidget(columnsOf(this, {{left, 520}, {preview_, 720}}), 1);
    dressPreview();
}

// The paper lies on the page's own ground, by day and by night.
void SheetsPage::dressPreview() {
    for (auto* view : preview_->findChildren<QGraphicsView*>()) {
        view->setFrameShape(QFrame::NoFrame);
        view->scene()->setBackgroundBrush(palette().brush(QPalette::Window));
    }
}

void SheetsPage::changeEvent(QEvent* event) {
    Page::changeEvent(event);
    if (event->type() == QEvent::PaletteChange)
        dressPreview();
}

QWidget* SheetsPage::firstFocus() {
    return sheets_;
}

void SheetsPage::refresh() {
    sheets_->show(sheetRows(*workbench().book(), workbench().chosen()));
    showSheet();
}

std::optional<MachineId> SheetsPage::proofMachine() const {
    const auto id = sheets_->chosenId();
    if (!id || workbench().book()->ledger().find<items::Machine>(MachineId(*id)) == nullptr)
        return std::nullopt;
    return MachineId(*id);
}

const weekend::IssuedSheet* SheetsPage::chosenSheet() const {
    const auto id = sheets_->chosenId();
    return id ? issuedSheet(*workbench().book(), SheetId(*id)) : nullptr;
}

void SheetsPage::makeVoid() {
    const auto* sheet = chosenSheet();
    if (sheet == nullptr || isVoid(*workbench().book(), *sheet))
        return;
    EntryRequest request;
    request.kind = EntryKind::Strike;
    request.fact = sheet->id.value();
    guide().enter(request);
}

void SheetsPage::showSheet() {
    const auto book = workbench().book();
    const auto machine = proofMachine();
    shown_.reset();
    QString words;
    if (machine) {
        auto content = sheet::jobSheet(*book, *machine, 0, speech());
        if (content)
            shown_ = std::move(*content);
        else
            words = wordsFor(content.error());
    } else if (const auto id = sheets_->chosenId()) {
        if (const auto* issued = issuedSheet(*book, SheetId(*id)))
            words = issuedWords(*book, *issued);
    } else {
        words = tr("Nothing to print yet: pick jobs on the page Weekend.");
    }
    words_->setText(words);
    const auto* issued = chosenSheet();
    void_->setEnabled(issued != nullptr && !isVoid(*book, *issued));
    print_->setEnabled(shown_.has_value());
    pdf_->setEnabled(shown_.has_value());
    const auto size = chosenOf<PaperSize>(*paper_);
    printer_->setPageSize(QPageSize(size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter));
    preview_->setVisible(shown_.has_value());
    preview_->updatePreview();
}

bool SheetsPage::issue(const std::function<bool(const sheet::JobSheet&)>& hand) {
    const auto machine = proofMachine();
    if (!machine || !shown_)
        return false;
    const auto issued = workbench().attempt([machine](const verbs::VerbContext& context) {
        return verbs::issueSheet(context, issuedFrom(context.book, *machine));
    });
    if (!issued) {
        prompts().report(wordsFor(issued.error()), QString());
        return false;
    }
    const auto number = std::get<weekend::IssuedSheet>(issued->rows.front()).number;
    const auto content = sheet::jobSheet(*workbench().book(), *machine, number, speech());
    if (!content || !hand(*content)) {
        workbench().undo(store::LastMachine::Stays, store::Redo::Never);
        return false;
    }
    workbench().endUndo();
    return true;
}

void SheetsPage::print() {
    const auto size = chosenOf<PaperSize>(*paper_);
    QString said;
    const QString name = suggestedName();  // before the number is given away
    const bool isOut = issue([&, this](const sheet::JobSheet& content) {
        const Printing printing = printSheet(content, size, name, this);
        if (printing.answer == PrintAnswer::Failed)
            prompts().report(tr("The printer did not take the sheet."),
                             tr("Its number was taken back; try again, or save "
                                "it as PDF."));
        if (!printing.file.isEmpty())
            said = tr("job sheet no. %1 is in %2").arg(content.number).arg(printing.file);
        return printing.answer == PrintAnswer::Printed;
    });
    if (isOut && !said.isEmpty())
        guide().say(said);
}

void SheetsPage::savePdf() {
    const auto path = prompts().choosePdf(tr("Save the job sheet"), suggestedName());
    if (!path)
        return;
    const auto size = chosenOf<PaperSize>(*paper_);
    QString said;
    const bool isOut = issue([&](const sheet::JobSheet& content) {
        const PdfResult result = writeSheetPdf(content, *path, size, workbench().path());
        if (!result.isWritten())
            prompts().report(wordsFor(result), result.detail);
        said = tr("job sheet no. %1 is in %2").arg(content.number).arg(*path);
        return result.isWritten();
    });
    // The last word: what the file says of its saving would take the place of an earlier one.
    if (isOut)
        guide().say(said);
}

QString SheetsPage::suggestedName() const {
    const auto book = workbench().book();
    const auto machine = proofMachine();
    const auto* card = machine ? book->ledger().find<items::Machine>(*machine) : nullptr;
    if (card == nullptr)
        return {};
    const QString number = QString::number(verbs::nextSheetNumber(book->ledger()));
    return tr("%1 %2 sheet %3").arg(text(card->name), text(book->today().iso()), number);
}

}  // namespace wm::ui
