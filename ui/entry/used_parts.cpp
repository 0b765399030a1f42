// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/used_parts.h"

#include <QRegularExpression>
#include <QStringList>

#include "core/picture/checks.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using base::Fault;
constexpr auto kField = "uses";

struct Measure {
    const char* word;
    upkeep::Unit unit;
    int places;  ///< decimal places from this measure to the unit of the shelf
};
constexpr Measure kMeasures[] = {{"ml", upkeep::Unit::Millilitre, 0}, {"l", upkeep::Unit::Millilitre, 3},
                                 {"g", upkeep::Unit::Gram, 0},        {"kg", upkeep::Unit::Gram, 3},
                                 {"", upkeep::Unit::Piece, 0},        {"pc", upkeep::Unit::Piece, 0},
                                 {"pcs", upkeep::Unit::Piece, 0}};

base::Result<const stock::StockLine*> lineNamed(const book::Book& book, const QString& name) {
    const stock::StockLine* found = nullptr;
    QStringList fitting;
    for (const auto& line : book.ledger().all<stock::StockLine>()) {
        if (!line.active)
            continue;
        const QString full = text(line.name);
        if (full.compare(name, Qt::CaseInsensitive) == 0 ||
            (!line.partNumber.empty() && text(line.partNumber) == name))
            return &line;
        if (full.contains(name, Qt::CaseInsensitive)) {
            found = &line;
            fitting << full;
        }
    }
    if (fitting.size() == 1)
        return found;
    return base::refuse(Fault::Unknown, kField, name.toStdString(),
                        fitting.join(QStringLiteral(", ")).toStdString());
}

base::Result<std::int64_t> amountOf(const stock::StockLine& line, const QString& figure,
                                    const QString& measure) {
    if (figure.isEmpty())
        return std::int64_t{1};
    const auto amount = units::parseDecimal(kField, figure.toStdString());
    if (!amount)
        return tl::unexpected<base::Error>(amount.error());
    for (const auto& each : kMeasures) {
        if (measure != QLatin1String(each.word))
            continue;
        // A bare figure is in whatever the line is counted in.
        if (each.unit != line.unit && !measure.isEmpty())
            break;
        const std::int64_t whole = amount->scaledTo(each.places);
        if (whole <= 0)
            return base::refuse(Fault::NotPositive, kField, figure.toStdString());
        if (units::Decimal(whole, each.places) != *amount)
            return base::refuse(Fault::NotANumber, kField, figure.toStdString(), "whole pieces, ml or g");
        if (whole > picture::kMostUsed)
            return base::refuse(Fault::TooLarge, kField, (figure + ' ' + measure).trimmed().toStdString(),
                                amountWords(picture::kMostUsed, line.unit).toStdString());
        return whole;
    }
    return base::refuse(Fault::WrongUnit, kField, measure.toStdString(),
                        std::string(base::nameOf(line.unit)));
}

base::Result<upkeep::Use> parseUse(const book::Book& book, const QString& typed) {
    // The whole may be a name that ends in a figure ("main jet 170"): a name that fits wins.
    if (const auto whole = lineNamed(book, typed);
        whole && text((*whole)->name).compare(typed, Qt::CaseInsensitive) == 0)
        return upkeep::Use{(*whole)->id, std::nullopt, 1};
    static const QRegularExpression shape(
        QStringLiteral(
            "^(?<name>.*?)(?:\\s+(?<figure>-?\\d+(?:[.,]\\d+)?)\\s*(?<measure>ml|l|g|kg|pcs?)?)?$"),
        QRegularExpression::CaseInsensitiveOption);
    // "1,1 l engine oil" says the same; without its measure the figure would be part of a name.
    static const QRegularExpression amountFirst(
        QStringLiteral("^(?<figure>\\d+(?:[.,]\\d+)?)\\s*(?<measure>ml|l|g|kg|pcs?)\\s+(?<name>.+)$"),
        QRegularExpression::CaseInsensitiveOption);
    const auto first = amountFirst.match(typed);
    const auto match = first.hasMatch() ? first : shape.match(typed);
    const auto line = lineNamed(book, match.captured(QStringLiteral("name")).trimmed());
    if (!line)
        return tl::unexpected<base::Error>(line.error());
    const auto amount = amountOf(**line, match.captured(QStringLiteral("figure")),
                                 match.captured(QStringLiteral("measure")).toLower());
    if (!amount)
        return tl::unexpected<base::Error>(amount.error());
    return upkeep::Use{(*line)->id, std::nullopt, *amount};
}

QString useText(const stock::StockLine& line, std::int64_t amount) {
    return QStringLiteral("%1 %2").arg(text(line.name), amountWords(amount, line.unit));
}

}  // namespace

base::Result<std::vector<upkeep::Use>> parseUses(const book::Book& book, const QString& typed) {
    std::vector<upkeep::Use> uses;
    for (const QString& part : typed.split(QLatin1Char(';'), Qt::SkipEmptyParts)) {
        const QString words = part.simplified();
        if (words.isEmpty())
            continue;
        const auto use = parseUse(book, words);
        if (!use)
            return tl::unexpected<base::Error>(use.error());
        uses.push_back(*use);
    }
    return uses;
}

QString usesText(const book::Book& book, const std::vector<upkeep::Use>& uses) {
    QStringList words;
    for (const auto& use : uses)
        if (const auto* line = book.ledger().find<stock::StockLine>(use.line))
            words << useText(*line, use.amount);
    return words.join(QStringLiteral("; "));
}

QString untiedKitText(const upkeep::TaskVersion& task) {
    QStringList words;
    for (const auto& kit : task.kit)
        if (!kit.line && !kit.onlyIfNeeded)
            words << text(kit.what);
    return words.isEmpty() ? QString()
                           : tr("not tied to the shelf: %1").arg(words.join(QStringLiteral(", ")));
}

QString kitText(const book::Book& book, const upkeep::TaskVersion& task) {
    QStringList words;
    for (const auto& kit : task.kit) {
        if (!kit.line || kit.onlyIfNeeded)
            continue;
        if (const auto* line = book.ledger().find<stock::StockLine>(*kit.line))
            words << useText(*line, kit.amount);
    }
    return words.join(QStringLiteral("; "));
}

}  // namespace wm::ui
