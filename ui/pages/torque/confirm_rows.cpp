// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/confirm_rows.h"

#include <QRegularExpression>
#include <algorithm>
#include <array>
#include <utility>

#include "ui/words/apply_words.h"
#include "ui/words/doubt_words.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

using definitions::Printed;
using definitions::PrintedKind;

namespace {

QString kindWords(PrintedKind kind) {
    switch (kind) {
        case PrintedKind::Interval:
            return tr("interval");
        case PrintedKind::Quantity:
            return tr("amount");
        case PrintedKind::Limit:
            return tr("limit");
        case PrintedKind::Torque:
            break;
    }
    return tr("torque");
}

QString ofWords(const Printed& figure) {
    return figure.key.kind == PrintedKind::Torque && figure.about == "other" ? QString() : text(figure.about);
}

constexpr std::array<const char*, 18> kIntervalWords{
    QT_TR_NOOP("mud days"), QT_TR_NOOP("mud day"), QT_TR_NOOP("outings"), QT_TR_NOOP("outing"),
    QT_TR_NOOP("crashes"),  QT_TR_NOOP("crash"),   QT_TR_NOOP("months"),  QT_TR_NOOP("month"),
    QT_TR_NOOP("starts"),   QT_TR_NOOP("start"),   QT_TR_NOOP("washes"),  QT_TR_NOOP("wash"),
    QT_TR_NOOP("days"),     QT_TR_NOOP("day"),     QT_TR_NOOP("first"),   QT_TR_NOOP("then"),
    QT_TR_NOOP("or"),       QT_TR_NOOP("and")};

using WordPairs = std::vector<std::pair<QString, QString>>;

WordPairs wordsOfIntervals() {
    WordPairs words;
    for (const char* each : kIntervalWords)
        words.emplace_back(QLatin1String(each), tr(each));
    return words;
}

// Whole words alone: "day" is none in "Monday".
QString replaced(const QString& text, WordPairs words) {
    std::stable_sort(words.begin(), words.end(),
                     [](const auto& a, const auto& b) { return a.first.size() > b.first.size(); });
    QStringList choices;
    for (const auto& [from, to] : words)
        choices << QRegularExpression::escape(from);
    const QRegularExpression any(
        QStringLiteral("(?<!\\p{L})(%1)(?!\\p{L})").arg(choices.join(QLatin1Char('|'))),
        QRegularExpression::UseUnicodePropertiesOption);
    QString result;
    qsizetype done = 0;
    for (auto at = any.globalMatch(text); at.hasNext();) {
        const auto match = at.next();
        const auto pair = std::find_if(words.begin(), words.end(),
                                       [&](const auto& each) { return each.first == match.captured(1); });
        result += text.mid(done, match.capturedStart() - done) + pair->second;
        done = match.capturedEnd();
    }
    return result + text.mid(done);
}

}  // namespace

QString figureWords(const Printed& figure) {
    const QString words = text(figure.figure);
    return figure.key.kind == PrintedKind::Interval ? replaced(words, wordsOfIntervals()) : words;
}

std::string figureTyped(PrintedKind kind, const QString& typed) {
    if (kind != PrintedKind::Interval)
        return typed.toStdString();
    WordPairs words = wordsOfIntervals();
    for (auto& [core, spoken] : words)
        std::swap(core, spoken);
    return replaced(typed, std::move(words)).toStdString();
}

TableRow confirmRow(const Printed& figure, std::int64_t id, bool passedOver) {
    const bool isBlank = figure.figure.empty();
    return {.id = id,
            .cells = {{.text = kindWords(figure.key.kind), .pencil = true},
                      {.text = text(figure.name), .pencil = passedOver},
                      {.text = ofWords(figure), .pencil = true},
                      {.text = isBlank ? text(figure.aside) : figureWords(figure),
                       .figure = true,
                       .unconfirmed = !isBlank || !figure.aside.empty()},
                      {.text = passedOver ? tr("passed over") : text(figure.page), .pencil = true}}};
}

QString countByKind(const std::vector<Printed>& figures) {
    constexpr std::array<std::pair<PrintedKind, const char*>, 4> kKinds{
        {{PrintedKind::Interval, QT_TR_NOOP("intervals %1 of %2")},
         {PrintedKind::Quantity, QT_TR_NOOP("amounts %1 of %2")},
         {PrintedKind::Limit, QT_TR_NOOP("limits %1 of %2")},
         {PrintedKind::Torque, QT_TR_NOOP("torques %1 of %2")}}};
    QStringList parts;
    for (const auto& [kind, words] : kKinds) {
        int all = 0;
        int confirmed = 0;
        for (const Printed& figure : figures) {
            all += figure.key.kind == kind ? 1 : 0;
            confirmed += figure.key.kind == kind && figure.confirmed ? 1 : 0;
        }
        if (all > 0)
            parts << tr(words).arg(confirmed).arg(all);
    }
    return parts.join(QStringLiteral(" · "));
}

QString aboutWords(const Printed& figure) {
    QStringList parts{kindWords(figure.key.kind)};
    if (const QString of = ofWords(figure); !of.isEmpty())
        parts << of;
    if (!figure.aside.empty())
        parts << (figure.key.kind == PrintedKind::Torque ? tr("in stages: %1").arg(text(figure.aside))
                                                         : text(figure.aside));
    if (!figure.sharedWith.empty())
        parts << tr("for all %1").arg(text(figure.sharedWith));
    return parts.join(QStringLiteral(" · "));
}

QString sourceWords(const Printed& figure) {
    const QString source = figure.source.empty() ? tr("no source") : text(figure.source);
    return figure.page.empty() ? source : tr("%1, p. %2").arg(source, text(figure.page));
}

std::pair<QString, QString> splitFigure(const Printed& figure) {
    const QString words = figureWords(figure);
    const auto blank = words.lastIndexOf(QLatin1Char(' '));
    const bool isOne = figure.key.kind != PrintedKind::Interval || words.count(QLatin1Char(' ')) == 1;
    if (!isOne || blank < 0 || words.back().isDigit())
        return {words, {}};
    return {words.left(blank), words.mid(blank + 1)};
}

QString refusalWords(const store::ApplyError& error) {
    if (error.kind == store::ApplyError::Kind::Refused && error.error.field == "stages")
        return stagesWords(error.error);
    return wordsFor(error);
}

}  // namespace wm::ui
