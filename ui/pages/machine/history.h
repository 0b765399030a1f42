// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/book/book.h"
#include "ui/workbench/guide.h"

namespace wm::ui {

enum class HistoryKind : std::uint8_t { Job, Riding, Snag, Meter, Item, PutOff };

/// One fact as a line of the history. What came with another entry (the reading of an outing) is told there.
struct HistoryEntry {
    std::int64_t fact = 0;
    base::Entered entered = 0;
    HistoryKind kind = HistoryKind::Job;
    std::optional<EntryKind> corrected;  ///< the form that puts it right, if there is one
    MachineId machine{};
    calendar::Date date{};
    QString words;
    QString figure;
    QStringList details;
    bool isStruck = false;
};

/// Everything that was entered about a machine, or about all of them, newest first; struck entries too.
std::vector<HistoryEntry> historyOf(const book::Book& book, std::optional<MachineId> machine);

}  // namespace wm::ui
