// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <concepts>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wm::base {

/// A sentence that waits for its language: the English text is its code, with %1, %2 ... where its parts go
/// and %n for the count that chooses the plural form ("%n day(s)"). Whoever shows it chooses the words.
struct Phrase {
    std::string context{};  ///< under which a translator finds it; empty: said as it stands
    std::string text{};
    std::optional<std::int64_t> count{};
    std::vector<Phrase> parts{};

    Phrase arg(std::string part) && { return std::move(*this).arg(Phrase{{}, std::move(part)}); }
    Phrase arg(Phrase part) && {
        parts.push_back(std::move(part));
        return std::move(*this);
    }
};

/// lupdate looks for calls of this name, with literals and a plain count.
Phrase phrase(const char* context, const char* text);
template <std::integral N>
Phrase phrase(const char* context, const char* text, std::nullptr_t /*meaning*/, N count) {
    return {.context = context, .text = text, .count = static_cast<std::int64_t>(count)};
}

/// Where the words come from: the text of a language for that of a phrase, its plural form chosen.
using Words = std::function<std::string(const Phrase&)>;

/// The English text with its plural form: "(s)" and "(es)" stay for more or less than one.
std::string english(const Phrase& phrase);

/// What `words` make of it, its parts put in at once, so that a "%2" in a part stays what it is.
std::string said(const Phrase& phrase, const Words& words = english);

/// As a file keeps it: code and parts, so that it can be said in the language of whoever reads it.
std::string stored(const Phrase& phrase);
/// A sentence without a code, as older files have it, is said as it stands.
Phrase restored(std::string_view kept);

}  // namespace wm::base
