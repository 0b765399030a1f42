// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/used_view.h"

#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/entry/choice.h"
#include "ui/pages/columns.h"
#include "ui/pages/machine_shown.h"
#include "ui/pages/tasks/evidence_words.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr int kLetters = 9;
const std::string kFitted = "fitted";

// "chain.now": the core names the field of one piece alone.
std::string fieldAt(const std::string& line, const char* name) {
    return line + '.' + name;
}

void ink(QLabel* label, bool isTrouble) {
    QPalette palette = label->parentWidget()->palette();
    if (isTrouble)
        palette.setColor(QPalette::WindowText, tokensFor(palette).over);
    label->setPalette(palette);
}

base::Result<std::optional<units::Hours>> hoursOrNothing(const char* field, const std::string& typed) {
    if (typed.empty())
        return std::optional<units::Hours>();
    return units::parseHours(field, typed).map([](units::Hours hours) { return std::optional(hours); });
}

}  // namespace

UsedView::UsedView(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      fitted_(new QComboBox(this)),
      head_(plainLabel(this)),
      result_(plainLabel(this, "section")),
      state_(new QPushButton(tr("State it (Enter)"), this)),
      clear_(new QPushButton(tr("Forget it"), this)) {
    head_->setObjectName(QStringLiteral("used-head"));
    result_->setObjectName(QStringLiteral("used-result"));
    state_->setObjectName(QStringLiteral("used-state"));
    clear_->setObjectName(QStringLiteral("used-clear"));
    fitted_->setObjectName(QStringLiteral("used-fitted"));
    fitted_->setAccessibleName(tr("when the meter was fitted"));
    addChoices<items::MeterFitted>(*fitted_, {{items::MeterFitted::Unknown, tr("nobody knows")},
                                              {items::MeterFitted::FromNew, tr("from new, never stopped")},
                                              {items::MeterFitted::Later, tr("later")}});
    layOut();
    connect(fitted_, &QComboBox::currentIndexChanged, this, [this] {
        keep();
        work();
    });
    connect(state_, &QPushButton::clicked, this, &UsedView::state);
    connect(clear_, &QPushButton::clicked, this, &UsedView::clear);
    connect(&workbench(), &Workbench::fileChanged, this, [this] {
        typed_.clear();
        machine_.reset();
    });
}

void UsedView::addLine(QGridLayout* grid, Kind kind, const QString& title,
                       const std::vector<std::pair<QString, std::string>>& fields) {
    const int row = grid->rowCount();
    Line line{.kind = kind};
    grid->addWidget(plainWords(this, title, nullptr), row, 0);
    auto* box = new QHBoxLayout;
    box->setSpacing(kSpaceClose);
    for (const auto& [words, name] : fields) {
        auto* label = plainWords(this, words, "note");
        label->setWordWrap(false);
        auto* edit = new QLineEdit(this);
        edit->setObjectName(QStringLiteral("used-") +
                            QString::fromStdString(name).replace(QLatin1Char('.'), QLatin1Char('-')));
        edit->setAccessibleName(QStringLiteral("%1: %2").arg(title, words));
        edit->setFixedWidth(fontMetrics().averageCharWidth() * kLetters + kSpaceGroup);
        label->setBuddy(edit);
        box->addWidget(label);
        box->addWidget(edit);
        connect(edit, &QLineEdit::textEdited, this, [this] {
            keep();
            work();
        });
        connect(edit, &QLineEdit::returnPressed, this, &UsedView::state);
        fields_[name] = edit;
        line.fields.push_back(name);
        if (kind == Kind::Meter && line.fields.size() == 1) {
            box->addWidget(plainWords(this, tr("fitted"), "note"));
            box->addWidget(fitted_);
        }
    }
    box->addStretch();
    grid->addLayout(box, row, 1);
    line.says = plainLabel(this);
    line.says->setObjectName(QStringLiteral("used-says-%1").arg(static_cast<int>(kind)));
    grid->addWidget(line.says, row, 2);
    lines_.push_back(std::move(line));
}

void UsedView::addLines(QGridLayout* grid) {
    addLine(grid, Kind::Meter, tr("Hour meter"),
            {{tr("shows"), "meter.shown"}, {tr("hours before it, by word"), "meter.before"}});
    addLine(grid, Kind::Word, tr("The seller"), {{tr("says, in hours"), "word.likely"}});
    addLine(grid, Kind::Seasons, tr("Seasons ridden"),
            {{tr("how many"), "seasons.seasons"},
             {tr("hours in one, from"), "seasons.season_low"},
             {tr("to"), "seasons.season_high"}});
    const std::pair<Kind, std::pair<QString, std::string>> parts[] = {
        {Kind::Chain, {tr("Chain, over so many links"), "chain"}},
        {Kind::Disc, {tr("Brake disc"), "disc"}},
        {Kind::Bore, {tr("Bore"), "bore"}}};
    for (const auto& [kind, name] : parts)
        addLine(grid, kind, name.first,
                {{tr("as new"), fieldAt(name.second, "as_new")},
                 {tr("limit"), fieldAt(name.second, "limit")},
                 {tr("now"), fieldAt(name.second, "now")},
                 {tr("one lasts, h from"), fieldAt(name.second, "life_low")},
                 {tr("to"), fieldAt(name.second, "life_high")}});
    addLine(grid, Kind::FrontTyre, tr("Front tyre"), {{tr("last four figures of the stamp"), "front.code"}});
    addLine(grid, Kind::RearTyre, tr("Rear tyre"), {{tr("last four figures of the stamp"), "rear.code"}});
}

void UsedView::layOut() {
    auto* inside = new QWidget(this);
    auto* grid = new QGridLayout(inside);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(kSpaceGroup);
    grid->setVerticalSpacing(kSpaceLine);
    grid->setColumnStretch(2, 1);
    addLines(grid);
    grid->setRowStretch(grid->rowCount(), 1);
    auto* scroll = new QScrollArea(this);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(inside);
    scroll->viewport()->setAutoFillBackground(false);
    inside->setAutoFillBackground(false);
    auto* keys = new QHBoxLayout;
    keys->setSpacing(kSpaceClose);
    keys->addWidget(result_, 1);
    keys->addWidget(clear_);
    keys->addWidget(state_);
    auto* lines = pageLines(this);
    lines->addWidget(head_);
    lines->addWidget(scroll, 1);
    lines->addLayout(keys);
}

QWidget* UsedView::firstFocus() {
    return fields_.at("meter.shown");
}

QStringList UsedView::unsaved() const {
    const bool any = std::any_of(typed_.begin(), typed_.end(), [](const auto& each) {
        return std::any_of(each.second.begin(), each.second.end(), [](const auto& field) {
            return field.first != kFitted && !field.second.trimmed().isEmpty();
        });
    });
    return any ? QStringList{tr("what a used machine has behind it")} : QStringList();
}

// Escape in a field goes nowhere; the window would take it for "all machines" and hide the form.
bool UsedView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return Page::event(event);
}

void UsedView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        fields_.at("meter.shown")->setFocus(Qt::OtherFocusReason);
    else if (fitted_->hasFocus() && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter))
        state();
    else
        Page::keyPressEvent(event);
}

void UsedView::refresh() {
    const auto book = workbench().book();
    const auto machine = machineShown(workbench());
    const bool isOther = machine != machine_;
    machine_ = machine;
    const auto* card = machine_ ? book->ledger().find<items::Machine>(*machine_) : nullptr;
    const usage::HoursBracket stated =
        card == nullptr ? usage::HoursBracket{}
                        : usage::HoursBracket{card->pastLow, card->pastBest, card->pastHigh};
    head_->setText(card == nullptr    ? tr("Choose the machine first (F5 to F8): evidence is of one machine.")
                   : card->startedNew ? tr("%1 came new: it has nothing behind it from before. Stating a "
                                           "past here makes it a used one.")
                                            .arg(text(card->name))
                                      : tr("%1 came on %2; stated so far: %3 behind it by then. Type what "
                                           "you see and what you were told, and "
                                           "leave the rest blank. What lasts how long and where a limit is, "
                                           "is your figure, from the manual or "
                                           "from practice; nothing is assumed.")
                                            .arg(text(card->name), dayWords(card->since, book->today()),
                                                 bracketWords(stated)));
    for (auto& [name, field] : fields_)
        field->setEnabled(card != nullptr && !workbench().readOnly());
    fitted_->setEnabled(card != nullptr && !workbench().readOnly());
    if (isOther)
        showTyped();
    work();
}

void UsedView::keep() {
    if (settling_ || !machine_)
        return;
    Typed& typed = typed_[*machine_];
    for (const auto& [name, field] : fields_)
        typed[name] = field->text();
    typed[kFitted] = fitted_->currentData().toString();
}

void UsedView::showTyped() {
    settling_ = true;
    const Typed none;
    const auto at = machine_ ? typed_.find(*machine_) : typed_.end();
    const Typed& typed = at == typed_.end() ? none : at->second;
    for (const auto& [name, field] : fields_) {
        const auto known = typed.find(name);
        field->setText(known == typed.end() ? QString() : known->second);
    }
    const auto fitted = typed.find(kFitted);
    chooseIn(*fitted_, static_cast<items::MeterFitted>(fitted == typed.end() ? 0 : fitted->second.toInt()));
    settling_ = false;
}

std::string UsedView::typed(const Line& line, std::size_t field) const {
    return fields_.at(line.fields.at(field))->text().trimmed().toStdString();
}

base::Result<items::Evidence> UsedView::meterOf(const Line& line) const {
    const auto shown = units::parseHours("shown", typed(line, 0));
    const auto before = hoursOrNothing("before", typed(line, 1));
    if (!shown || !before)
        return tl::unexpected(shown ? before.error() : shown.error());
    return items::MeterShows{*shown, chosenOf<items::MeterFitted>(*fitted_), *before};
}

base::Result<items::Evidence> UsedView::seasonsOf(const Line& line) const {
    const auto seasons = units::parseDecimal("seasons", typed(line, 0));
    if (!seasons)
        return tl::unexpected(seasons.error());
    const auto low = units::parseHours("season_low", typed(line, 1));
    const auto high = hoursOrNothing("season_high", typed(line, 2));
    if (!low || !high)
        return tl::unexpected(low ? high.error() : low.error());
    return items::SeasonsRidden{*seasons, *low, *high};
}

base::Result<items::Evidence> UsedView::wearOf(const Line& line, items::WornPart part) const {
    items::WearSeen wear{.part = part};
    const std::pair<const char*, units::Decimal*> figures[] = {
        {"as_new", &wear.asNew}, {"limit", &wear.limit}, {"now", &wear.now}};
    for (std::size_t at = 0; at < std::size(figures); ++at) {
        const auto figure = units::parseDecimal(figures[at].first, typed(line, at));
        if (!figure)
            return tl::unexpected(figure.error());
        *figures[at].second = *figure;
    }
    const auto low = hoursOrNothing("life_low", typed(line, 3));
    const auto high = hoursOrNothing("life_high", typed(line, 4));
    if (!low || !high)
        return tl::unexpected(low ? high.error() : low.error());
    wear.lifeLow = *low;
    wear.lifeHigh = *high;
    return wear;
}

std::optional<base::Result<items::Evidence>> UsedView::evidenceOf(const Line& line) const {
    bool blank = true;
    for (std::size_t at = 0; at < line.fields.size(); ++at)
        blank = blank && typed(line, at).empty();
    if (blank)
        return std::nullopt;
    switch (line.kind) {
        case Kind::Meter:
            return meterOf(line);
        case Kind::Word:
            return units::parseHours("likely", typed(line, 0)).map([](units::Hours hours) {
                return items::Evidence(items::SellersWord{hours});
            });
        case Kind::Seasons:
            return seasonsOf(line);
        case Kind::Chain:
            return wearOf(line, items::WornPart::Chain);
        case Kind::Disc:
            return wearOf(line, items::WornPart::Disc);
        case Kind::Bore:
            return wearOf(line, items::WornPart::Bore);
        case Kind::FrontTyre:
        case Kind::RearTyre:
            break;
    }
    return items::Evidence(items::TyreStamp{typed(line, 0)});
}

void UsedView::work() {
    if (settling_ || !workbench().book())
        return;
    read_.clear();
    faulty_ = false;
    std::vector<items::Claim> claims;
    for (std::size_t at = 0; at < lines_.size(); ++at) {
        const Line& line = lines_[at];
        const auto evidence = evidenceOf(line);
        QString says;
        bool isTrouble = false;
        if (evidence) {
            const auto claim = *evidence ? items::claimOf(**evidence, workbench().today())
                                         : tl::unexpected(evidence->error());
            isTrouble = !claim;
            faulty_ = faulty_ || isTrouble;
            says = claim ? claimWords(**evidence, *claim, workbench().today()) : wordsFor(claim.error());
            if (claim) {
                read_.push_back({at, **evidence, *claim});
                claims.push_back(*claim);
            }
        }
        ink(line.says, isTrouble);
        line.says->setText(says);
    }
    verdict_ = items::weigh(claims);
    showVerdict();
}

void UsedView::showVerdict() {
    const auto name = [this](std::size_t claim) { return evidenceWords(read_.at(claim).evidence); };
    QStringList words;
    for (const auto& each : verdict_.contradictions)
        words << tr("These can't both be right: “%1” holds more than “%2” allows. Blank the one that you "
                    "trust less.")
                     .arg(name(each.low), name(each.high));
    if (verdict_.machine)
        words << tr("Behind the machine: %1.").arg(bracketWords(*verdict_.machine));
    for (const std::size_t at : verdict_.outside)
        words << tr("Outside of that: %1.").arg(name(at));
    if (words.isEmpty())
        words << (read_.empty() ? tr("Begin with what the hour meter shows.")
                                : tr("Nothing here speaks of the machine's hours yet."));
    ink(result_, !verdict_.contradictions.empty());
    result_->setText(words.join(QLatin1Char('\n')));
    const bool writes = machine_ && verdict_.machine && !faulty_ && !workbench().readOnly();
    state_->setEnabled(writes);
    clear_->setEnabled(!unsaved().isEmpty());
}

// The chain that is on the machine, if the file knows it as an item.
std::optional<ItemId> UsedView::chain() const {
    const auto book = workbench().book();
    return book->fittings().at(*machine_, "chain", {book->today(), calendar::DayPart::AfterRiding});
}

QString UsedView::whyHeld() const {
    const auto today = workbench().today();
    QStringList lines{tr("Past stated on %1 from:").arg(text(today.iso()))};
    for (const Read& each : read_)
        lines << QStringLiteral("- %1: %2")
                     .arg(evidenceWords(each.evidence), claimWords(each.evidence, each.claim, today));
    lines << tr("together: %1").arg(bracketWords(*verdict_.machine));
    return lines.join(QLatin1Char('\n'));
}

void UsedView::state() {
    if (!state_->isEnabled())
        return;
    verbs::PastDraft draft{.machine = *machine_, .hours = *verdict_.machine, .why = whyHeld().toStdString()};
    for (const Read& each : read_) {
        const auto item = lines_.at(each.line).kind == Kind::Chain ? chain() : std::nullopt;
        const auto* card = item ? workbench().book()->ledger().find<items::Item>(*item) : nullptr;
        if (card == nullptr || card->startedNew || !each.claim.ofPart)
            continue;
        const QString words = tr("Past stated from: %1").arg(evidenceWords(each.evidence));
        draft.parts.push_back({*item, *each.claim.ofPart, words.toStdString()});
    }
    const auto written = workbench().attempt(
        [draft](const verbs::VerbContext& context) { return verbs::statePast(context, draft); });
    if (!written) {
        ink(result_, true);
        result_->setText(wordsFor(written.error()));
        return;
    }
    clear();
}

void UsedView::clear() {
    if (machine_)
        typed_.erase(*machine_);
    showTyped();
    refresh();
}

}  // namespace wm::ui
