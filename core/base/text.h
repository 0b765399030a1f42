// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace wm::base {

/// The longest name and the longest note that a field takes, in bytes of UTF-8.
inline constexpr std::size_t kLongestName = 200;
inline constexpr std::size_t kLongestNote = 20'000;

/// True if `text` is well-formed UTF-8 (RFC 3629: no overlong forms, no surrogates, at most U+10FFFF).
bool isUtf8(std::string_view text);

/// The one check of text: true if `text` is UTF-8 and nothing in it is a control character of either range
/// (C0 but for the line feed, DEL, C1), a separator of lines or paragraphs, or a mark that turns the
/// direction of what follows. Marks that only join or part letters, as some scripts need them, are text.
bool isPlain(std::string_view text);

/// Blanks for tabs, and one line feed for a line break of whichever system; all else as it was.
std::string withPlainBlanks(std::string_view text);

/// What isPlain holds of, from anything: as withPlainBlanks, and U+FFFD for what is no text.
std::string harmless(std::string_view text);
/// The same, blanks for line breaks.
std::string onOneLine(std::string_view text);

/// A name: trimmed, not empty, plain, on one line, at most kLongestName bytes.
Result<std::string> parseName(std::string_view field, std::string_view text);

/// A note: trimmed, with plain blanks, plain, may be empty, line breaks allowed, at most kLongestNote bytes.
Result<std::string> parseNote(std::string_view field, std::string_view text);

std::string_view trimmed(std::string_view text);

/// Lower case of ASCII letters only; enough for codes, never for names that people read.
std::string lowered(std::string_view text);

/// "Rear axle nut" -> "rear-axle-nut": what a code made from a name looks like.
std::string codeFromName(std::string_view name);

std::vector<std::string> split(std::string_view text, char separator);

}  // namespace wm::base
