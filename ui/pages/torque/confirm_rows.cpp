// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/confirm_rows.h"

#include <algorithm>
#include <array>

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

}  // namespace

TableRow confirmRow(const Printed& figure, std::int64_t id, bool passedOver) {
    const bool isBlank = figure.figure.empty();
    return {.id = id,
            .cells = {{.text = kindWords(figure.key.kind), .pencil = true},
                      {.text = text(figure.name), .pencil = passedOver},
                      {.text = ofWords(figure), .pencil = true},
                      {.text = isBlank ? text(figure.aside) : text(figure.figure),
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
    const QString words = text(figure.figure);
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
