// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/used.h"

#include <algorithm>
#include <array>

#include "core/base/text.h"
#include "core/notebook/typed_figures.h"
#include "core/words/folding.h"

namespace wm::notebook {

namespace {

using upkeep::Unit;

constexpr std::int64_t kMostLitres = 20;

struct Measure {
    std::string_view word;
    Unit unit;
    std::int64_t each;  ///< base units in one
};
constexpr std::array<Measure, 18> kMeasures{{{"l", Unit::Millilitre, 1000},
                                             {"ltr", Unit::Millilitre, 1000},
                                             {"litre", Unit::Millilitre, 1000},
                                             {"litres", Unit::Millilitre, 1000},
                                             {"liter", Unit::Millilitre, 1000},
                                             {"cl", Unit::Millilitre, 10},
                                             {"dl", Unit::Millilitre, 100},
                                             {"ml", Unit::Millilitre, 1},
                                             {"cc", Unit::Millilitre, 1},
                                             {"ccm", Unit::Millilitre, 1},
                                             {"kg", Unit::Gram, 1000},
                                             {"g", Unit::Gram, 1},
                                             {"gr", Unit::Gram, 1},
                                             {"x", Unit::Piece, 1},
                                             {"pcs", Unit::Piece, 1},
                                             {"pc", Unit::Piece, 1},
                                             {"stk", Unit::Piece, 1},
                                             {"st", Unit::Piece, 1}}};

const Measure* measureNamed(std::string_view word) {
    const std::string plain = words::folded(word);
    const auto found = std::find_if(kMeasures.begin(), kMeasures.end(),
                                    [&](const Measure& measure) { return measure.word == plain; });
    return found == kMeasures.end() ? nullptr : found;
}

bool isFigure(char c) {
    return (c >= '0' && c <= '9') || c == ',' || c == '.';
}

// "1,0l" -> "1,0", "l"
std::pair<std::string_view, std::string_view> parted(std::string_view word) {
    std::size_t figures = 0;
    while (figures < word.size() && isFigure(word[figures]))
        ++figures;
    return {word.substr(0, figures), word.substr(figures)};
}

struct Amount {
    std::int64_t thousandths = 0;
    const Measure* measure = nullptr;
    std::size_t words = 1;  ///< how many it takes
};

// An amount that begins with this word: "1,0 l", "60ml", "2x", "2".
std::optional<Amount> amountAt(const std::vector<std::string>& words, std::size_t at, char decimal) {
    std::string_view word = words[at];
    if (word.starts_with('x') && word.size() > 1)
        word.remove_prefix(1);
    const auto [figures, behind] = parted(word);
    const auto value = figures.empty() ? std::nullopt : readNumber(figures, decimal, 3);
    if (!value)
        return std::nullopt;
    Amount amount{.thousandths = *value};
    if (!behind.empty()) {
        amount.measure = measureNamed(behind);
        return amount.measure == nullptr ? std::nullopt : std::optional(amount);
    }
    if (at + 1 < words.size())
        if (const Measure* next = measureNamed(words[at + 1])) {
            amount.measure = next;
            amount.words = 2;
        }
    return amount;
}

std::optional<UsedPart> partOf(std::string_view text, char decimal) {
    std::vector<std::string> words;
    for (std::string& word : base::split(text, ' '))
        if (!word.empty())
            words.push_back(std::move(word));
    UsedPart part;
    std::optional<Amount> amount;
    // The last amount counts if it ends the text, else the one in front: "brake fluid 4 60 ml".
    std::size_t from = words.size();
    for (std::size_t at = 0; at < words.size(); ++at)
        if (const auto read = amountAt(words, at, decimal);
            read && (at + read->words == words.size() || (at == 0 && words.size() > read->words))) {
            amount = read;
            from = at;
        }
    for (std::size_t at = 0; at < words.size(); ++at)
        if (!amount || at < from || at >= from + amount->words)
            part.name += (part.name.empty() ? "" : " ") + words[at];
    if (part.name.empty())
        return std::nullopt;
    if (!amount)
        return part;
    const std::int64_t each = amount->measure != nullptr ? amount->measure->each : 1;
    part.unit = amount->measure != nullptr ? amount->measure->unit : Unit::Piece;
    std::int64_t thousandths = amount->thousandths * each;
    if (part.unit != Unit::Piece && each == 1000 && amount->thousandths > kMostLitres * 1000) {
        thousandths = amount->thousandths;
        part.unitGuessed = true;
    }
    if (thousandths <= 0 || thousandths % 1000 != 0 || thousandths > 100'000'000'000)
        return std::nullopt;
    part.amount = thousandths / 1000;
    return part;
}

std::vector<std::string> partsOf(std::string_view cell) {
    std::vector<std::string> parts(1);
    for (std::size_t at = 0; at < cell.size(); ++at) {
        const char c = cell[at];
        const auto figureAt = [&](std::size_t where) {
            return where < cell.size() && cell[where] >= '0' && cell[where] <= '9';
        };
        const bool comma = c == ',' && !(at > 0 && figureAt(at - 1) && figureAt(at + 1));
        if (c == ';' || c == '+' || c == '\n' || comma)
            parts.emplace_back();
        else
            parts.back() += c;
    }
    std::erase_if(parts, [](const std::string& part) { return base::trimmed(part).empty(); });
    return parts;
}

}  // namespace

std::optional<std::vector<UsedPart>> readUsed(std::string_view cell, char decimal) {
    std::vector<UsedPart> used;
    for (const std::string& text : partsOf(cell)) {
        auto part = partOf(text, decimal);
        if (!part)
            return std::nullopt;
        used.push_back(std::move(*part));
    }
    return used;
}

bool readsAsUsed(std::string_view cell) {
    const auto used = readUsed(cell, ',');
    return used && !used->empty() && std::any_of(used->begin(), used->end(), [](const UsedPart& part) {
               return part.unit != Unit::Piece || part.amount != 1;
           });
}

}  // namespace wm::notebook
