// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/evidence_words.h"

#include <QStringList>

#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QString decimalWords(const units::Decimal& value) {
    return text(value.text(decimalMark()));
}

QString partWords(items::WornPart part) {
    switch (part) {
        case items::WornPart::Chain:
            return tr("chain");
        case items::WornPart::Disc:
            return tr("disc");
        case items::WornPart::Bore:
            break;
    }
    return tr("bore");
}

QString words(const items::MeterShows& meter) {
    const QString shown = tr("hour meter %1").arg(hoursWords(meter.shown));
    switch (meter.fitted) {
        case items::MeterFitted::FromNew:
            return tr("%1, there from new and never stopped").arg(shown);
        case items::MeterFitted::Later:
            return meter.before
                       ? tr("%1, fitted at about %2 by somebody's word").arg(shown, hoursWords(*meter.before))
                       : tr("%1, fitted later").arg(shown);
        case items::MeterFitted::Unknown:
            break;
    }
    return tr("%1, nobody knows when it was fitted").arg(shown);
}

QString words(const items::SellersWord& word) {
    return tr("the seller says %1").arg(hoursWords(word.likely));
}

QString words(const items::SeasonsRidden& ridden) {
    const QString habit = ridden.high ? tr("%1 to %2").arg(hoursWords(ridden.low), hoursWords(*ridden.high))
                                      : tr("about %1").arg(hoursWords(ridden.low));
    return tr("%1 seasons of %2 each").arg(decimalWords(ridden.seasons), habit);
}

QString words(const items::WearSeen& wear) {
    QString words = tr("%1 %2, as new %3, limit %4")
                        .arg(partWords(wear.part), decimalWords(wear.now), decimalWords(wear.asNew),
                             decimalWords(wear.limit));
    if (wear.lifeLow && wear.lifeHigh)
        words += tr(", lasts %1 to %2 here").arg(hoursWords(*wear.lifeLow), hoursWords(*wear.lifeHigh));
    else if (wear.lifeLow)
        words += tr(", lasts %1 or more here").arg(hoursWords(*wear.lifeLow));
    else if (wear.lifeHigh)
        words += tr(", lasts at most %1 here").arg(hoursWords(*wear.lifeHigh));
    return words;
}

QString words(const items::TyreStamp& stamp) {
    return tr("tyre stamp %1").arg(text(stamp.code));
}

}  // namespace

QString evidenceWords(const items::Evidence& evidence) {
    return std::visit([](const auto& piece) { return words(piece); }, evidence);
}

QString bracketWords(const usage::HoursBracket& hours) {
    if (hours.isExact())
        return hoursWords(hours.low);
    const QString range = hours.high ? tr("%1 to %2").arg(hoursWords(hours.low), hoursWords(*hours.high))
                                     : tr("%1 or more").arg(hoursWords(hours.low));
    return hours.best == hours.low && !hours.high ? range
                                                  : tr("%1, likely %2").arg(range, hoursWords(hours.best));
}

QString claimWords(const items::Evidence& evidence, const items::Claim& claim, calendar::Date today) {
    QStringList parts;
    const auto* wear = std::get_if<items::WearSeen>(&evidence);
    if (claim.wornPercent)
        parts << tr("%1 % worn").arg(*claim.wornPercent);
    if (claim.ofPart && wear != nullptr)
        parts << tr("the %1 alone has %2").arg(partWords(wear->part), bracketWords(*claim.ofPart));
    if (claim.low && claim.high && *claim.low == *claim.high)
        parts << tr("exactly %1").arg(hoursWords(*claim.low));
    else if (claim.low)
        parts << (wear != nullptr ? tr("so the machine at least %1") : tr("at least %1"))
                     .arg(hoursWords(*claim.low));
    if (claim.high && (!claim.low || *claim.low != *claim.high))
        parts << tr("at most %1").arg(hoursWords(*claim.high));
    if (claim.best && !(claim.low && claim.high && *claim.low == *claim.high))
        parts << tr("likely %1").arg(hoursWords(*claim.best));
    if (claim.madeIn)
        parts << tr("made in the week of %1: it is %2 years old, and says nothing of hours")
                     .arg(dayWords(*claim.madeIn, today))
                     .arg((today - *claim.madeIn) / 365.25, 0, 'f', 1);
    return parts.join(QStringLiteral("; "));
}

}  // namespace wm::ui
