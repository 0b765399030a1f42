// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/generic_words.h"

#include <algorithm>
#include <cmath>

#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using fastening::GenericWhy;

QString number(double value, int places, char mark) {
    return QString::number(value, 'f', places).replace(QLatin1Char('.'), QLatin1Char(mark));
}

// Two digits are more than a band knows already.
QString roughly(double torque, bool down, char mark) {
    const int place = static_cast<int>(std::floor(std::log10(torque))) - 1;
    const double step = std::pow(10.0, place);
    const double rounded = (down ? std::floor(torque / step) : std::ceil(torque / step)) * step;
    return number(rounded, std::max(0, -place), mark);
}

QString frictionText(const fastening::GenericBand& band, char mark) {
    return tr("friction %1 to %2 in the thread and under the head (classes of VDI 2230, from memory)")
        .arg(number(band.slippery.thread, 2, mark), number(band.rough.thread, 2, mark));
}

QString because(const QString& why) {
    return tr("%1 Look it up in the service manual, or ask a qualified workshop.").arg(why);
}

}  // namespace

QString genericTitle() {
    return tr("GENERIC, not for this joint");
}

QString genericCaution() {
    return tr(
        "Reckoned from thread and bolt alone: a wrong torque strips a thread, or lets it come loose. The "
        "service manual goes before it; where that is silent ask a qualified workshop; local rules stand.");
}

QString genericBandText(const fastening::GenericBand& band, char mark) {
    return tr("%1 to %2 N·m").arg(roughly(band.low, false, mark), roughly(band.high, true, mark));
}

QStringList genericAssumptions(const fastening::GenericBand& band, char mark) {
    const QString thread =
        text(fastening::threadText(band.thread)).replace(QLatin1Char('.'), QLatin1Char(mark));
    QStringList lines;
    lines << tr("%1 of class %2: proof load %3 N (ISO 898-1)")
                 .arg(thread, text(std::string(band.propertyClass)), number(band.proof, 0, mark))
          << frictionText(band, mark);
    if (band.holeDecides)
        lines << tr("the thread in the hole sets the limit: cast aluminium, %1 d deep, %2 N")
                     .arg(number(band.engagement, 1, mark), number(band.most, 0, mark));
    else
        lines << tr("at most %1 % of the proof load, in the slipperiest case")
                     .arg(number(100 * fastening::kMostOfProof, 0, mark));
    lines << tr("at the low end, in the roughest case, the bolt holds with %1 % of it")
                 .arg(number(100 * band.leastShare, 0, mark))
          << tr("hexagon head, clean thread, no locking compound, nothing soft in between");
    return lines;
}

QString genericRefusalText(const fastening::GenericRefusal& refusal) {
    const QString given = text(refusal.given);
    switch (refusal.why) {
        case GenericWhy::DangerousKind:
            return because(tr("No generic figure for a joint of this kind (%1): somebody can be hurt if it "
                              "is wrong.")
                               .arg(nameWords(refusal.kind)));
        case GenericWhy::Magnesium:
            return because(tr("No generic figure for anything in magnesium: its thread gives way first."));
        case GenericWhy::ByAngle:
            return because(
                tr("No generic figure for a joint that is stretched or tightened by an angle, as crank, rod "
                   "and head mostly are."));
        case GenericWhy::HasFigure:
            return tr("The manual's own figure is there: use that.");
        case GenericWhy::ShortEngagement:
            return because(tr("Too little thread in the hole for any generic figure."));
        case GenericWhy::NoSuchThread:
            return refusal.given.empty()
                       ? tr("Which thread? Write it like M8x1.25.")
                       : tr("There is no metric thread \"%1\": write it like M8x1.25.").arg(given);
        case GenericWhy::TooSmallOrLarge:
            return because(tr("Generic figures are for M4 to M16, not for %1.").arg(given));
        case GenericWhy::NoSuchClass:
            return refusal.given.empty()
                       ? tr("Which class? Read it off the bolt's head: one of %1.")
                             .arg(text(fastening::propertyClasses()))
                       : tr("The class \"%1\" is none of ISO 898-1: read it off the bolt's head, one of %2.")
                             .arg(given, text(fastening::propertyClasses()));
        case GenericWhy::NotANumber:
            break;
    }
    return tr("The depth of thread must be above zero, in bolt diameters.");
}

}  // namespace wm::ui
