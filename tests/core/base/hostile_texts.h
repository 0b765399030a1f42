// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

// What no text of a garage may hold, and how a test looks for it in whatever was written.
namespace wm::test {

/// Control characters of both ranges, separators of lines and paragraphs, marks that turn the direction of
/// what follows (Unicode 15, chapter 23 and UAX 9), each within a word. UTF-8, but for the last.
inline const std::array<std::string, 16> kHostileTexts{"a\x01z",
                                                       "a\x08z",
                                                       "a\x1B[31mz",
                                                       "a\x7Fz",
                                                       "a\xC2\x80z",
                                                       "a\xC2\x9B"
                                                       "31mz",
                                                       "a\xC2\x9Fz",
                                                       "a\xE2\x80\xAAz",
                                                       "a\xE2\x80\xAEz",
                                                       "a\xE2\x81\xA6z",
                                                       "a\xE2\x81\xA9z",
                                                       "a\tz",
                                                       "a\xC2\x85z",
                                                       "a\xE2\x80\xA8z",
                                                       "a\xE2\x80\xA9z",
                                                       "a\xFFz"};

/// True if a terminal, or the words beside it, could be disturbed by `text`; a line feed is none.
inline bool disturbs(std::string_view text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto byte = [&](std::size_t i) {
            return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
        };
        const unsigned first = byte(at);
        if ((first < 0x20 && first != '\n') || first == 0x7F)
            return true;
        if (first == 0xC2 && byte(at + 1) >= 0x80 && byte(at + 1) <= 0x9F)
            return true;
        if (first == 0xE2 && byte(at + 1) == 0x80 && byte(at + 2) >= 0xA8 && byte(at + 2) <= 0xAE)
            return true;
        if (first == 0xE2 && byte(at + 1) == 0x81 && byte(at + 2) >= 0xA6 && byte(at + 2) <= 0xA9)
            return true;
    }
    return false;
}

}  // namespace wm::test
