// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/shelf/stock_line_form.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include "core/verbs/verbs.h"
#include "ui/entry/choice.h"
#include "ui/entry/flow.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr std::int64_t kMostAmount = 1'000'000;

enum class What : std::uint8_t { Bought, Used, Counted, Lost, Ordered, NewLine };

QLineEdit* field(QWidget* parent, const QString& name, const QString& words) {
    auto* edit = new QLineEdit(parent);
    edit->setObjectName(name);
    edit->setAccessibleName(words);
    edit->setPlaceholderText(words);
    return edit;
}

// What was saved is taken back as a whole: the field must not bring its letters again.
void empty(QLineEdit& field) {
    field.setText(QString());
}

base::Result<picture::Change> bookMove(const verbs::VerbContext& context, What what, StockLineId line,
                                       std::int64_t amount) {
    const calendar::Date today = context.book.today();
    const auto move = [&](std::int64_t by, stock::StockWhy why) {
        return verbs::moveStock(context, {.line = line, .date = today, .amount = by, .why = why},
                                std::nullopt);
    };
    switch (what) {
        case What::Bought:
            return move(amount, stock::StockWhy::Bought);
        case What::Lost:
            return move(-amount, stock::StockWhy::Lost);
        case What::Counted:
            return verbs::countStock(context, line, std::nullopt, amount, today);
        case What::Ordered:
            return verbs::orderStock(context, {.line = line, .date = today, .amount = amount});
        case What::Used:
        case What::NewLine:  // entered apart
            break;
    }
    return move(-amount, stock::StockWhy::Used);
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
      problem_(plainLabel(this, nullptr, "stockProblem")) {
    what_->setObjectName(QStringLiteral("stockWhat"));
    what_->setAccessibleName(tr("What happened to the line"));
    addChoices<What>(*what_, {{What::Bought, tr("bought")},
                              {What::Used, tr("used")},
                              {What::Counted, tr("counted")},
                              {What::Lost, tr("lost")},
                              {What::Ordered, tr("ordered")},
                              {What::NewLine, tr("new line")}});
    unit_->setObjectName(QStringLiteral("stockUnit"));
    unit_->setAccessibleName(tr("Counted in"));
    addChoices<upkeep::Unit>(*unit_, {{upkeep::Unit::Piece, tr("pieces")},
                                      {upkeep::Unit::Millilitre, tr("ml")},
                                      {upkeep::Unit::Gram, tr("g")}});
    problem_->hide();
    layOut();
    connect(what_, &QComboBox::currentIndexChanged, this, [this] { setLine(line_); });
    for (QLineEdit* edit : {name_, partNumber_, amount_, place_})
        connect(edit, &QLineEdit::returnPressed, this, &StockLineForm::save);
    setLine(std::nullopt);
}

void StockLineForm::layOut() {
    auto* fields = new Flow(kSpaceClose, kSpaceHair);
    words_->setFixedHeight(amount_->sizeHint().height());
    const int letter = fontMetrics().averageCharWidth();
    for (const auto& [field, letters] :
         {std::pair(amount_, 14), std::pair(name_, 34), std::pair(partNumber_, 20), std::pair(place_, 24)})
        field->setFixedWidth(letter * letters + kSpaceSection);
    for (QWidget* each :
         std::initializer_list<QWidget*>{words_, what_, amount_, unit_, name_, partNumber_, place_})
        fields->addWidget(each);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    lines->addLayout(fields);
    lines->addWidget(problem_);
}

void StockLineForm::setLine(std::optional<StockLineId> line) {
    line_ = line;
    const bool isNew = chosenOf<What>(*what_) == What::NewLine;
    for (QWidget* widget : std::initializer_list<QWidget*>{name_, partNumber_, unit_, place_})
        widget->setVisible(isNew);
    const auto book = workbench_.book();
    const auto* card = line && book ? book->ledger().find<stock::StockLine>(*line) : nullptr;
    words_->setText(card == nullptr ? tr("Choose a line, or:") : text(card->name));
    words_->setVisible(!isNew);
    amount_->setPlaceholderText(card != nullptr && card->unit == upkeep::Unit::Millilitre ? tr("how many ml")
                                : card != nullptr && card->unit == upkeep::Unit::Gram     ? tr("how many g")
                                                                                          : tr("how many"));
}

void StockLineForm::startNewLine() {
    chooseIn(*what_, What::NewLine);
    name_->setFocus();
}

void StockLineForm::say(const QString& words) {
    sayIn(problem_, words, true);
}

void StockLineForm::save() {
    const auto what = chosenOf<What>(*what_);
    if (what == What::NewLine) {
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
    const auto done = workbench_.attempt([=, line = *line_](const verbs::VerbContext& context) {
        return bookMove(context, what, line, *amount);
    });
    say(done ? QString() : wordsFor(done.error()));
    if (done)
        empty(*amount_);
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
                                .unit = chosenOf<upkeep::Unit>(*unit_),
                                .place = place_->text().toStdString()};
    const auto done = workbench_.attempt(
        [=](const verbs::VerbContext& context) { return verbs::addStockLine(context, line, *amount); });
    say(done ? QString() : wordsFor(done.error()));
    if (!done)
        return;
    for (QLineEdit* edit : {name_, partNumber_, amount_, place_})
        empty(*edit);
    name_->setFocus();
}

}  // namespace wm::ui
