// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QKeySequence>
#include <QString>
#include <cstdint>
#include <vector>

namespace wm::ui {

enum class ActionId : std::uint8_t {
    NewFile,
    OpenFile,
    OpenDemo,
    ImportText,
    ImportNotebook,
    ExportText,
    Backups,
    AddMachine,
    AddEvent,
    AddPerson,
    Baseline,
    UsedMachine,
    LightTheme,
    DarkTheme,
    SystemTheme,
    Quit,
    Undo,
    Redo,
    Find,
    Why,
    Outing,
    Job,
    Snag,
    Wash,
    Reading,
    Crash,
    Machine1,
    Machine2,
    Machine3,
    Machine4,
    AllMachines
};

/// Where an action can be seen and clicked; its key works everywhere.
enum class Place : std::uint8_t { FileMenu, StatusLine, Edge, Heads, PageItself };

/// What an action needs before it can be taken.
enum class Needs : std::uint8_t { Nothing, AFile, AMachine, AWritableFile, AWritableMachine };

struct ActionEntry {
    ActionId id;
    QString name;  ///< object name: "enter-outing"
    QString text;
    QString tip;
    QKeySequence keys;
    Place place = Place::FileMenu;
    Needs needs = Needs::Nothing;
    bool startsGroup = false;  ///< a hairline above it in the menu
};

/// Every action of the shell, once. The pages' Alt letters are in pageTable().
std::vector<ActionEntry> actionTable();

}  // namespace wm::ui
