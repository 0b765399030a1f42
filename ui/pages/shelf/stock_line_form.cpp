// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/shelf/stock_line_form.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

#include "core/verbs/verbs.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr std::int64_t kMostAmount = 1'000'000;

enum What { Bought, Used, Counted, Lost, Ordered, NewLine };

QLineEdit* field(QWidget* parent, const QString& name, const QString& words) {
    auto* edit = new QLineEdit(parent);
    edit->setObjectName(name);
    edit->setAccessibleName(words);
    edit->setPlaceholderText(words);
    return edit;
}

base::Result<picture::Change> bookMove(const verbs::Pen& pen, What what, StockLineId line,
                                       std::int64_t amount) {
    const calendar::Date today = pen.book.today();
    if (what == Counted)
        return verbs::countStock(pen, line, std::nullopt, amount, today);
    if (what == Ordered)
        return verbs::orderStock(pen, {.line = line, .date = today, .amount = amount});
    stock::StockMove move{.line = line, .date = today, .amount = what == Bought ? amount : -amount};
    move.why = what == Bought ? stock::StockWhy::Bought
               : what == Lost ? stock::StockWhy::Lost
                              : stock::StockWhy::Used;
    return verbs::moveStock(pen, move, std::nullopt);
}

}  // namespace

StockLineForm::StockLineForm(Workbench& workbench, QWidget* parent)
    : QWidget(parent),
      workbench_(workbench),
      what_(new QComboBox(this)),
      name_(field(this, QStringLiteral("stockName"), tr("part or fluid"))),
      partNumber_(field(this, QStringLiteral("stockPartNumber"), tr("part number"))),
      unit_(new QComboBox(this)),
      amount_(field(this, QStringLiteral("stockAmount"), tr("how much"))),
      place_(field(this, QStringLiteral("stockPlace"), tr("where on the shelf"))),
      words_(new QLabel(this)),
      problem_(new QLabel(this)) {
    what_->setObjectName(QStringLiteral("stockWhat"));
    what_->setAccessibleName(tr("What happened to the line"));
    what_->addItems({tr("bought"), tr("used"), tr("counted"), tr("lost"), tr("ordered"), tr("new line")});
    unit_->setObjectName(QStringLiteral("stockUnit"));
    unit_->setAccessibleName(tr("Counted in"));
    unit_->addItems({tr("pieces"), tr("ml"), tr("g")});
    layOut();
    connect(what_, &QComboBox::currentIndexChanged, this, [this] { setLine(line_); });
    for (QLineEdit* edit : {name_, partNumber_, amount_, place_})
        connect(edit, &QLineEdit::returnPressed, this, &StockLineForm::save);
    setLine(std::nullopt);
}

void StockLineForm::layOut() {
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(kSpaceClose);
    problem_->setWordWrap(true);
    amount_->setMaximumWidth(140);
    line->addWidget(words_);
    line->addWidget(what_);
    line->addWidget(amount_);
    line->addWidget(unit_);
    line->addWidget(name_, 2);
    line->addWidget(partNumber_, 1);
    line->addWidget(place_, 1);
    line->addWidget(problem_, 2);
}

void StockLineForm::setLine(std::optional<StockLineId> line) {
    line_ = line;
    const bool isNew = what_->currentIndex() == NewLine;
    for (QWidget* widget : std::initializer_list<QWidget*>{name_, partNumber_, unit_, place_})
        widget->setVisible(isNew);
    const auto book = workbench_.book();
    const auto* card = line && book ? book->ledger().find<stock::StockLine>(*line) : nullptr;
    words_->setText(isNew ? QString() : card == nullptr ? tr("Choose a line, or:") : text(card->name));
    amount_->setPlaceholderText(card != nullptr && card->unit == upkeep::Unit::Millilitre ? tr("how many ml")
                                : card != nullptr && card->unit == upkeep::Unit::Gram     ? tr("how many g")
                                                                                          : tr("how many"));
}

void StockLineForm::startNewLine() {
    what_->setCurrentIndex(NewLine);
    name_->setFocus();
}

void StockLineForm::say(const QString& words) {
    problem_->setText(words);
}

void StockLineForm::save() {
    if (what_->currentIndex() == NewLine) {
        saveNewLine();
        return;
    }
    if (!line_) {
        say(tr("Choose a line of the shelf first."));
        return;
    }
    const auto amount = units::parseCount("amount", amount_->text().toStdString(), kMostAmount);
    if (!amount) {
        say(wordsFor(amount.error()));
        return;
    }
    const auto what = static_cast<What>(what_->currentIndex());
    const auto done = workbench_.attempt(
        [=, line = *line_](const verbs::Pen& pen) { return bookMove(pen, what, line, *amount); });
    say(done ? QString() : wordsFor(done.error()));
    if (done)
        amount_->clear();
}

void StockLineForm::saveNewLine() {
    const bool blank = amount_->text().trimmed().isEmpty();
    const auto amount = blank ? base::Result<std::int64_t>(0)
                              : units::parseCount("amount", amount_->text().toStdString(), kMostAmount);
    if (!amount) {
        say(wordsFor(amount.error()));
        return;
    }
    const stock::StockLine line{.name = name_->text().toStdString(),
                                .partNumber = partNumber_->text().toStdString(),
                                .unit = static_cast<upkeep::Unit>(unit_->currentIndex()),
                                .place = place_->text().toStdString()};
    const auto done =
        workbench_.attempt([=](const verbs::Pen& pen) { return verbs::addStockLine(pen, line, *amount); });
    say(done ? QString() : wordsFor(done.error()));
    if (!done)
        return;
    for (QLineEdit* edit : {name_, partNumber_, amount_, place_})
        edit->clear();
    name_->setFocus();
}

}  // namespace wm::ui
