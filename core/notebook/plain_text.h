// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

/// A notebook that was kept in a spreadsheet, handed over as text between separators: read tolerantly, every
/// line judged, nothing written before the mechanic agrees.
namespace wm::notebook {

enum class Encoding : std::uint8_t { Utf8, Utf8WithMark, Utf16Little, Utf16Big, Windows1252 };

struct PlainText {
    Encoding encoding = Encoding::Utf8;
    std::string text{};  ///< UTF-8
};

/// No notebook is larger.
inline constexpr std::size_t kMostBytes = 16 * 1024 * 1024;

/// Bytes of a file to text: byte order marks, UTF-16 with or without one, UTF-8, else Windows-1252 (of which
/// Latin-1 is a part). Errors: Empty (nothing but blanks), NotText (a picture, a workbook, an archive:
/// control characters where a table has none), TooLarge (`wanted` the most bytes).
base::Result<PlainText> plainText(std::string_view bytes);

}  // namespace wm::notebook
