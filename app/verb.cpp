// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/verb.h"

#include <array>
#include <utility>

namespace wm::app {

namespace {

// What an error calls the value of an option, where that is not the option's own name.
std::string_view fieldOf(std::string_view option) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 6> kFields{
        {{"on", "date"},
         {"outing", "hours"},
         {"past", "past_best"},
         {"reading", "shown"},
         {"before", "reading before"},
         {"rolls-at", "rolls_at"}}};
    for (const auto& [name, field] : kFields)
        if (name == option)
            return field;
    return option;
}

}  // namespace

Answer<std::optional<calendar::Date>> Call::day(const char* option) const {
    if (!has(option))
        return std::nullopt;
    const auto date = calendar::parseDate(fieldOf(option), text(option));
    if (!date)
        return fail(date.error());
    return *date;
}

Answer<std::optional<units::Hours>> Call::hours(const char* option) const {
    if (!has(option))
        return std::nullopt;
    const auto hours = units::parseHours(fieldOf(option), text(option));
    if (!hours)
        return fail(hours.error());
    return *hours;
}

Answer<std::int64_t> Call::count(const char* option, std::int64_t most) const {
    const auto count = units::parseCount(fieldOf(option), text(option), most);
    if (!count)
        return fail(count.error());
    return *count;
}

std::vector<VerbSpec> allVerbs() {
    return {newVerb(),      dueVerb(),       logVerb(),    recordVerb(), baselineVerb(),
            scheduleVerb(), tightenedVerb(), planVerb(),   stepsVerb(),  sheetVerb(),
            cardVerb(),     drawerVerb(),    torqueVerb(), wrenchVerb(), genericVerb(),
            importVerb(),   exportVerb(),    checkVerb(),  undoVerb(),   redoVerb()};
}

QCommandLineOption machineOption() {
    return {"machine", "The machine, by its name or a part of it; may be left out if there is only one.",
            "name"};
}

QCommandLineOption onOption(const QString& words) {
    return {"on", words, "date"};
}

QCommandLineOption jsonOption() {
    return {"json", "Answer in JSON (described in headless.schema.json)."};
}

}  // namespace wm::app
