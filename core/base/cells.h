// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wm::base {

/// What a stricter reader would not take.
enum class CellFault : std::uint8_t { QuoteWithin, TextAfterQuote, QuoteLeftOpen };

/// More cells than this on one line are passed over: no table of people is that wide.
inline constexpr std::size_t kMostCells = 1'000;

struct CellLine {
    std::size_t line = 0;  ///< of the text, from 1; a quoted line break counts
    std::vector<std::string> cells{};
    std::optional<CellFault> fault{};  ///< the first one
    bool tooWide = false;              ///< there were more than kMostCells
};

/// The one reader of cells. Takes apart what a spreadsheet saves or copies, line by line: cells between
/// separators, trimmed, quoted where they hold a separator or a line break (RFC 4180), CR, LF or both.
/// Forgiving: a quote within a cell, and one that nothing closes, is a letter like another; the line says
/// that it was so.
class CellReader {
  public:
    CellReader(std::string_view text, char separator) : text_(text), separator_(separator) {}

    [[nodiscard]] bool atEnd() const { return at_ >= text_.size(); }
    [[nodiscard]] std::size_t at() const { return at_; }  ///< bytes read
    [[nodiscard]] bool quoteLeftOpen() const { return leftOpen_; }
    CellLine next();
    /// Passes over a line that begins with `sign`; false if this one does not.
    bool skipRemark(char sign);

  private:
    [[nodiscard]] bool endsHere() const;
    void endLine();
    void note(CellFault fault);
    std::string cell();
    std::string quoted();

    std::string_view text_;
    char separator_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
    bool leftOpen_ = false;
    std::optional<CellFault> fault_{};  ///< of the line that is read
};

/// True if nothing stands in any of them.
bool areBlank(const std::vector<std::string>& cells);

}  // namespace wm::base
