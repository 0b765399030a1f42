// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wm::base {

struct CellLine {
    std::size_t line = 0;  ///< of the text, from 1; a quoted line break counts
    std::vector<std::string> cells{};
};

/// Takes apart what a spreadsheet saves or copies, line by line: cells between separators, trimmed, quoted
/// where they hold a separator or a line break (RFC 4180), CR, LF or both. Forgiving: a quote within a cell,
/// and one that nothing closes, is a letter like another.
class CellReader {
  public:
    CellReader(std::string_view text, char separator) : text_(text), separator_(separator) {}

    [[nodiscard]] bool atEnd() const { return at_ >= text_.size(); }
    [[nodiscard]] std::size_t at() const { return at_; }  ///< bytes read
    [[nodiscard]] bool quoteLeftOpen() const { return leftOpen_; }
    CellLine next();

  private:
    [[nodiscard]] bool endsHere() const;
    std::string cell();
    std::string quoted();

    std::string_view text_;
    char separator_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
    bool leftOpen_ = false;
};

/// True if nothing stands in any of them.
bool areBlank(const std::vector<std::string>& cells);

}  // namespace wm::base
