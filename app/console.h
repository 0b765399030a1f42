// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QTextStream>
#include <functional>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <tl/expected.hpp>

#include "core/base/result.h"
#include "core/calendar/date.h"

namespace wm::app {

/// What a headless verb answers to the shell; stated by --help.
enum class Exit {
    Done = 0,
    Found = 1,        ///< `check` found something wrong with the file
    Usage = 2,        ///< no such verb or option, or a value is missing
    Refused = 3,      ///< what was given can't be right; nothing was written
    CannotOpen = 4,   ///< the file is not there, is no file of ours, or is damaged, newer or held elsewhere
    CannotWrite = 5,  ///< the file or the output can't be written; nothing was changed
    Unforeseen = 6,   ///< a fault of the program; what it says tells whether something was written
};

/// Why a verb did not do what was asked: one sentence that says what to do.
struct Failure {
    Exit exit = Exit::Refused;
    QString words;
    std::optional<base::Fault> fault{};  ///< if the core refused
};
template <class T>
using Answer = tl::expected<T, Failure>;

tl::unexpected<Failure> fail(Exit exit, QString words);
/// A refusal of the core in the words of the interface.
tl::unexpected<Failure> fail(const base::Error& error);

/// A word as it can be pasted behind a command: in quotes of the shell where it needs them.
QString asArgument(const QString& word);

/// What was asked for can't be put there; `detail` in the system's words, or empty.
tl::unexpected<Failure> cannotWrite(const QString& path, const QString& detail);

/// Where a verb writes and what day it is; the program's own, or a test's.
struct Console {
    QTextStream& out;
    QTextStream& err;
    std::function<calendar::Date()> today;
    bool wrote = false;  ///< the verb's change is in the file
};

/// What to say when something happened that nobody foresaw. A change is in the file as a whole or not at all.
QString unforeseenWords(const char* what, bool wrote = false);

/// Does it, and turns an exception into a failure in words.
Answer<void> guarded(const Console& console, const std::function<Answer<void>()>& act);

/// Writes one JSON value and a line break.
void print(Console& console, const nlohmann::ordered_json& json);

inline QString fromUtf8(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

}  // namespace wm::app
