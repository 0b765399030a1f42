// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "core/base/result.h"

// How JSON text is read here, for the files of core/exchange alone.
namespace wm::exchange {

/// No text of ours is nested deeper than this; more is refused before a tree is built of it.
inline constexpr int kDeepest = 16;

/// Reads JSON by RFC 8259 and no further: no comments, no NaN, no key twice in one object, no number that
/// overflows. Errors: NotText (invalid UTF-8), Malformed (field = "line 12", given = the token or "end of
/// text"), Duplicate (given = the key, field = "line 12").
base::Result<nlohmann::json> parseJson(std::string_view text);

/// The "format" of a parsed text. Errors: Malformed if it is no object or has no whole number there,
/// NewerFormat (given = its format, wanted = `newest`) if it is above `newest`.
base::Result<void> checkFormat(const nlohmann::json& root, int newest);

/// The beginning of `text` (valid UTF-8), short enough for a sentence, cut between characters.
std::string excerpt(std::string_view text);

/// Puts a line of a list, and then its key, around the place that an error names: "hours" in line 3 of
/// "outing" is "outing[3].hours".
base::Error inside(std::size_t at, base::Error error);
base::Error inside(std::string_view key, base::Error error);

}  // namespace wm::exchange
