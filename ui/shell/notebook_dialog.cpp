// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_dialog.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTabBar>
#include <QVBoxLayout>
#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include "ui/entry/starters.h"
#include "ui/shell/long_work.h"
#include "ui/shell/notebook_form.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/notebook_words.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

using notebook::Line;
using notebook::Totals;

constexpr std::size_t kMostMachineRows = 4;
constexpr int kDetailLines = 3;
constexpr std::array kFilters{LineFilter::All, LineFilter::Taken, LineFilter::Doubtful, LineFilter::Refused,
                              LineFilter::Known};

QLabel* plain(const QString& words, const char* role, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setTextFormat(Qt::PlainText);
    if (role != nullptr)
        label->setProperty("role", QString::fromLatin1(role));
    return label;
}

// Enter always means the import: no other button may catch it.
QPushButton* button(const QString& words, const char* name, QWidget* parent) {
    auto* made = new QPushButton(words, parent);
    made->setObjectName(QString::fromLatin1(name));
    made->setAutoDefault(false);
    return made;
}

QString filterWords(LineFilter filter, int count) {
    switch (filter) {
        case LineFilter::All:
            return NotebookDialog::tr("all %1").arg(count);
        case LineFilter::Taken:
            return NotebookDialog::tr("taken %1").arg(count);
        case LineFilter::Doubtful:
            return NotebookDialog::tr("doubtful %1").arg(count);
        case LineFilter::Refused:
            return NotebookDialog::tr("refused %1").arg(count);
        case LineFilter::Known:
            break;
    }
    return NotebookDialog::tr("taken before %1").arg(count);
}

std::array<QString, 8> totalsHeads() {
    return {NotebookDialog::tr("goes in"),        NotebookDialog::tr("lines"),
            NotebookDialog::tr("outings"),        NotebookDialog::tr("hours as noted"),
            NotebookDialog::tr("meter readings"), NotebookDialog::tr("washes"),
            NotebookDialog::tr("jobs"),           NotebookDialog::tr("minutes of jobs")};
}

std::array<QString, 8> totalsRow(const QString& name, const Totals& totals) {
    const auto count = [](std::size_t many) { return QString::number(many); };
    return {name,
            count(totals.lines),
            count(totals.outings),
            QString::fromStdString(notebook::hoursIn(totals.hours, decimalMark())),
            count(totals.readings),
            count(totals.washes),
            count(totals.jobs),
            QString::number(totals.minutes.count())};
}

// A machine without tasks has nothing that falls due, and its jobs renew nothing.
QString withoutScheduleWords(const std::vector<std::string>& machines) {
    QStringList names;
    for (const std::string& name : machines)
        names << text(name);
    if (names.isEmpty())
        return {};
    return names.size() == 1
               ? NotebookDialog::tr("%1 is new: choose its schedule above, so that its jobs count.")
                     .arg(names.front())
               : NotebookDialog::tr("%1 are new: choose their schedules above, so that their jobs count.")
                     .arg(names.join(NotebookDialog::tr(", ")));
}

QStringList namesOf(const std::vector<exchange::Starter>& starters) {
    QStringList names;
    for (const exchange::Starter& each : starters)
        names << text(each.name);
    return names;
}

}  // namespace

NotebookDialog::NotebookDialog(Workbench& workbench, std::unique_ptr<NotebookPreview> preview, QString name,
                               QWidget* parent)
    : QDialog(parent),
      workbench_(workbench),
      preview_(std::move(preview)),
      name_(std::move(name)),
      form_(new QScrollArea(this)),
      starters_(starters()),
      ways_(new NotebookForm(*preview_, namesOf(starters_), this)),
      tabs_(new QTabBar(this)),
      lines_(new NotebookLines(*preview_, this)),
      table_(new NotebookTable(lines_, this)),
      detail_(plain({}, "note", this)),
      words_(plain({}, nullptr, this)),
      totals_(new QGridLayout),
      cure_(button(tr("Accept the cure (Space)"), "notebook-cure", this)),
      kind_(button(tr("All of this kind (K)"), "notebook-cure-kind", this)),
      all_(button(tr("All cures (A)"), "notebook-cure-all", this)),
      leaveOut_(button(tr("Leave out (L)"), "notebook-leave-out", this)),
      import_(button({}, "notebook-import", this)) {
    setObjectName(QStringLiteral("notebook-dialog"));
    setWindowTitle(tr("Import a notebook: %1").arg(name_));
    const QSize room = parent != nullptr ? parent->window()->size() : QSize(1280, 800);
    resize(std::max(room.width() - 2 * kSpacePage, 800), std::max(room.height() - 2 * kSpacePage, 600));
    layOut();
    connectForm();
    connectLines();
    lines_->show(LineFilter::All);
    if (lines_->countOf(LineFilter::Doubtful) > 0)
        lines_->show(LineFilter::Doubtful);
    refresh();
    table_->setFocus(Qt::OtherFocusReason);
}

void NotebookDialog::layOut() {
    form_->setWidgetResizable(true);
    form_->setFrameShape(QFrame::NoFrame);
    form_->setWidget(ways_);
    form_->setFocusPolicy(Qt::NoFocus);
    form_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    form_->setObjectName(QStringLiteral("notebook-form"));
    words_->setObjectName(QStringLiteral("notebook-words"));
    words_->setWordWrap(true);
    auto* rule = new QFrame(this);
    rule->setFrameShape(QFrame::HLine);
    auto* bottom = new QHBoxLayout;
    bottom->setSpacing(kSpaceSection);
    bottom->addWidget(totalsSide(), 1);
    auto* leave = button(tr("Leave (Esc)"), "notebook-leave", this);
    leave->setFlat(true);
    import_->setDefault(true);
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    auto* buttons = new QVBoxLayout;
    buttons->setSpacing(kSpaceHair);
    buttons->addStretch();
    buttons->addWidget(import_);
    buttons->addWidget(leave);
    bottom->addLayout(buttons);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpaceGroup, kSpaceGroup, kSpaceGroup, kSpaceLine);
    lines->setSpacing(kSpaceClose);
    lines->addWidget(form_);
    lines->addWidget(lineSide(), 1);
    lines->addWidget(rule);
    lines->addWidget(words_);
    lines->addLayout(bottom);
}

// As high as what stands in it, up to a point: the lines below want the room.
void NotebookDialog::fitForm() {
    const int wide = width() - 2 * kSpaceGroup - kSpaceClose;
    form_->setFixedHeight(std::min(ways_->heightForWidth(wide), height() * 2 / 5));
}

void NotebookDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    fitForm();
}

void NotebookDialog::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        return enter();
    QDialog::keyPressEvent(event);
}

QWidget* NotebookDialog::lineSide() {
    auto* side = new QWidget(this);
    tabs_->setObjectName(QStringLiteral("notebook-verdicts"));
    tabs_->setAccessibleName(tr("verdicts"));
    tabs_->setExpanding(false);
    tabs_->setDrawBase(false);
    for (std::size_t at = 0; at < kFilters.size(); ++at)
        tabs_->addTab(QString());
    detail_->setObjectName(QStringLiteral("notebook-line"));
    detail_->setWordWrap(true);
    detail_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    detail_->setFixedHeight(kDetailLines * fontMetrics().lineSpacing());
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceHair);
    row->addWidget(tabs_);
    row->addStretch();
    for (QPushButton* each : {cure_, kind_, all_, leaveOut_})
        row->addWidget(each);
    auto* lines = new QVBoxLayout(side);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    lines->addLayout(row);
    lines->addWidget(table_, 1);
    lines->addWidget(detail_);
    return side;
}

QWidget* NotebookDialog::totalsSide() {
    auto* side = new QWidget(this);
    side->setObjectName(QStringLiteral("notebook-totals"));
    side->setLayout(totals_);
    totals_->setContentsMargins(0, 0, 0, 0);
    totals_->setHorizontalSpacing(kSpaceSection);
    totals_->setVerticalSpacing(2);
    totals_->setColumnStretch(static_cast<int>(totalsHeads().size()), 1);
    return side;
}

void NotebookDialog::connectForm() {
    connect(ways_, &NotebookForm::separatorSaid, this, [this](char separator) {
        LongWork work(tr("Reading %1").arg(quoted(name_)), this);
        const auto trouble = preview_->setSeparator(separator, work.steps());
        if (trouble) {
            ways_->refresh();
            return words_->setText(notebookRefusal(*trouble, name_));
        }
        judgeAgain();
    });
    connect(ways_, &NotebookForm::decimalSaid, this,
            [this](char decimal) { change([&] { preview_->setDecimal(decimal); }); });
    connect(ways_, &NotebookForm::datesSaid, this,
            [this](notebook::DateForm form) { change([&] { preview_->setDates(form); }); });
    connect(ways_, &NotebookForm::columnSaid, this, [this](std::size_t at, notebook::Column column) {
        change([&] { preview_->setColumn(at, column); });
    });
    connect(ways_, &NotebookForm::meaningSaid, this,
            [this](const QString& written, std::optional<MachineId> machine) {
                change([&] { preview_->setMeaning(written.toStdString(), machine); });
            });
    connect(
        ways_, &NotebookForm::newMachineSaid, this, [this](const QString& written, const QString& schedule) {
            const auto starter = std::find_if(starters_.begin(), starters_.end(),
                                              [&](const auto& each) { return text(each.name) == schedule; });
            change([&] {
                if (starter == starters_.end())
                    preview_->setMeaning(written.toStdString(), std::nullopt);
                else
                    preview_->setSchedule(written.toStdString(), *starter);
            });
        });
    connect(ways_, &NotebookForm::onlyMachineSaid, this,
            [this](MachineId machine) { change([&] { preview_->setOnlyMachine(machine); }); });
    connect(ways_, &NotebookForm::asFoundAsked, this, [this] { change([&] { preview_->forget(); }); });
    connect(&workbench_, &Workbench::changed, this, &NotebookDialog::bookChanged);
}

void NotebookDialog::connectLines() {
    const auto onLine = [this](void (NotebookPreview::*say)(const Line&)) {
        return [this, say] {
            if (const Line* line = current()) {
                (preview_.get()->*say)(*line);
                agreed();
            }
        };
    };
    const auto cure = onLine(&NotebookPreview::turnCure);
    const auto kind = onLine(&NotebookPreview::cureKindOf);
    const auto leaveOut = onLine(&NotebookPreview::turnLeftOut);
    const auto all = [this] {
        preview_->cureAll();
        agreed();
    };
    connect(cure_, &QPushButton::clicked, this, cure);
    connect(kind_, &QPushButton::clicked, this, kind);
    connect(all_, &QPushButton::clicked, this, all);
    connect(leaveOut_, &QPushButton::clicked, this, leaveOut);
    connect(table_, &NotebookTable::cureAsked, this, cure);
    connect(table_, &NotebookTable::kindAsked, this, kind);
    connect(table_, &NotebookTable::allAsked, this, all);
    connect(table_, &NotebookTable::leaveOutAsked, this, leaveOut);
    connect(table_, &NotebookTable::importAsked, this, &NotebookDialog::enter);
    connect(import_, &QPushButton::clicked, this, &NotebookDialog::importAgreed);
    connect(table_, &NotebookTable::lineChosen, this, &NotebookDialog::showLine);
    connect(tabs_, &QTabBar::currentChanged, this, [this](int at) {
        lines_->show(kFilters.at(static_cast<std::size_t>(std::max(at, 0))));
        table_->setCurrentIndex(lines_->index(std::max(lines_->firstOpen(), 0), 0));
        showLine();
    });
    connect(table_, &NotebookTable::sideways, this, [this](int by) {
        int at = tabs_->currentIndex();
        do
            at += by;
        while (at >= 0 && at < tabs_->count() && !tabs_->isTabVisible(at));
        if (at >= 0 && at < tabs_->count())
            tabs_->setCurrentIndex(at);
    });
}

const Line* NotebookDialog::current() const {
    return lines_->lineAt(table_->currentIndex().row());
}

void NotebookDialog::change(const std::function<void()>& say) {
    say();
    judgeAgain();
}

void NotebookDialog::judgeAgain() {
    busy_ = true;
    preview_->setBook(workbench_.book());
    {
        LongWork work(tr("Judging the lines of %1").arg(quoted(name_)), this);
        preview_->judge(work.steps());
    }
    busy_ = false;
    refresh();
}

void NotebookDialog::bookChanged() {
    if (busy_)
        return;
    if (!workbench_.hasFile() || workbench_.readOnly())
        return QDialog::reject();
    judgeAgain();
}

void NotebookDialog::refresh() {
    ways_->refresh();
    fitForm();
    const int row = table_->currentIndex().row();
    lines_->reload();
    refreshTabs();
    const int first = row >= 0 ? row : lines_->firstOpen();
    table_->setCurrentIndex(lines_->index(std::clamp(first, 0, std::max(lines_->rowCount() - 1, 0)), 0));
    agreed();
}

void NotebookDialog::refreshTabs() {
    const QSignalBlocker quiet(tabs_);
    for (std::size_t at = 0; at < kFilters.size(); ++at) {
        const int count = lines_->countOf(kFilters.at(at));
        const int tab = static_cast<int>(at);
        tabs_->setTabText(tab, filterWords(kFilters.at(at), count));
        tabs_->setTabVisible(tab, kFilters.at(at) != LineFilter::Known || count > 0);
        if (kFilters.at(at) == lines_->filter())
            tabs_->setCurrentIndex(tab);
    }
}

void NotebookDialog::agreed() {
    asked_ = leaves_ = false;
    lines_->restate();
    showTotals();
    showWords();
    showImport();
    showLine();
}

void NotebookDialog::showLine() {
    const Line* line = current();
    const bool hasCure = line != nullptr && line->verdict == notebook::Verdict::Doubtful &&
                         line->cure != notebook::Cure::None && !line->inFile;
    const auto state = line != nullptr ? preview_->stateOf(*line) : LineState::Refused;
    cure_->setEnabled(hasCure);
    cure_->setText(state == LineState::Cured ? tr("Not this cure (Space)") : tr("Accept the cure (Space)"));
    kind_->setEnabled(hasCure);
    leaveOut_->setEnabled(state != LineState::Refused && state != LineState::Known);
    if (line == nullptr)
        return detail_->setText(QString());
    QStringList cells;
    const auto& header = preview_->table().header;
    for (std::size_t at = 0; at < line->cells.size(); ++at) {
        const QString cell = cellsInWords({line->cells[at]});
        const QString head = at < header.size() ? cellsInWords({header[at]}) : QString();
        if (!cell.isEmpty())
            cells << (head.isEmpty() ? cell : head + QStringLiteral(": ") + cell);
    }
    QString words = tr("line %1 · %2").arg(line->line).arg(cells.join(QStringLiteral(" · ")));
    if (const QString reason = reasonFor(*line); !reason.isEmpty())
        words += QLatin1Char('\n') + stateWords(state) + QStringLiteral(": ") + reason;
    if (const QString cure = cureFor(*line); !cure.isEmpty())
        words += tr("; likely: %1").arg(cure);
    else if (line->verdict == notebook::Verdict::Doubtful && !line->inFile)
        words += tr("; nothing is likely: put it right in the sheet and import again");
    detail_->setText(words);
}

void NotebookDialog::showTotals() {
    std::vector<std::array<QString, 8>> rows{totalsHeads()};
    Totals sum;
    if (const auto* notebook = preview_->notebook()) {
        const auto totals = notebook::totalsOf(*notebook, preview_->agreement());
        std::map<QString, Totals> named;
        for (std::size_t at = 0; at < totals.size(); ++at) {
            sum += totals[at];
            if (totals[at].lines > 0)
                named[cellsInWords({notebook->machines[at].name})] += totals[at];
        }
        for (const auto& [name, of] : named)
            if (rows.size() <= kMostMachineRows)
                rows.push_back(totalsRow(name, of));
    }
    if (rows.size() != 2)
        rows.push_back(totalsRow(tr("all of it"), sum));
    const std::size_t columns = rows.front().size();
    while (figures_.size() < rows.size() * columns) {
        auto* label = plain({}, nullptr, this);
        const auto at = figures_.size();
        const auto row = static_cast<int>(at / columns);
        const auto column = static_cast<int>(at % columns);
        label->setObjectName(QStringLiteral("notebook-total-%1-%2").arg(row).arg(column));
        if (row == 0)
            label->setProperty("role", QStringLiteral("note"));
        totals_->addWidget(label, row, column, column == 0 ? Qt::AlignLeft : Qt::AlignRight);
        figures_.push_back(label);
    }
    for (std::size_t at = 0; at < figures_.size(); ++at) {
        const bool used = at / columns < rows.size();
        figures_[at]->setVisible(used);
        figures_[at]->setText(used ? rows[at / columns].at(at % columns) : QString());
    }
    goesIn_ = sum;
}

// The button says what it leaves out, for the hand that clicks it.
void NotebookDialog::showImport() {
    QString words = goesIn_.lines == 1 ? tr("Take 1 line") : tr("Take %1 lines").arg(goesIn_.lines);
    if (open_ > 0)
        words += open_ == 1 ? tr("; 1 doubtful stays out") : tr("; %1 doubtful stay out").arg(open_);
    import_->setText(words + (open_ > 0 && !asked_ ? tr(" (Enter twice)") : tr(" (Enter)")));
    import_->setEnabled(goesIn_.lines > 0);
}

void NotebookDialog::showWords() {
    QPalette ink = palette();
    const Tokens tokens = tokensFor(ink);
    const auto* notebook = preview_->notebook();
    ink.setColor(QPalette::WindowText, notebook == nullptr ? tokens.over : tokens.ink);
    words_->setPalette(ink);
    open_ = 0;
    if (notebook == nullptr)
        return words_->setText(preview_->refusal() ? notebookRefusal(*preview_->refusal(), name_)
                                                   : QString());
    std::size_t cures = 0;
    std::size_t fresh = 0;
    std::size_t jobs = 0;
    for (const Line& line : notebook->lines) {
        const LineState state = preview_->stateOf(line);
        const bool settles = line.cure != notebook::Cure::None;
        open_ += state == LineState::Open ? 1U : 0U;
        cures += state == LineState::Open && settles ? 1U : 0U;
        fresh += notebook::isAgreed(line, {.allCures = true}) ? 1U : 0U;
        jobs += line.facts.sort == notebook::FactSort::Job && line.readable() && !line.inFile ? 1U : 0U;
    }
    all_->setEnabled(cures > 0);
    QStringList words;
    if (fresh == 0)
        words << notebookRefusal({base::Fault::NothingToDo, "notebook", {}, {}}, name_);
    else if (open_ > 0)
        words << (open_ == 1
                      ? tr("1 doubtful line waits for your word; left open, it stays out.")
                      : tr("%1 doubtful lines wait for your word; left open, they stay out.").arg(open_));
    else
        words << tr("Nothing is written before you agree; undo takes all of it back at once.");
    if (const QString bare = withoutScheduleWords(preview_->withoutSchedule()); !bare.isEmpty())
        words << bare;
    if (jobs > 0)
        words << tr(
            "Jobs from a notebook are records of work long done: they leave no joint hand-tight and "
            "draw on no opened container.");
    words_->setText(words.join(QLatin1Char(' ')));
}

// Lines are left out by a word, never by a habit of the hand.
void NotebookDialog::enter() {
    if (busy_ || preview_->notebook() == nullptr)
        return;
    if (open_ > 0 && !asked_)
        askAboutOpen();
    else
        importAgreed();
}

void NotebookDialog::askAboutOpen() {
    if (lines_->firstOpen() < 0)
        tabs_->setCurrentIndex(static_cast<int>(LineFilter::Doubtful));
    table_->setCurrentIndex(lines_->index(std::max(lines_->firstOpen(), 0), 0));
    table_->setFocus(Qt::OtherFocusReason);
    asked_ = true;
    const QString ways = tr("Space accepts the likely cure, A all cures, L leaves the line out.");
    const QString without = goesIn_.lines == 0 ? tr("Nothing goes in before that.")
                            : open_ == 1       ? tr("Enter once more goes on without it.")
                                               : tr("Enter once more goes on without them.");
    ask((open_ == 1 ? tr("1 doubtful line has no answer yet.")
                    : tr("%1 doubtful lines have no answer yet.").arg(open_)) +
        QLatin1Char(' ') + ways + QLatin1Char(' ') + without);
    showImport();
}

void NotebookDialog::ask(const QString& words) {
    QPalette ink = palette();
    ink.setColor(QPalette::WindowText, tokensFor(ink).due);
    words_->setPalette(ink);
    words_->setText(words);
}

// Answers are work: a wrong key does not throw them away.
void NotebookDialog::reject() {
    const auto& said = preview_->agreement().lines;
    const auto answers = std::count_if(
        said.begin(), said.end(), [](const auto& each) { return each.second != notebook::Choice::Open; });
    if (answers == 0 || leaves_)
        return QDialog::reject();
    leaves_ = true;
    ask(answers == 1 ? tr("1 answer is not written; Escape once more leaves without it.")
                     : tr("%1 answers are not written; Escape once more leaves without them.").arg(answers));
}

void NotebookDialog::importAgreed() {
    if (busy_ || !import_->isEnabled() || preview_->notebook() == nullptr)
        return;
    busy_ = true;
    LongWork work(tr("Taking over %1").arg(quoted(name_)), this);
    auto taken = preview_->take(name_.toStdString(), work.steps());
    if (!taken) {
        busy_ = false;
        return words_->setText(notebookRefusal(taken.error(), name_));
    }
    work.next(tr("Writing %1 lines as one step").arg(taken->lines));
    const auto steps = [&work](std::size_t done, std::size_t of) {
        const bool goesOn = work.goesOn(done, of);
        if (goesOn && done == of)
            work.last(NotebookDialog::tr("All lines are written; making them safe"));
        return goesOn;
    };
    // The change was made from the picture that was looked at; on another one it may not stand.
    const auto* judged = &preview_->file().ledger();
    const auto written = workbench_.attempt(
        [&taken, judged](const verbs::Pen& pen) -> base::Result<picture::Change> {
            if (&pen.book.ledger() != judged)
                return base::refuse(base::Fault::NothingToDo, "picture");
            return std::move(taken->change);
        },
        steps);
    busy_ = false;
    if (!written) {
        const bool moved = written.error().error.field == "picture";
        if (moved)
            judgeAgain();
        return words_->setText(moved ? tr("The file has changed meanwhile: look at the lines once more.")
                               : written.error().error.field == "cancelled"
                                   ? notebookRefusal(written.error().error, name_)
                                   : wordsFor(written.error()));
    }
    QString words = text(written->text) + QStringLiteral(": ") + totalsWords(goesIn_);
    if (taken->waiting > 0)
        words += tr("; %1 meter readings wait for a word about a renewed meter").arg(taken->waiting);
    emit imported(words);
    accept();
}

}  // namespace wm::ui
