// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/upkeep/countdown.h"
#include "core/verbs/baseline_verb.h"

namespace wm::ui {

/// What stands in one field: a day, an hour figure, or both, as they were written down; or what is
/// remembered: so many hours ago, between two figures of the meter, between two days.
struct When {
    std::optional<calendar::Date> date{};
    std::optional<units::Hours> meter{};
    std::optional<upkeep::CountBracket> hoursAgo{};
    std::optional<upkeep::CountBracket> meterThen{};
    std::optional<verbs::RememberedDay> day{};
    [[nodiscard]] bool isRemembered() const { return hoursAgo || meterThen || day; }
};

/// "3 may 2025", "12.3.2025", "41,5 h", "41", "3 may 2025 41.5 h"; "10..15..25 h ago", "15 h ago",
/// "33..36 h", "1 mar 2025..1 aug 2025", and with a day the hours ago. A day is read as in
/// ui/entry/day_words; a whole figure, one with a comma or one before an "h" is hours. Nothing typed is
/// nothing said. Errors: NotADate, NotANumber, TooLarge, OutOfOrder, Malformed in "date" or "meter".
base::Result<When> parseWhen(const QString& typed, calendar::Date today);
QString whenWords(const When& when, calendar::Date today);

/// What is said of one task before it is written.
enum class Said : std::uint8_t { New, NeverDone, Serviced, Fine, Unknown };
struct BaselineAnswer {
    Said said = Said::Unknown;
    QString when{};  ///< as typed

    friend bool operator==(const BaselineAnswer&, const BaselineAnswer&) = default;
};

/// Can this be said of the task? Looking begins a count only where looking is the whole job; an hour figure
/// alone says nothing to a calendar.
bool canSay(const upkeep::TaskVersion& task, Said said, const When& when);

/// The day that an answer without one means.
calendar::Date dayMeant(const book::Book& book, const book::DueLine& line, Said said);

using BaselineAnswers = std::map<TaskId, BaselineAnswer>;

/// The lines for the verb, in the order of `tasks`; those that are said to be unknown have none. A fault is
/// answered with its task.
struct BaselineFault {
    TaskId task{};
    base::Error error;
};
tl::expected<std::vector<verbs::BaselineLine>, BaselineFault> linesOf(const BaselineAnswers& answers,
                                                                      const std::vector<TaskId>& tasks,
                                                                      calendar::Date today);

}  // namespace wm::ui
