// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/window_line.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>

#include "core/verbs/verbs.h"
#include "ui/entry/day_words.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr std::int64_t kMostHands = 20;
const QString kTimeOfDay = QStringLiteral("00:00");

// As wide as `sample`, and no narrower however many fields stand beside it.
QLineEdit* field(QWidget* parent, const QString& name, const QString& accessible, const QString& sample) {
    auto* edit = new QLineEdit(parent);
    edit->setObjectName(name);
    edit->setAccessibleName(accessible);
    constexpr int kAround = 18;
    edit->setFixedWidth(edit->fontMetrics().horizontalAdvance(sample) + kAround);
    return edit;
}

}  // namespace

WindowLine::WindowLine(Workbench& workbench, QWidget* parent)
    : QWidget(parent),
      workbench_(workbench),
      day_(field(this, QStringLiteral("windowDay"), tr("Day of the work window"),
                 QStringLiteral("Wed 28 May"))),
      from_(field(this, QStringLiteral("windowFrom"), tr("Work begins at"), kTimeOfDay)),
      to_(field(this, QStringLiteral("windowTo"), tr("Work ends at"), kTimeOfDay)),
      hands_(field(this, QStringLiteral("windowHands"), tr("Pairs of hands"), QStringLiteral("20"))),
      cold_(
          field(this, QStringLiteral("coldAfter"), tr("An engine is cold after a run of it in"), kTimeOfDay)),
      problem_(new QLabel(this)) {
    problem_->setProperty("role", QStringLiteral("note"));
    problem_->setWordWrap(true);
    day_->setMaximumWidth(2 * day_->minimumWidth());  // a day of another year has its year
    day_->setPlaceholderText(tr("fri"));
    from_->setPlaceholderText(QStringLiteral("18:00"));
    to_->setPlaceholderText(QStringLiteral("21:00"));
    hands_->setPlaceholderText(QStringLiteral("1"));
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(kSpaceClose);
    const auto add = [&](const QString& words, QLineEdit* edit) {
        auto* label = new QLabel(words, this);
        label->setProperty("role", QStringLiteral("note"));
        label->setBuddy(edit);
        line->addWidget(label);
        line->addWidget(edit);
    };
    add(tr("At the bench"), day_);
    add(tr("from"), from_);
    add(tr("to"), to_);
    add(tr("hands"), hands_);
    add(tr("engine cold after"), cold_);
    cold_->setToolTip(
        tr("After a run the plan waits so long, hands off, before what wants the engine cold. "
           "4:00 is a habit of the trade, no measured figure."));
    connect(cold_, &QLineEdit::textEdited, this, [this] { dirty_ = true; });
    connect(cold_, &QLineEdit::returnPressed, this, &WindowLine::saveCooling);
    line->addWidget(problem_, 1);
    line->addStretch();
    for (QLineEdit* edit : {day_, from_, to_, hands_}) {
        connect(edit, &QLineEdit::textEdited, this, [this] { dirty_ = true; });
        connect(edit, &QLineEdit::returnPressed, this, &WindowLine::save);
    }
}

void WindowLine::say(const QString& words) {
    problem_->setText(words);
    problem_->setVisible(!words.isEmpty());
}

void WindowLine::refresh() {
    // What is being typed is not overwritten by somebody else's change.
    if (dirty_)
        return;
    const auto book = workbench_.book();
    const weekend::WorkWindow* window = book->nextWindow();
    day_->setText(window == nullptr ? QString() : dayWords(window->date, book->today()));
    from_->setText(window == nullptr ? QString()
                                     : QString::fromStdString(units::timeOfDayText(window->startsAt)));
    to_->setText(window == nullptr ? QString()
                                   : QString::fromStdString(units::timeOfDayText(window->endsAt)));
    hands_->setText(window == nullptr ? QString() : QString::number(window->hands));
    cold_->setText(QString::fromStdString(units::timeOfDayText(book->ledger().garage().cool)));
    say(window == nullptr ? tr("No work window yet: type day and times, then Enter.") : QString());
}

void WindowLine::saveCooling() {
    const auto cool = units::parseTimeOfDay("cool_minutes", cold_->text().toStdString());
    if (!cool)
        return say(wordsFor(cool.error()));
    dirty_ = false;
    if (*cool == workbench_.book()->ledger().garage().cool)
        return refresh();
    const auto done = workbench_.attempt(
        [cool = *cool](const verbs::VerbContext& context) { return verbs::setCooling(context, cool); });
    if (!done)
        say(wordsFor(done.error()));
    else
        refresh();
}

void WindowLine::save() {
    const auto book = workbench_.book();
    const weekend::WorkWindow* old = book->nextWindow();
    const auto orElse = [](const QLineEdit* edit) {
        return (edit->text().trimmed().isEmpty() ? edit->placeholderText() : edit->text()).toStdString();
    };
    const bool sameDay = old != nullptr && day_->text() == dayWords(old->date, book->today());
    const auto day = sameDay
                         ? base::Result<calendar::Date>(old->date)
                         : parseDay("day", QString::fromStdString(orElse(day_)), book->today(), Lean::Future);
    const auto from = units::parseTimeOfDay("from", orElse(from_));
    const auto to = units::parseTimeOfDay("to", orElse(to_));
    const auto hands = units::parseCount("hands", orElse(hands_), kMostHands);
    for (const auto* error : {day ? nullptr : &day.error(), from ? nullptr : &from.error(),
                              to ? nullptr : &to.error(), hands ? nullptr : &hands.error()})
        if (error != nullptr) {
            say(wordsFor(*error));
            return;
        }
    weekend::WorkWindow window = old == nullptr ? weekend::WorkWindow{} : *old;
    window.date = *day;
    window.startsAt = *from;
    window.endsAt = *to;
    window.hands = *hands;
    const auto done = workbench_.attempt(
        [=](const verbs::VerbContext& context) { return verbs::saveWindow(context, window); });
    if (!done) {
        say(wordsFor(done.error()));
        return;
    }
    dirty_ = false;
    refresh();
}

}  // namespace wm::ui
