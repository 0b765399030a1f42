// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/actions.h"

#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QKeySequence keys(const char* written) {
    return QKeySequence(QString::fromLatin1(written));
}

std::vector<ActionEntry> beginActions() {
    using enum ActionId;
    const Place menu = Place::FileMenu;
    return {
        {NewFile, "new-file", tr("&New file…"), tr("Begin with an empty file"), keys("Ctrl+N"), menu,
         Needs::Nothing},
        {OpenFile, "open-file", tr("&Open…"), tr("Open a file"), keys("Ctrl+O"), menu, Needs::Nothing},
        {OpenDemo,
         "open-demo",
         tr("Look at the &demo"),
         tr("An invented garage to try things in"),
         {},
         menu,
         Needs::Nothing},
        {AddMachine,
         "add-machine",
         tr("Add a &machine…"),
         tr("A machine with a starter schedule"),
         {},
         menu,
         Needs::AWritableFile,
         true},
        {AddEvent, "add-event", tr("Add an &event…"), tr("A race or practice day ahead"), keys("Ctrl+E"),
         menu, Needs::AWritableMachine},
        {AddPerson,
         "add-person",
         tr("Add a &person…"),
         tr("Somebody who rides or works"),
         {},
         menu,
         Needs::AWritableFile},
        {UsedMachine,
         "used-machine",
         tr("A &used machine…"),
         tr("A bracket of hours from what can be seen and what is said"),
         {},
         menu,
         Needs::AWritableMachine},
        {Baseline, "baseline", tr("What is &known of a machine…"),
         tr("One key an answer for each task that nobody has recorded"), keys("Ctrl+B"), menu,
         Needs::AWritableMachine},
    };
}

std::vector<ActionEntry> fileActions() {
    using enum ActionId;
    const Place menu = Place::FileMenu;
    return {
        {ExportText,
         "export-text",
         tr("E&xport as JSON…"),
         tr("The whole file as text"),
         {},
         menu,
         Needs::AFile,
         true},
        {ImportText,
         "import-text",
         tr("&Import JSON…"),
         tr("A new file from exported text"),
         {},
         menu,
         Needs::Nothing},
        {ImportNotebook,
         "import-notebook",
         tr("Import a no&tebook (CSV)…"),
         tr("Outings, readings, washes or jobs kept in a spreadsheet, looked at line by line"),
         {},
         menu,
         Needs::AWritableFile},
        {Backups,
         "backups",
         tr("&Backups…"),
         tr("Daily copies, and what going back would lose"),
         {},
         menu,
         Needs::AFile},
        {LightTheme,
         "theme-light",
         tr("&Light"),
         tr("Dark ink on light paper"),
         {},
         menu,
         Needs::Nothing,
         true},
        {DarkTheme, "theme-dark", tr("D&ark"), tr("Light ink on dark paper"), {}, menu, Needs::Nothing},
        {SystemTheme,
         "theme-system",
         tr("As the &system"),
         tr("Light or dark as the desktop is"),
         {},
         menu,
         Needs::Nothing},
        {Quit, "quit", tr("&Quit"), tr("Everything is saved already"), keys("Ctrl+Q"), menu, Needs::Nothing,
         true},
    };
}

std::vector<ActionEntry> benchActions() {
    using enum ActionId;
    const Place line = Place::StatusLine;
    return {
        {Undo, "undo", tr("Undo"), tr("Takes back what was last said"), keys("Ctrl+Z"), line,
         Needs::AWritableFile},
        {Redo, "redo", tr("Redo"), tr("Says it again"), keys("Ctrl+Shift+Z"), line, Needs::AWritableFile},
        {Outing, "enter-outing", tr("outing"), tr("Log a day's riding"), keys("F2"), line,
         Needs::AWritableMachine},
        {Job, "enter-job", tr("job"), tr("Record a job done"), keys("F3"), line, Needs::AWritableMachine},
        {Snag, "enter-snag", tr("snag"), tr("Note something found"), keys("F4"), line,
         Needs::AWritableMachine},
        {Wash, "enter-wash", tr("wash"), tr("Note a wash"), keys("F9"), line, Needs::AWritableMachine},
        {Reading, "enter-reading", tr("reading"), tr("Note what a meter shows"), keys("F10"), line,
         Needs::AWritableMachine},
        {Crash, "enter-crash", tr("crash"), tr("Note a crash"), keys("F11"), line, Needs::AWritableMachine},
        {Find, "find", tr("find…"), tr("Search the history"), keys("Ctrl+F"), Place::Edge, Needs::AMachine},
        {Why, "why", tr("why"), tr("Where the figure under the cursor comes from"), keys("F1"),
         Place::PageItself, Needs::AMachine},
        {Machine1, "machine-1", tr("first machine"), {}, keys("F5"), Place::Heads, Needs::AMachine},
        {Machine2, "machine-2", tr("second machine"), {}, keys("F6"), Place::Heads, Needs::AMachine},
        {Machine3, "machine-3", tr("third machine"), {}, keys("F7"), Place::Heads, Needs::AMachine},
        {Machine4, "machine-4", tr("fourth machine"), {}, keys("F8"), Place::Heads, Needs::AMachine},
        {AllMachines, "all-machines", tr("all machines"), {}, keys("Escape"), Place::Heads, Needs::AMachine},
    };
}

}  // namespace

std::vector<ActionEntry> actionTable() {
    auto all = beginActions();
    for (auto more : {fileActions(), benchActions()})
        all.insert(all.end(), more.begin(), more.end());
    return all;
}

}  // namespace wm::ui
