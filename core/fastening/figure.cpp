// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/figure.h"

#include "core/units/convert.h"
#include "core/units/printed.h"

namespace wm::fastening {

std::string figureText(const Figure& figure, char mark, std::string_view unit) {
    if (!figure.low && !figure.high)
        return figure.words;
    // A unit of another measure is not what was meant for this figure.
    const bool converts = !unit.empty() && units::convert(1, figure.unit, unit).has_value();
    const std::string_view shown = converts ? unit : std::string_view(figure.unit);
    const auto text = [&](const units::Decimal& value) {
        return converts ? units::convertedText(value, figure.unit, unit, mark) : value.text(mark);
    };
    std::string words;
    if (figure.low && figure.high)
        words = text(*figure.low) + " to " + text(*figure.high);
    else if (figure.kind == FigureKind::Limit)
        words = figure.low ? "at least " + text(*figure.low) : "at most " + text(*figure.high);
    else
        words = text(figure.low ? *figure.low : *figure.high);
    if (!shown.empty())
        words += " " + std::string(shown);
    return words;
}

}  // namespace wm::fastening
