// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/cells.h"
#include "core/base/progress.h"
#include "core/notebook/plain_text.h"

namespace wm::notebook {

using TableLine = base::CellLine;

// A lifetime of notes is a tenth of this; what is more is another file, and memory has an end.
inline constexpr std::size_t kMostLines = 100'000;
inline constexpr std::size_t kMostCellsOfAll = 2'000'000;

/// The cells of a notebook as they stand in the file. The first line is the header, or a line like the others
/// (`headed`).
struct Table {
    Encoding encoding = Encoding::Utf8;
    char separator = ';';
    bool headed = true;
    std::vector<std::string> header{};  ///< one a column; empty texts without a header
    std::vector<TableLine> lines{};     ///< without empty ones
    bool quoteLeftOpen = false;         ///< the last line runs to the end of the file
};

/// Stopped by it, a call is refused with Stopped.
using base::Progress;

/// Finds out the separator (semicolon, comma, tab, bar), unless one is given, and takes the cells apart.
/// Errors: those of plainText, Stopped, NoColumns if nothing separates anything, TooLarge ("line 7" with more
/// cells than kMostCells, "lines", "cells": `wanted` the most that a notebook may have).
base::Result<Table> readTable(std::string_view bytes, const Progress& progress = {},
                              std::optional<char> separator = {});

}  // namespace wm::notebook
