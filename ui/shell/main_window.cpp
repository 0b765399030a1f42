// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/main_window.h"

#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QCloseEvent>
#include <QFileInfo>
#include <QMenu>
#include <QScreen>
#include <QSettings>
#include <QStackedWidget>
#include <QStyle>
#include <QToolButton>
#include <QVBoxLayout>

#include "core/book/unrecorded.h"
#include "ui/entry/entry_strip.h"
#include "ui/shell/edge_bar.h"
#include "ui/shell/heads_strip.h"
#include "ui/shell/own_keys.h"
#include "ui/shell/page_table.h"
#include "ui/shell/start_page.h"
#include "ui/shell/status_line.h"
#include "ui/shell/why_popup.h"
#include "ui/theme/plain.h"
#include "ui/theme/theme.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/workbench/prompts.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

const QString kTheme = QStringLiteral("theme");
constexpr int kLeastPage = 220;  // so low that the window need not grow when the strip at the bottom opens

// The pages, one at a time. A page that wants more height than there is scrolls or is cut short; it never
// makes the window taller than the screen.
class Pages : public QStackedWidget {
  public:
    using QStackedWidget::QStackedWidget;
    [[nodiscard]] QSize minimumSizeHint() const override {
        return {QStackedWidget::minimumSizeHint().width(), kLeastPage};
    }
    [[nodiscard]] bool hasHeightForWidth() const override { return false; }
};

// As large as it likes to be, or as the screen leaves room within the frame that it will get.
QSize firstSize(const QWidget& window) {
    const int title = window.style()->pixelMetric(QStyle::PM_TitleBarHeight, nullptr, &window);
    return QSize(1280, 800).boundedTo(window.screen()->availableSize() - QSize(0, title));
}

}  // namespace

MainWindow::MainWindow(Workbench& workbench, Prompts& prompts, QSettings& settings, DemoSource demo)
    : workbench_(workbench),
      settings_(settings),
      tools_{workbench, prompts, *this},
      files_(new FileDesk(workbench, prompts, settings, std::move(demo), this)) {
    setObjectName(QStringLiteral("window"));
    resize(firstSize(*this));
    makeActions();
    new OwnKeys(this);
    build();
    connectActions();
    connectParts();
    refresh();
}

void MainWindow::makeActions() {
    for (const auto& entry : actionTable()) {
        auto* action = new QAction(entry.text, this);
        action->setObjectName(entry.name);
        action->setToolTip(entry.tip);
        action->setShortcut(entry.keys);
        addAction(action);
        actions_.emplace(entry.id, action);
    }
    actions_.at(ActionId::OpenDemo)->setVisible(files_->hasDemo());
}

void MainWindow::build() {
    auto* middle = new QWidget(this);
    QStringList choose;
    for (const auto id : {ActionId::AllMachines, ActionId::Machine1, ActionId::Machine2, ActionId::Machine3,
                          ActionId::Machine4})
        choose << action(id)->shortcut().toString(QKeySequence::NativeText);
    heads_ = new HeadsStrip(workbench_, choose, middle);
    stack_ = new Pages(middle);
    std::vector<QAction*> first{action(ActionId::NewFile), action(ActionId::OpenFile)};
    if (files_->hasDemo())
        first.push_back(action(ActionId::OpenDemo));
    start_ = new StartPage(first, {action(ActionId::AddMachine), action(ActionId::ImportNotebook)}, stack_);
    stack_->addWidget(start_);
    for (const auto& entry : pageTable()) {
        auto* page = entry.make(tools_, stack_);
        pages_.emplace(entry.id, page);
        stale_.insert(entry.id);
        stack_->addWidget(page);
    }
    strip_ = new EntryStrip(workbench_, middle);
    edge_ = new EdgeBar(middle);
    auto* findKey = new QToolButton(edge_);
    findKey->setDefaultAction(action(ActionId::Find));
    findKey->setObjectName(QStringLiteral("find-key"));
    edge_->add(findKey);
    auto* whyKey = new QToolButton(edge_);
    whyKey->setObjectName(QStringLiteral("why-key"));
    whyKey->setDefaultAction(action(ActionId::Why));
    edge_->add(whyKey);
    edge_->add(fileKey());
    std::vector<QAction*> entries;
    for (const auto id : {ActionId::Outing, ActionId::Job, ActionId::Snag, ActionId::Wash, ActionId::Reading,
                          ActionId::Crash})
        entries.push_back(action(id));
    status_ = new StatusLine(workbench_, action(ActionId::Undo), action(ActionId::Redo), entries, middle);
    auto* lines = new QVBoxLayout(middle);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(0);
    lines->addWidget(heads_);
    lines->addWidget(stack_, 1);
    lines->addWidget(strip_);
    lines->addWidget(edge_);
    lines->addWidget(status_);
    setCentralWidget(middle);
}

QToolButton* MainWindow::fileKey() {
    auto* menu = new QMenu(this);
    menu->setObjectName(QStringLiteral("file-menu"));
    auto* themes = new QActionGroup(this);
    for (const auto& entry : actionTable()) {
        if (entry.place != Place::FileMenu)
            continue;
        if (entry.startsGroup)
            menu->addSeparator();
        menu->addAction(action(entry.id));
        if (entry.id == ActionId::OpenFile)
            recent_ = menu->addMenu(tr("Opened latel&y"));
        if (entry.id == ActionId::LightTheme || entry.id == ActionId::DarkTheme ||
            entry.id == ActionId::SystemTheme)
            themes->addAction(action(entry.id))->setCheckable(true);
    }
    connectThemes(themes);
    auto* key = new QToolButton(edge_);
    key->setObjectName(QStringLiteral("file-key"));
    key->setText(tr("&File"));
    key->setAccessibleName(tr("file"));
    key->setMenu(menu);
    key->setPopupMode(QToolButton::InstantPopup);
    key->setStyleSheet(QStringLiteral("QToolButton::menu-indicator { image: none; }"));
    return key;
}

void MainWindow::connectThemes(QActionGroup* themes) {
    const std::map<ThemeChoice, ActionId> choices{{ThemeChoice::Light, ActionId::LightTheme},
                                                  {ThemeChoice::Dark, ActionId::DarkTheme},
                                                  {ThemeChoice::System, ActionId::SystemTheme}};
    const int now = settings_.value(kTheme, static_cast<int>(ThemeChoice::System)).toInt();
    for (const auto& [choice, id] : choices) {
        action(id)->setChecked(static_cast<int>(choice) == now);
        connect(action(id), &QAction::triggered, themes, [this, choice = choice] {
            settings_.setValue(kTheme, static_cast<int>(choice));
            applyTheme(*qApp, choice);
        });
    }
}

void MainWindow::on(ActionId id, const std::function<void()>& act) {
    connect(action(id), &QAction::triggered, this, act);
}

void MainWindow::connectActions() {
    on(ActionId::NewFile, [this] { files_->makeNew(); });
    on(ActionId::OpenFile, [this] { files_->chooseAndOpen(); });
    on(ActionId::OpenDemo, [this] { files_->openDemo(); });
    on(ActionId::ImportText, [this] { files_->importText(); });
    on(ActionId::ImportNotebook, [this] { files_->importNotebook(); });
    on(ActionId::ExportText, [this] { files_->exportText(); });
    on(ActionId::Backups, [this] { files_->showBackups(); });
    on(ActionId::Quit, [this] { close(); });
    on(ActionId::Undo, [this] { undo(); });
    on(ActionId::Redo, [this] { workbench_.redo(); });
    on(ActionId::Find, [this] { find(); });
    on(ActionId::Baseline, [this] { showTasks(Aim::View::Baseline); });
    on(ActionId::UsedMachine, [this] { showTasks(Aim::View::UsedMachine); });
    on(ActionId::Why, [this] { pages_.at(shown_)->why(); });
    on(ActionId::AllMachines, [this] { escape(); });
    const std::map<ActionId, EntryKind> entries{
        {ActionId::Outing, EntryKind::Outing},     {ActionId::Job, EntryKind::Job},
        {ActionId::Snag, EntryKind::Snag},         {ActionId::Wash, EntryKind::Wash},
        {ActionId::Reading, EntryKind::Reading},   {ActionId::Crash, EntryKind::Crash},
        {ActionId::AddEvent, EntryKind::Event},    {ActionId::AddPerson, EntryKind::Person},
        {ActionId::AddMachine, EntryKind::Machine}};
    for (const auto& [id, kind] : entries)
        on(id, [this, kind = kind] {
            EntryRequest request;
            request.kind = kind;
            request.machine = workbench_.chosen();
            if (!request.machine)
                request.machine = pages_.at(shown_)->machineHere();
            enter(request);
        });
    std::size_t place = 0;
    for (const auto id : {ActionId::Machine1, ActionId::Machine2, ActionId::Machine3, ActionId::Machine4})
        on(id, [this, at = place++] { heads_->chooseAt(at); });
}

void MainWindow::connectParts() {
    connect(edge_, &EdgeBar::pageAsked, this, [this](PageId page) { goTo(page); });
    connect(strip_, &EntryStrip::left, this, [this] {
        const auto* seen = stack_->currentWidget();
        if (QApplication::focusWidget() == nullptr && seen != nullptr)
            (seen == start_ ? static_cast<QWidget*>(start_) : pages_.at(shown_)->firstFocus())
                ->setFocus(Qt::OtherFocusReason);
    });
    connect(strip_, &EntryStrip::written, this, &MainWindow::followAdded);
    connect(start_, &StartPage::fileAsked, files_, &FileDesk::openPath);
    connect(files_, &FileDesk::said, this, &MainWindow::say);
    connect(files_, &FileDesk::recentChanged, this, &MainWindow::fillRecent);
    connect(&workbench_, &Workbench::changed, this, &MainWindow::refresh);
    connect(&workbench_, &Workbench::chosenChanged, this, [this] {
        for (const auto& [id, page] : pages_)
            stale_.insert(id);
        refreshPage();
    });
    connect(&workbench_, &Workbench::saved, status_, &StatusLine::noteSaved);
    connect(&workbench_, &Workbench::refused, this,
            [this](const QString& words) { status_->say(words, true); });
    fillRecent();
}

void MainWindow::fillRecent() {
    recent_->clear();
    const QStringList paths = files_->recent();
    for (const QString& path : paths)
        connect(recent_->addAction(asCaption(QFileInfo(path).fileName())), &QAction::triggered, files_,
                [this, path] { files_->openPath(path); });
    recent_->setEnabled(!paths.isEmpty());
}

void MainWindow::refresh() {
    setWindowTitle(workbench_.hasFile()
                       ? tr("%1 · Witnessmark").arg(QFileInfo(workbench_.path()).completeBaseName())
                       : tr("Witnessmark"));
    heads_->refresh();
    status_->refresh();
    for (const auto& [id, page] : pages_)
        stale_.insert(id);
    followNeeds();
    refreshPage();
}

// A finger that stays on the keys must not empty the garage.
void MainWindow::undo() {
    const QString words = workbench_.undoText();
    if (!workbench_.undo() &&
        tools_.prompts.confirm(
            tr("This takes back %1, and no machine is left in the garage.").arg(quoted(words)),
            tr("Take it back")))
        workbench_.undo(store::LastMachine::MayGo);
}

void MainWindow::followNeeds() {
    const auto book = workbench_.book();
    const bool hasMachine = book && !book->machines().empty();
    const bool writes = workbench_.hasFile() && !workbench_.readOnly();
    for (const auto& entry : actionTable()) {
        const bool forMachine = entry.needs == Needs::AMachine || entry.needs == Needs::AWritableMachine;
        const bool forWriting = entry.needs == Needs::AWritableFile || entry.needs == Needs::AWritableMachine;
        action(entry.id)->setEnabled((entry.needs == Needs::Nothing || workbench_.hasFile()) &&
                                     (!forMachine || hasMachine) && (!forWriting || writes));
    }
    action(ActionId::AllMachines)->setEnabled(true);
    action(ActionId::Redo)->setEnabled(writes && !workbench_.redoText().isEmpty());
    edge_->enablePages(hasMachine);
    heads_->setVisible(hasMachine);
}

void MainWindow::refreshPage() {
    const auto book = workbench_.book();
    if (!book || book->machines().empty()) {
        start_->refresh(workbench_.hasFile(), files_->recent());
        if (stack_->currentWidget() != start_ || QApplication::focusWidget() == nullptr)
            start_->setFocus(Qt::OtherFocusReason);
        stack_->setCurrentWidget(start_);
        return;
    }
    auto* page = pages_.at(shown_);
    if (stale_.erase(shown_) > 0)
        page->refresh();
    edge_->show(shown_);
    if (stack_->currentWidget() != page) {
        stack_->setCurrentWidget(page);
        if (!strip_->isOpen())
            page->firstFocus()->setFocus(Qt::OtherFocusReason);
    }
}

// The view and the machine first, so that the page is worked out once, with both.
void MainWindow::goTo(PageId page, const Aim& aim) {
    auto* target = pages_.at(page);
    target->aimAt(aim);
    if (aim != Aim{})
        stale_.insert(page);
    shown_ = page;
    if (aim.machine)
        workbench_.choose(aim.machine);
    refreshPage();
    if (aim.view != Aim::View::AsLeft)
        target->firstFocus()->setFocus(Qt::OtherFocusReason);
}

// One view of the page Tasks, about the machine that is looked at.
void MainWindow::showTasks(Aim::View view) {
    const auto machine =
        workbench_.chosen()
            ? workbench_.chosen()
            : pages_.at(shown_)->machineHere().value_or(workbench_.book()->machines().front()->id);
    goTo(PageId::Tasks, {.view = view, .machine = machine});
}

// A machine that came with a schedule and a past: what was done to it before is asked at once.
void MainWindow::followAdded(const picture::Change& change) {
    std::optional<MachineId> machine;
    bool hasTasks = false;
    for (const picture::Row& row : change.rows) {
        if (const auto* card = std::get_if<items::Machine>(&row))
            machine = card->id;
        hasTasks = hasTasks || std::holds_alternative<upkeep::TaskVersion>(row);
    }
    if (machine && hasTasks && !book::unknownOf(*workbench_.book(), *machine).empty())
        goTo(PageId::Tasks, {.view = Aim::View::Baseline, .machine = machine});
}

void MainWindow::enter(const EntryRequest& request) {
    if (!workbench_.hasFile() || workbench_.readOnly())
        return status_->say(readOnlyWords(), true);
    strip_->openFor(request);
}

void MainWindow::enter(EntryForm* form) {
    strip_->openForm(form);
}

void MainWindow::explain(QWidget* at, const Why& why) {
    (new WhyPopup(why, this))->showBeside(at);
}

void MainWindow::say(const QString& words) {
    status_->say(words);
}

void MainWindow::find() {
    if (pages_.at(shown_)->find())
        return;
    goTo(PageId::Machine);
    pages_.at(PageId::Machine)->find();
}

void MainWindow::escape() {
    if (auto* list = QApplication::activePopupWidget()) {  // a list of suggestions: it goes before the strip
        list->close();
        return;
    }
    if (strip_->isOpen())
        return strip_->leave();
    workbench_.choose(std::nullopt);
}

void MainWindow::closeEvent(QCloseEvent* event) {
    QStringList begun = strip_->unsaved();
    for (const auto& [id, page] : pages_)
        begun += page->unsaved();
    const bool stay =
        !begun.isEmpty() &&
        !tools_.prompts.confirm(tr("Begun and not saved: %1.").arg(begun.join(QStringLiteral(", "))),
                                tr("Close without it"));
    event->setAccepted(!stay);
}

}  // namespace wm::ui
