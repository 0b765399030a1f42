// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/step_words.h"

#include <algorithm>
#include <array>
#include <vector>

#include "core/base/text.h"

namespace wm::weekend {

namespace {

constexpr std::array<std::string_view, 9> kTakenOff{"off",     "out",  "down", "forward", "drained",
                                                    "removed", "free", "laid", "open"};

std::vector<std::string_view> clausesOf(std::string_view text) {
    std::vector<std::string_view> clauses;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find_first_of(",;"), text.size());
        clauses.push_back(base::trimmed(text.substr(0, end)));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return clauses;
}

// "Engine out of the frame" -> "Engine"; "Seat off" -> "Seat"; unchanged if nothing is taken off in it.
std::string_view withoutTakingOff(std::string_view clause) {
    if (const std::size_t out = clause.find(" out of "); out != std::string_view::npos)
        return clause.substr(0, out);
    while (true) {
        const std::size_t space = clause.rfind(' ');
        if (space == std::string_view::npos ||
            std::find(kTakenOff.begin(), kTakenOff.end(), clause.substr(space + 1)) == kTakenOff.end())
            return clause;
        clause = base::trimmed(clause.substr(0, space));
    }
}

bool isDrained(std::string_view stepName) {
    return clausesOf(stepName).front().ends_with(" drained");
}

}  // namespace

std::string partsOf(std::string_view stepName) {
    std::string parts;
    for (const std::string_view clause : clausesOf(stepName)) {
        const std::string_view part = withoutTakingOff(clause);
        if (part.size() == clause.size())
            continue;
        if (!parts.empty())
            parts += ", ";
        parts += part;
    }
    return parts;
}

std::string standingOf(std::string_view stepName) {
    constexpr std::string_view kOnThe = "on the ";
    if (!partsOf(stepName).empty())
        return {};
    for (const std::string_view clause : clausesOf(stepName))
        if (clause.starts_with(kOnThe))
            return std::string(clause.substr(kOnThe.size()));
    return {};
}

base::Phrase refitPhrase(std::string_view stepName) {
    if (const std::string parts = partsOf(stepName); !parts.empty())
        return (isDrained(stepName) ? base::phrase("Sheet", "Fill: %1") : base::phrase("Sheet", "Refit: %1"))
            .arg(parts);
    if (const std::string standing = standingOf(stepName); !standing.empty())
        return base::phrase("Sheet", "Off the %1").arg(standing);
    return base::phrase("Sheet", "Undo: %1").arg(std::string(stepName));
}

}  // namespace wm::weekend
