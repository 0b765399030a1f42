// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>

#include "core/base/phrase.h"
#include "core/calendar/date.h"

namespace wm::sheet {

/// How a sheet is said to its reader: the decimal mark, the words, the days. By itself English, as the
/// headless verbs speak.
struct Speech {
    // Not explicit: a mark alone is English with that mark.
    Speech(char decimalMark = '.') : mark(decimalMark) {}

    char mark;
    base::Words words = base::english;
    /// "2 May 2026", with its weekday "Sat 2 May 2026"; nothing: the English form.
    std::function<std::string(calendar::Date day, bool weekday)> day{};

    [[nodiscard]] std::string operator()(const base::Phrase& phrase) const {
        return base::said(phrase, words);
    }
};

}  // namespace wm::sheet
