// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>
#include <map>
#include <set>

#include "core/picture/ledger.h"
#include "ui/pages/page.h"
#include "ui/shell/actions.h"
#include "ui/shell/file_desk.h"
#include "ui/workbench/guide.h"

class QActionGroup;
class QMenu;
class QStackedWidget;
class QToolButton;

namespace wm::ui {

class EdgeBar;
class EntryStrip;
class HeadsStrip;
class StartPage;
class StatusLine;

/// The shell: heads, the page, the entry strip and the bottom lines, with the actions that hold everywhere.
class MainWindow : public QMainWindow, public Guide {
    Q_OBJECT

  public:
    MainWindow(Workbench& workbench, Prompts& prompts, QSettings& settings, DemoSource demo = {});

    void openPath(const QString& path) { files_->openPath(path); }
    [[nodiscard]] QAction* action(ActionId id) const { return actions_.at(id); }
    [[nodiscard]] Page* page(PageId id) const { return pages_.at(id); }
    [[nodiscard]] PageId shownPage() const { return shown_; }

    using Guide::goTo;
    void goTo(PageId page, const Aim& aim) override;
    void enter(const EntryRequest& request) override;
    void enter(EntryForm* form) override;
    void explain(QWidget* at, const Why& why) override;
    void say(const QString& words) override;

  protected:
    void closeEvent(QCloseEvent* event) override;

  private:
    void makeActions();
    void build();
    void connectActions();
    void connectParts();
    void connectThemes(QActionGroup* themes);
    void on(ActionId id, const std::function<void()>& act);
    QToolButton* fileKey();
    void fillRecent();
    void refresh();
    void refreshPage();
    void followNeeds();
    void find();
    void undo();
    void showTasks(Aim::View view);
    void followAdded(const picture::Change& change);
    void escape();

    Workbench& workbench_;
    QSettings& settings_;
    PageTools tools_;
    FileDesk* files_;
    std::map<ActionId, QAction*> actions_;
    std::map<PageId, Page*> pages_;
    std::set<PageId> stale_;  ///< pages that have not seen the book of now
    PageId shown_ = PageId::Bench;
    HeadsStrip* heads_ = nullptr;
    QStackedWidget* stack_ = nullptr;
    StartPage* start_ = nullptr;
    EntryStrip* strip_ = nullptr;
    EdgeBar* edge_ = nullptr;
    StatusLine* status_ = nullptr;
    QMenu* recent_ = nullptr;
};

}  // namespace wm::ui
