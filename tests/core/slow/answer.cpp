// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/answer.h"

#include <fmt/format.h>

#include <algorithm>

namespace wm::tale {

namespace {

std::string figure(const std::optional<std::int64_t>& value, bool inHours) {
    if (!value)
        return "?";
    return inHours ? fmt::format("{}.{:02}", *value / 100, *value % 100) : std::to_string(*value);
}

void hold(std::vector<std::string>& differences, const std::string& of, const std::string& wanted,
          const std::string& given) {
    if (wanted != given)
        differences.push_back(fmt::format("{}: {} where {} is right", of, given, wanted));
}

// "0.00..?..42.00": of a bracket whose likely figure nobody said only the ends are asked.
bool says(const std::string& wanted, const Answer& answer) {
    if (!answer.behind)
        return false;
    Behind given = *answer.behind;
    if (text(given, answer.inHours) == wanted)
        return true;
    if (wanted.find("..?..") == std::string::npos)
        return false;
    given.best.reset();
    return text(given, answer.inHours) == wanted;
}

std::string boolean(bool value) {
    return value ? "yes" : "no";
}

}  // namespace

std::string text(const Behind& behind, bool inHours) {
    if (behind.best && behind.high && behind.low == *behind.best && behind.low == *behind.high)
        return figure(behind.low, inHours);
    return fmt::format("{}..{}..{}", figure(behind.low, inHours), figure(behind.best, inHours),
                       figure(behind.high, inHours));
}

std::string text(const std::vector<Demand>& demands) {
    std::string all;
    for (const Demand& demand : demands)
        all += fmt::format("{}{} of {} since {}, {}", all.empty() ? "" : "; ", demand.what, demand.from,
                           demand.since, demand.due ? "due" : "waiting");
    return all.empty() ? "none" : all;
}

std::vector<std::string> differences(const Json& ask, const Answer& answer) {
    std::vector<std::string> found;
    for (const auto& [key, wanted] : ask.items()) {
        if (key == "subject")
            hold(found, key, wanted.get<std::string>(), answer.subject);
        else if (key == "counts_from")
            hold(found, key, wanted.get<std::string>(), answer.countsFrom);
        else if (key == "triggered")
            hold(found, key, wanted.get<std::string>(), answer.triggered);
        else if (key == "waits")
            hold(found, key, wanted.get<std::string>(), answer.waits);
        else if (key == "reached")
            hold(found, key, wanted.get<std::string>(), answer.reached);
        else if (key == "completions")
            hold(found, key, wanted.dump(), std::to_string(answer.completions));
        else if (key == "others")
            hold(found, key, wanted.dump(), std::to_string(answer.others));
        else if (key == "extra")
            hold(found, key, boolean(wanted.get<bool>()), boolean(answer.extra));
        else if (key == "due")
            hold(found, key, boolean(wanted.get<bool>()), boolean(answer.due));
        else if (key == "behind" && !says(wanted.get<std::string>(), answer))
            hold(found, key, wanted.get<std::string>(),
                 answer.behind ? text(*answer.behind, answer.inHours) : "nothing");
        else if (key != "task" && key != "of" && key != "on" && key != "behind")
            found.push_back("nobody answers " + key);
    }
    return found;
}

std::vector<std::string> differences(const Json& ask, std::vector<Demand> demands) {
    std::vector<Demand> wanted;
    for (const Json& one : ask.at("are"))
        wanted.push_back({one.at("what").get<std::string>(), one.at("from").get<std::string>(),
                          one.at("since").get<std::string>(), one.at("due").get<bool>()});
    std::sort(wanted.begin(), wanted.end());
    std::sort(demands.begin(), demands.end());
    std::vector<std::string> found;
    hold(found, "follow-ups", text(wanted), text(demands));
    return found;
}

std::vector<std::string> differences(const Answer& one, const Answer& other) {
    std::vector<std::string> found;
    const auto behind = [](const Answer& answer) {
        return answer.behind ? text(*answer.behind, answer.inHours) : std::string("nothing");
    };
    hold(found, "subject", one.subject, other.subject);
    hold(found, "counts_from", one.countsFrom, other.countsFrom);
    hold(found, "behind", behind(one), behind(other));
    hold(found, "completions", std::to_string(one.completions), std::to_string(other.completions));
    hold(found, "others", std::to_string(one.others), std::to_string(other.others));
    hold(found, "extra", boolean(one.extra), boolean(other.extra));
    hold(found, "triggered", one.triggered, other.triggered);
    hold(found, "reached", one.reached, other.reached);
    hold(found, "waits", one.waits, other.waits);
    hold(found, "due", boolean(one.due), boolean(other.due));
    return found;
}

}  // namespace wm::tale
