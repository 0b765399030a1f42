// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/confirm_view.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pages/columns.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/torque/big_figure.h"
#include "ui/pages/torque/confirm_rows.h"
#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/doubt_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using definitions::Printed;
using definitions::PrintedKey;

ConfirmView::ConfirmView(const PageTools& tools, QWidget* parent)
    : TorqueView(tools, parent),
      head_(plainLabel(this, "note")),
      progress_(plainLabel(this, "section")),
      table_(new RowTable({tr("Kind"), tr("What"), tr("Of"), tr("As stored"), tr("Page")}, 1, this)),
      answer_(new QWidget(this)),
      name_(plainLabel(answer_, "section")),
      about_(plainLabel(answer_, "note")),
      stored_(new BigFigure(answer_, BigFigure::From::ArmsLength)),
      source_(plainLabel(answer_, "note")),
      figure_(captionedField(answer_, QStringLiteral("confirmFigure"), tr("figure as printed"), 0)),
      manual_(captionedField(answer_, QStringLiteral("confirmManual"), tr("manual"), 0)),
      page_(captionedField(answer_, QStringLiteral("confirmPage"), tr("page"), 8)),
      problem_(plainLabel(answer_, nullptr)),
      stands_(new QPushButton(tr("It stands there so, next (Enter)"), answer_)),
      next_(new QPushButton(tr("Not in my manual, next (Down)"), answer_)) {
    head_->setObjectName(QStringLiteral("confirmHead"));
    progress_->setObjectName(QStringLiteral("confirmProgress"));
    table_->setObjectName(QStringLiteral("confirmFigures"));
    table_->setAccessibleName(tr("Figures that nobody has confirmed against the manual"));
    table_->setMostLines(RowTable::kAsManyAsItTakes);
    table_->setSortingEnabled(false);  // the order is that of a manual
    name_->setObjectName(QStringLiteral("confirmName"));
    name_->setFont(pageTitleFont(font()));
    about_->setObjectName(QStringLiteral("confirmAbout"));
    stored_->setObjectName(QStringLiteral("confirmStored"));
    source_->setObjectName(QStringLiteral("confirmSource"));
    problem_->setObjectName(QStringLiteral("confirmProblem"));
    stands_->setObjectName(QStringLiteral("confirmStands"));
    next_->setObjectName(QStringLiteral("confirmNext"));
    stands_->setToolTip(tr("F12 too, wherever the keys are"));
    layOut();
    connectParts();
}

void ConfirmView::layOut() {
    auto* line = new QHBoxLayout;
    line->setSpacing(kSpaceClose);
    line->addWidget(figure_, 3);
    line->addWidget(manual_, 3);
    line->addWidget(page_, 1);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(kSpaceClose);
    buttons->addWidget(stands_);
    buttons->addWidget(next_);
    buttons->addStretch();
    auto* asked = plainLabel(answer_, "note");
    asked->setText(tr("As my manual prints it, and on which page:"));
    auto* right = linesOf(answer_);
    right->setSpacing(kSpaceHair);
    for (QWidget* each : std::initializer_list<QWidget*>{name_, about_, stored_, source_})
        right->addWidget(each);
    right->addSpacing(kSpaceLine);
    right->addWidget(asked);
    right->addLayout(line);
    right->addWidget(problem_);
    right->addSpacing(kSpaceClose);
    right->addLayout(buttons);
    right->addStretch();
    right_ = scrolled(answer_, this);
    auto* lines = linesOf(this);
    lines->addWidget(progress_);
    lines->addWidget(head_);
    lines->addWidget(columnsOf(this, {{table_, 640}, {right_, 600}}), 1);
}

void ConfirmView::connectParts() {
    for (QLineEdit* edit : {figure_, manual_, page_}) {
        edit->installEventFilter(this);
        connect(edit, &QLineEdit::returnPressed, this, &ConfirmView::confirm);
    }
    connect(page_, &QLineEdit::textEdited, this, [this](const QString& words) {
        if (machine_)
            pages_[*machine_] = words;
    });
    connect(manual_, &QLineEdit::textEdited, this, [this](const QString& words) {
        if (machine_)
            manuals_[*machine_] = words;
    });
    connect(table_, &RowTable::chosenChanged, this, &ConfirmView::showChosen);
    connect(table_, &RowTable::activatedId, this, [this] { figure_->setFocus(Qt::OtherFocusReason); });
    connect(stands_, &QPushButton::clicked, this, &ConfirmView::confirm);
    connect(next_, &QPushButton::clicked, this, &ConfirmView::goOn);
    connect(&workbench(), &Workbench::fileChanged, this, &ConfirmView::forget);
    auto* shortcut = new QShortcut(QKeySequence(Qt::Key_F12), this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, &ConfirmView::confirm);
}

// Another file: what was typed and passed over was about the figures of the last one.
void ConfirmView::forget() {
    machine_.reset();
    figures_.clear();
    ids_.clear();
    drafts_.clear();
    passed_.clear();
    shown_.reset();
    manuals_.clear();
    pages_.clear();
    questioned_.clear();
}

QWidget* ConfirmView::firstFocus() {
    return figure_->isVisibleTo(this) ? static_cast<QWidget*>(figure_) : this;
}

QStringList ConfirmView::unsaved() const {
    std::size_t begun = drafts_.size();
    if (shown_ && !typed().isEmpty() && !drafts_.contains(*shown_))
        ++begun;
    if (begun == 0)
        return {};
    return {tr("%n figure(s) typed from the manual and not entered", nullptr, static_cast<int>(begun))};
}

std::int64_t ConfirmView::idOf(const PrintedKey& key) {
    return ids_.try_emplace(key, static_cast<std::int64_t>(ids_.size()) + 1).first->second;
}

const Printed* ConfirmView::find(const PrintedKey& key) const {
    const auto at = std::find_if(figures_.begin(), figures_.end(),
                                 [&](const Printed& figure) { return figure.key == key; });
    return at == figures_.end() ? nullptr : &*at;
}

const Printed* ConfirmView::chosen() const {
    const auto id = table_->chosenId();
    for (const auto& [key, known] : ids_)
        if (id == known)
            return find(key);
    return nullptr;
}

QString ConfirmView::typed() const {
    const QString words = figure_->text().trimmed();
    return words == loaded_ ? QString() : words;
}

// What was begun at the figure that is seen is kept for when it is seen again.
void ConfirmView::keepTyped() {
    if (!shown_)
        return;
    if (const QString words = typed(); words.isEmpty())
        drafts_.erase(*shown_);
    else
        drafts_[*shown_] = words;
}

void ConfirmView::refresh() {
    keepTyped();
    const auto book = workbench().book();
    const auto machine = machineShown(workbench());
    if (machine != machine_) {
        passed_.clear();
        questioned_.clear();
        shown_.reset();
    }
    machine_ = machine;
    const auto* card = machine_ ? book->ledger().find<items::Machine>(*machine_) : nullptr;
    figures_ = card == nullptr ? std::vector<Printed>{}
                               : definitions::printedFigures(*book, card->id, decimalMark());
    if (card == nullptr) {
        progress_->clear();
        head_->setText(tr("Choose the machine first (F5 to F8): a service manual is of one machine."));
    } else {
        showCount(*card);
    }
    showRows();
    showChosen();
}

void ConfirmView::showCount(const items::Machine& machine) {
    const auto count = definitions::confirmedCount(figures_);
    progress_->setText(
        tr("%1: %2 of %3 confirmed")
            .arg(text(machine.name), QString::number(count.confirmed), QString::number(count.all)));
    head_->setText(count.all == 0 ? tr("No figures yet: a starter schedule brings jobs and joints, without "
                                       "any torque. The figures come from your service manual.")
                   : count.confirmed == count.all
                       ? tr("Every figure is confirmed against the service manual.")
                       : tr("Leaf through the service manual of this model and year. Enter: it stands there "
                            "so. Type another figure over it to put it right. Down: not in my manual; it "
                            "comes again in the next round.\n%1")
                             .arg(countByKind(figures_)));
}

void ConfirmView::showRows() {
    std::vector<TableRow> rows;
    for (const Printed& figure : figures_)
        if (!figure.confirmed)
            rows.push_back(confirmRow(figure, idOf(figure.key), passed_.contains(figure.key)));
    const bool any = !rows.empty();
    table_->setVisible(any);
    right_->setVisible(any);
    table_->show(std::move(rows));
}

void ConfirmView::showChosen() {
    const auto* figure = chosen();
    if (figure == nullptr || !machine_) {
        shown_.reset();
        return;
    }
    keepTyped();
    load(*figure);
}

void ConfirmView::load(const Printed& figure) {
    const bool isAnother = shown_ != figure.key;
    shown_ = figure.key;
    name_->setText(text(figure.name));
    about_->setText(aboutWords(figure));
    const auto [digits, unit] = splitFigure(figure);
    stored_->setVisible(!digits.isEmpty());
    stored_->setFigure(digits, unit, true);
    source_->setText(figure.figure.empty() && figure.aside.empty()
                         ? tr("not typed yet: type it as your manual prints it")
                         : tr("NOT CONFIRMED against the service manual: %1").arg(sourceWords(figure)));
    const auto draft = drafts_.find(figure.key);
    loaded_ = figureWords(figure);
    const QString words = draft == drafts_.end() ? loaded_ : draft->second;
    if (isAnother || figure_->text().trimmed() != words) {
        figure_->setText(words);
        figure_->selectAll();
    }
    if (isAnother)
        loadPlace(figure);
    const bool writes = !workbench().readOnly();
    for (QWidget* each : std::initializer_list<QWidget*>{figure_, manual_, page_, stands_})
        each->setEnabled(writes);
    settle(answer_);
}

// The manual and the page that the next figure likely stands on; from then on they are the mechanic's.
void ConfirmView::loadPlace(const Printed& figure) {
    const auto manual = manuals_.find(*machine_);
    manual_->setText(manual != manuals_.end() ? manual->second
                                              : text(definitions::manualOf(*workbench().book(), *machine_)));
    manual_->setCursorPosition(0);
    const auto page = pages_.find(*machine_);
    page_->setText(!figure.page.empty()   ? text(figure.page)
                   : page != pages_.end() ? page->second
                                          : QString());
    problem_->clear();
    questioned_.clear();
}

bool ConfirmView::questions(const PrintedKey& key, const QString& figure) {
    const auto doubt =
        verbs::doubtAbout(*workbench().book(), key, figureTyped(key.kind, figure), decimalMark());
    if (!doubt || !*doubt || questioned_ == figure)
        return false;
    questioned_ = figure;
    problem_->setText(questionAbout(**doubt));
    return true;
}

std::optional<std::int64_t> ConfirmView::nextId() const {
    const auto ids = table_->shownIds();
    const auto here = std::find(ids.begin(), ids.end(), table_->chosenId().value_or(0));
    std::vector<std::int64_t> round(here == ids.end() ? ids.begin() : here + 1, ids.end());
    round.insert(round.end(), ids.begin(), here);
    for (const std::int64_t id : round)
        for (const auto& [key, known] : ids_)
            if (known == id && !passed_.contains(key))
                return id;
    return std::nullopt;
}

void ConfirmView::confirm() {
    if (!shown_ || workbench().readOnly())
        return;
    const PrintedKey key = *shown_;
    const QString figure = figure_->text().trimmed();
    const auto* here = find(key);
    if (here != nullptr && here->figure.empty() && here->aside.empty() && figure.isEmpty()) {
        problem_->setText(tr("Type the figure first, or pass over it (Down)."));
        return figure_->setFocus(Qt::OtherFocusReason);
    }
    if (page_->text().trimmed().isEmpty()) {
        problem_->setText(tr("On which page does it stand? The page is kept for the next figures."));
        return page_->setFocus(Qt::OtherFocusReason);
    }
    if (questions(key, figure))
        return;
    const verbs::ReadInManual read{figureTyped(key.kind, figure), manual_->text().toStdString(),
                                   page_->text().toStdString()};
    const auto next = nextId();
    pages_[*machine_] = page_->text().trimmed();
    drafts_.erase(key);
    shown_.reset();
    const auto done = workbench().attempt(
        [key, read](const verbs::VerbContext& context) { return verbs::confirmPrinted(context, key, read); });
    if (!done) {
        shown_ = key;
        problem_->setText(refusalWords(done.error()));
        return;
    }
    passed_.erase(key);
    if (next)
        table_->choose(*next);
    figure_->setFocus(Qt::OtherFocusReason);
    figure_->selectAll();
}

// Not in the manual, or not found: it comes again when all others had their turn.
void ConfirmView::goOn() {
    if (!shown_)
        return;
    passed_.insert(*shown_);
    auto next = nextId();
    if (!next) {
        guide().say(tr("That was the round: what was passed over begins again."));
        passed_.clear();
        next = nextId();
    }
    keepTyped();
    showRows();
    if (next)
        table_->choose(*next);
    figure_->setFocus(Qt::OtherFocusReason);
    figure_->selectAll();
}

void ConfirmView::goBack() {
    const auto ids = table_->shownIds();
    const auto here = std::find(ids.begin(), ids.end(), table_->chosenId().value_or(0));
    if (here != ids.begin() && here != ids.end())
        table_->choose(*(here - 1));
    figure_->selectAll();
}

// Down and Up leaf, whatever field has the keys; Escape takes back what was typed over the figure before the
// window takes it for "all machines".
bool ConfirmView::eventFilter(QObject* watched, QEvent* event) {
    const bool override = event->type() == QEvent::ShortcutOverride;
    if (!override && event->type() != QEvent::KeyPress)
        return TorqueView::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_Escape && shown_ && !typed().isEmpty()) {
        event->accept();
        if (!override) {
            drafts_.erase(*shown_);
            figure_->setText(loaded_);
            figure_->selectAll();
            problem_->clear();
        }
        return true;
    }
    const bool leafs = key->key() == Qt::Key_Down || key->key() == Qt::Key_Up;
    if (override || !leafs || key->modifiers() != Qt::NoModifier)
        return TorqueView::eventFilter(watched, event);
    key->key() == Qt::Key_Down ? goOn() : goBack();
    return true;
}

}  // namespace wm::ui
