// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/harness/everything.h"

#include <gtest/gtest.h>

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QFile>
#include <QHelpEvent>
#include <QMenu>
#include <QProgressDialog>
#include <QPushButton>
#include <QSettings>
#include <QStackedWidget>
#include <QTabBar>
#include <QTest>
#include <QTimer>
#include <QToolButton>
#include <QToolTip>
#include <set>

#include "core/exchange/json.h"
#include "tests/repository.h"
#include "tests/ui/fake_prompts.h"
#include "tests/ui/garage.h"
#include "tests/ui/harness/states.h"
#include "tests/ui/harness/widgets.h"
#include "ui/entry/entry_form.h"
#include "ui/entry/entry_strip.h"
#include "ui/pages/machine/fitted_view.h"
#include "ui/pages/torque/mark_form.h"
#include "ui/pages/torque/tool_forms.h"
#include "ui/pages/views.h"
#include "ui/shell/backups_dialog.h"
#include "ui/shell/dialog_prompts.h"
#include "ui/shell/long_work.h"
#include "ui/shell/main_window.h"
#include "ui/shell/notebook_dialog.h"
#include "ui/shell/page_table.h"
#include "ui/shell/start_page.h"

namespace wm::ui {

namespace {

using Kind = Surface::Kind;

std::unique_ptr<Garage> garageFor(const Stage& stage) {
    auto demo = std::make_unique<Garage>(Garage::Fill::Demo);
    if (!stage.retold)
        return demo;
    auto rows = exchange::fromJson(exchange::toJson(demo->book().ledger()));
    EXPECT_TRUE(rows.has_value());
    stage.retold(*rows);
    auto other = std::make_unique<Garage>(Garage::Fill::Empty);
    other->say([&rows](const verbs::VerbContext& context) { return verbs::adoptAll(context, *rows); });
    return other;
}

class Walk {
  public:
    Walk(const Stage& stage, const See& see, std::unique_ptr<Garage> garage)
        : see_(see), garage_(std::move(garage)) {
        settings_ =
            std::make_unique<QSettings>(garage_->in(QStringLiteral("settings.ini")), QSettings::IniFormat);
        window_ = std::make_unique<MainWindow>(garage_->workbench(), prompts_, *settings_);
        window_->resize(stage.size);
        window_->show();
        window_->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    }

    void seeStart(const QString& state) { see(Kind::Page, state, window_->findChild<StartPage*>()); }
    void seeWithoutFile() {
        garage_->workbench().close();
        seeStart(QStringLiteral("StartPage, no file"));
    }
    void seeAll();

  private:
    [[nodiscard]] const book::Book& book() const { return garage_->book(); }
    // What is laid out anew may ask for more room around it.
    void settle() {
        for (int round = 0; round < 3; ++round) {
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
            QApplication::processEvents();
        }
    }
    void see(Kind kind, const QString& name, QWidget* root) {
        settle();
        ASSERT_NE(root, nullptr) << name.toStdString();
        ASSERT_TRUE(root->isVisible()) << name.toStdString();
        EXPECT_TRUE(names_.insert(name).second) << name.toStdString() << " is the name of two surfaces";
        if (qEnvironmentVariableIsSet("WITNESSMARK_WINDOW_PICTURES"))
            root->window()->grab().save(qEnvironmentVariable("WITNESSMARK_WINDOW_PICTURES") +
                                        QLatin1Char('/') + QString(name).replace('/', '_') + ".png");
        see_({kind, name, root});
    }

    void sayAndTakeBack();
    void seePages(const QString& about);
    void seeViews(const QString& name, Page* page);
    void seeFolds(const QString& name, QWidget* page);
    void seeMachine(const QString& name, QWidget* page);
    void seeForms();
    void seeForm(const QString& name, const std::function<void(EntryForm&)>& change = {});
    void seeOwnForms();
    void seeDialogs();
    void seeNotebooks();
    void seePrompts();
    void seeMenus();
    void seeWhy();
    void seeStates();
    [[nodiscard]] EntryRequest requestFor(EntryKind kind) const;
    [[nodiscard]] std::optional<std::int64_t> factOf(EntryKind kind) const;

    See see_;
    FakePrompts prompts_;
    std::unique_ptr<Garage> garage_;
    std::unique_ptr<QSettings> settings_;
    std::unique_ptr<MainWindow> window_;
    std::set<QString> names_;
};

// So that there is something to take back, and to say again.
void Walk::sayAndTakeBack() {
    const auto* machine = book().machines().front();
    for (const char* number : {"1: ", "2: "}) {
        upkeep::Snag snag;
        snag.machine = machine->id;
        snag.date = book().today();
        snag.what = number + machine->name + ", " + machine->name;
        garage_->say([snag](const verbs::VerbContext& context) { return verbs::addSnag(context, snag); });
    }
    garage_->workbench().undo();
}

void Walk::seeAll() {
    sayAndTakeBack();
    see(Kind::Window, QStringLiteral("MainWindow"), window_.get());
    seePages(QString());
    seeWhy();
    const auto machines = book().machines();
    garage_->workbench().choose(machines.front()->id);
    seePages(QStringLiteral(", one machine"));
    seeForms();
    seeOwnForms();
    seeMenus();
    seePrompts();
    seeNotebooks();
    seeDialogs();
    seeStates();  // the last, as the garage is another one then
}

void Walk::seePages(const QString& about) {
    for (const auto& entry : pageTable()) {
        window_->goTo(entry.id);
        settle();
        auto* page = window_->page(entry.id);
        seeViews(classOf(*page) + about, page);
    }
}

// Turns the page to its view of that class, and answers which one was seen before.
int turnTo(Page& page, const char* view) {
    auto* views = page.findChild<Views*>();
    const auto* stack = views->findChild<QStackedWidget*>(QString(), Qt::FindDirectChildrenOnly);
    const int before = views->shown();
    for (int at = 0; at < stack->count(); ++at)
        if (classOf(*stack->widget(at)) == QLatin1String(view))
            views->turnTo(at);
    EXPECT_EQ(classOf(*stack->currentWidget()).toStdString(), view);
    return before;
}

void Walk::seeStates() {
    window_->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    for (const PageState& state : pageStates()) {
        window_->goTo(state.page);
        settle();
        auto* page = window_->page(state.page);
        const int before = state.view == nullptr ? 0 : turnTo(*page, state.view);
        settle();
        state.begin(*page, *garage_);
        QString name = classOf(*page) + QStringLiteral(", ") + state.name;
        if (state.view != nullptr)
            name += QLatin1Char('/') + QLatin1String(state.view);
        see(Kind::Page, name, page);
        if (state.end)
            state.end(*page);
        if (state.view != nullptr)
            page->findChild<Views*>()->turnTo(before);
        settle();
    }
    window_->enter(aWornItemAgain(*garage_));
    seeForm(QStringLiteral(", worn"));
}

void Walk::seeViews(const QString& name, Page* page) {
    auto* views = page->findChild<Views*>();
    if (views == nullptr) {
        see(Kind::Page, name, page);
        seeFolds(name, page);
        seeMachine(name, page);
        return;
    }
    const auto* stack = views->findChild<QStackedWidget*>(QString(), Qt::FindDirectChildrenOnly);
    const int before = views->shown();
    for (int at = 0; at < stack->count(); ++at) {
        views->turnTo(at);
        settle();
        const QString view = name + QLatin1Char('/') + classOf(*stack->currentWidget());
        see(Kind::Page, view, page);
        seeFolds(view, stack->currentWidget());
    }
    views->turnTo(before);
}

// What is folded away, unfolded.
void Walk::seeFolds(const QString& name, QWidget* page) {
    QList<QToolButton*> folds;
    for (auto* button : page->findChildren<QToolButton*>())
        if (button->isVisible() && button->isCheckable() && !button->isChecked() && button->isEnabled() &&
            button->group() == nullptr)
            folds << button;
    if (folds.isEmpty())
        return;
    for (auto* fold : folds)
        fold->setChecked(true);
    see(Kind::Page, name + QStringLiteral(", unfolded"), page);
    for (auto* fold : folds)
        fold->setChecked(false);
}

// What the page Machine shows in the place of something else.
void Walk::seeMachine(const QString& name, QWidget* page) {
    auto* fitted = page->findChild<FittedView*>();
    if (fitted == nullptr)
        return;
    emit fitted->placesAsked();
    see(Kind::Page, name + QStringLiteral(", places"), page);
    emit fitted->placesAsked();
    emit fitted->whatIfAsked();
    see(Kind::Page, name + QStringLiteral(", what if"), page);
    emit fitted->whatIfAsked();
}

template <class R>
std::optional<std::int64_t> firstOf(const picture::Ledger& ledger) {
    if (ledger.all<R>().empty())
        return std::nullopt;
    return ledger.all<R>().front().id.value();
}

std::optional<std::int64_t> Walk::factOf(EntryKind kind) const {
    switch (kind) {
        case EntryKind::Outing:
            return firstOf<usage::Outing>(book().ledger());
        case EntryKind::Job:
        case EntryKind::Strike:
            return firstOf<upkeep::Record>(book().ledger());
        case EntryKind::Snag:
            return firstOf<upkeep::Snag>(book().ledger());
        case EntryKind::Wash:
            return firstOf<usage::Wash>(book().ledger());
        case EntryKind::Reading:
            return firstOf<usage::HourReading>(book().ledger());
        case EntryKind::Crash:
            return firstOf<usage::Crash>(book().ledger());
        case EntryKind::PutOff:
        case EntryKind::EndSnag:
        case EntryKind::Fit:
        case EntryKind::TakeOff:
        case EntryKind::Swap:
        case EntryKind::Event:
        case EntryKind::Person:
        case EntryKind::Machine:
            return std::nullopt;
    }
    return std::nullopt;
}

// As the pages would ask: about something that is there.
EntryRequest Walk::requestFor(EntryKind kind) const {
    EntryRequest request;
    request.kind = kind;
    request.machine = book().machines().front()->id;
    if (kind == EntryKind::Job || kind == EntryKind::PutOff)
        request.task = book().due(*request.machine).front().task->task;
    if (kind == EntryKind::Strike)
        request.fact = factOf(kind);
    const calendar::Moment now{book().today()};
    for (const auto* machine : book().machines()) {
        const auto snags = book().snags(machine->id);
        if (kind == EntryKind::EndSnag && !request.snag && !snags.empty())
            request.snag = snags.front().snag->id;
        const auto fitted = book().fittings().on(machine->id, now);
        if ((kind == EntryKind::TakeOff || kind == EntryKind::Swap) && !request.item && !fitted.empty())
            request.item = fitted.front().second;
    }
    return request;
}

// Each field with its fault below it, and what is the fault of none.
Faults faultsIn(const EntryForm& form) {
    Faults faults{{base::Fault::Empty, "", {}, {}}};
    for (const auto* field : form.findChildren<QWidget*>())
        if (!field->objectName().isEmpty() && field->focusPolicy() != Qt::NoFocus &&
            !field->objectName().startsWith(QLatin1String("qt_")))
            faults.push_back({base::Fault::TooLarge, field->objectName().toStdString(), "123456", "1000"});
    return faults;
}

void Walk::seeForm(const QString& name, const std::function<void(EntryForm&)>& change) {
    auto* strip = window_->findChild<EntryStrip*>();
    ASSERT_TRUE(strip->isOpen()) << name.toStdString();
    settle();
    EntryForm* form = nullptr;
    for (auto* each : strip->findChildren<EntryForm*>())
        if (each->isVisible())
            form = each;
    ASSERT_NE(form, nullptr) << name.toStdString();
    const QString whole = classOf(*form) + name;
    if (change)
        change(*form);
    see(Kind::Form, whole, strip);
    form->showFaults(faultsIn(*form));
    see(Kind::Form, whole + QStringLiteral(", refused"), strip);
    window_->action(ActionId::AllMachines)->trigger();  // Escape leaves the strip
    settle();
    ASSERT_FALSE(strip->isOpen()) << name.toStdString();
}

void Walk::seeForms() {
    window_->goTo(PageId::Machine);
    settle();
    for (int kind = 0; kind <= static_cast<int>(EntryKind::Machine); ++kind) {
        EntryRequest request = requestFor(static_cast<EntryKind>(kind));
        window_->enter(request);
        seeForm(QString());
        if (request.kind == EntryKind::Strike)
            continue;
        request.corrects = factOf(request.kind);
        if (!request.corrects)
            continue;
        window_->enter(request);
        seeForm(QStringLiteral(", correcting"));
    }
    window_->enter(requestFor(EntryKind::Reading));
    seeForm(QStringLiteral(", replaced"), replaceTheMeter);
    window_->enter(requestFor(EntryKind::TakeOff));
    seeForm(QStringLiteral(", away"), sendAway);
    window_->enter(aPlaceThatIsTaken(book()));
    seeForm(QStringLiteral(", taken"));
}

// Those that a page opens itself.
void Walk::seeOwnForms() {
    auto& bench = garage_->workbench();
    const auto& ledger = book().ledger();
    ASSERT_FALSE(ledger.all<fastening::Tool>().empty());
    const auto& tool = ledger.all<fastening::Tool>().front();
    window_->enter(new ToolForm(bench, nullptr));
    seeForm(QStringLiteral(", new"));
    window_->enter(new ToolForm(bench, &tool));
    seeForm(QString());
    window_->enter(new CalibrationForm(bench, tool));
    seeForm(QString());
    const auto joints = book().joints(book().machines().front()->id);
    ASSERT_FALSE(joints.empty());
    for (const auto kind : {fastening::MarkKind::Confirmed, fastening::MarkKind::FoundFine}) {
        window_->enter(new MarkForm(bench, joints.front()->joint, kind));
        seeForm(QStringLiteral(", %1").arg(static_cast<int>(kind)));
    }
}

void Walk::seeWhy() {
    for (const auto& entry : pageTable()) {
        window_->goTo(entry.id);
        settle();
        window_->action(ActionId::Why)->trigger();
        if (auto* why = QApplication::activePopupWidget()) {
            see(Kind::Menu, classOf(*why) + QStringLiteral(" on ") + classOf(*window_->page(entry.id)), why);
            why->close();
        }
        settle();
    }
}

// What a menu hangs on.
QWidget* openerOf(const QMenu* menu, const QWidget& window) {
    for (auto* button : window.findChildren<QToolButton*>())
        if (button->menu() == menu)
            return button;
    for (auto* button : window.findChildren<QPushButton*>())
        if (button->menu() == menu)
            return button;
    return nullptr;
}

void Walk::seeMenus() {
    for (const auto& entry : pageTable()) {
        window_->goTo(entry.id);
        settle();
        for (auto* menu : window_->findChildren<QMenu*>()) {
            const auto* opener = openerOf(menu, *window_);
            if (menu->isEmpty() || opener == nullptr || !opener->isVisible())
                continue;
            const QString name = QStringLiteral("QMenu of ") + opener->objectName();
            if (names_.contains(name))
                continue;
            menu->popup(opener->mapToGlobal(QPoint(0, opener->height())));
            see(Kind::Menu, name, menu);
            menu->close();
        }
    }
}

// A box that waits for its answer: seen while it waits.
void Walk::seePrompts() {
    DialogPrompts asks;
    const auto whenShown = [this](const QString& name) {
        QTimer::singleShot(0, window_.get(), [this, name] {
            auto* box = QApplication::activeModalWidget();
            see(Kind::Dialog, name, box);
            if (box != nullptr)
                box->close();
        });
    };
    const QString name = QString::fromStdString(book().machines().front()->name);
    whenShown(QStringLiteral("DialogPrompts, question"));
    // Words of the user's, for ours are seen where they are said.
    const QString sentence = QStringLiteral("%1: %1, %1, %1, %1, %1, %1, %1, %1.").arg(name);
    asks.confirm(sentence, name);
    whenShown(QStringLiteral("DialogPrompts, report"));
    asks.report(sentence, sentence);
    LongWork work(name, window_.get());
    auto* bar = window_->findChild<QProgressDialog*>();
    bar->show();
    work.goesOn(1, 3);
    see(Kind::Dialog, QStringLiteral("LongWork"), bar);
}

void Walk::seeNotebooks() {
    for (const char* name : {"outings", "jobs"}) {
        QFile file(QString::fromStdString(
            test::repositoryPath("tests/data/notebook/" + std::string(name) + ".csv")));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        auto preview = std::make_unique<NotebookPreview>(file.readAll().toStdString(),
                                                         garage_->workbench().book(), *settings_);
        ASSERT_FALSE(preview->open());
        preview->judge();
        NotebookDialog dialog(garage_->workbench(), std::move(preview), QLatin1String(name) + ".csv",
                              window_.get());
        dialog.show();
        settle();
        auto* verdicts = dialog.findChild<QTabBar*>();
        for (int tab = 0; tab < verdicts->count(); ++tab) {
            if (!verdicts->isTabVisible(tab))
                continue;
            verdicts->setCurrentIndex(tab);
            see(Kind::Dialog, QStringLiteral("NotebookDialog, %1, %2").arg(QLatin1String(name)).arg(tab),
                &dialog);
        }
        auto* decimal = dialog.findChild<QComboBox*>(QStringLiteral("notebook-decimal"));
        ASSERT_NE(decimal, nullptr);
        verdicts->setCurrentIndex(0);
        emit decimal->activated(decimal->currentIndex());
        see(Kind::Dialog, QStringLiteral("NotebookDialog, %1, by hand").arg(QLatin1String(name)), &dialog);
        dialog.findChild<QPushButton*>(QStringLiteral("notebook-as-found"))->click();  // nothing is kept
    }
}

void Walk::seeDialogs() {
    BackupsDialog backups(*garage_->workbench().file(), prompts_, window_.get());
    backups.show();
    see(Kind::Dialog, QStringLiteral("BackupsDialog"), &backups);
}

}  // namespace

void seeEverything(const Stage& stage, const See& see) {
    {
        Walk start(stage, see, std::make_unique<Garage>(Garage::Fill::Empty));
        start.seeStart(QStringLiteral("StartPage, empty file"));
        start.seeWithoutFile();
    }
    Walk(stage, see, garageFor(stage)).seeAll();
}

namespace {

// Of the cells that are in view.
void tipsIn(QAbstractItemView* view, std::vector<Tip>& into) {
    const QRect seen = view->viewport()->rect();
    std::set<QModelIndex> asked;
    for (int y = 2; y < seen.height(); y += 12)
        for (int x = 2; x < seen.width(); x += 24) {
            const QModelIndex index = view->indexAt(QPoint(x, y));
            if (!index.isValid() || !asked.insert(index).second)
                continue;
            const QString tip = index.data(Qt::ToolTipRole).toString();
            if (!tip.isEmpty())
                into.push_back({view, tip});
        }
}

// Of a picture that has a tip for each of its parts: asked for as a resting mouse asks.
void tipsOver(QWidget* picture, std::vector<Tip>& into) {
    constexpr int kAcross = 32;
    constexpr int kDown = 12;
    std::set<QString> heard;
    for (int step = 0; step < kAcross * kDown; ++step) {
        const QPoint at(picture->width() * (2 * (step % kAcross) + 1) / (2 * kAcross),
                        picture->height() * (2 * (step / kAcross) + 1) / (2 * kDown));
        QHelpEvent rests(QEvent::ToolTip, at, picture->mapToGlobal(at));
        QCoreApplication::sendEvent(picture, &rests);
        const QString tip = QToolTip::isVisible() ? QToolTip::text() : QString();
        if (!tip.isEmpty() && heard.insert(tip).second)
            into.push_back({picture, tip});
    }
    QToolTip::hideText();
}

}  // namespace

std::vector<Tip> tipsOf(const Surface& surface) {
    std::vector<Tip> tips;
    for (QWidget* widget : seenUnder(surface.root)) {
        const bool isPicture =
            QLatin1String(widget->metaObject()->className()).startsWith(QLatin1String("wm::")) &&
            widget->children().isEmpty();
        if (!widget->toolTip().isEmpty())
            tips.push_back({widget, widget->toolTip()});
        else if (isPicture)
            tipsOver(widget, tips);
        auto* view = qobject_cast<QAbstractItemView*>(widget);
        if (view != nullptr && view->model() != nullptr)
            tipsIn(view, tips);
    }
    return tips;
}

}  // namespace wm::ui
