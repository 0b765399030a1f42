// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/doubt_words.h"

#include "core/verbs/confirm_verb.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QString misreadingWords(fastening::TorqueMisreading misreading) {
    switch (misreading) {
        case fastening::TorqueMisreading::InchForFoot:
            return tr("pound-inches and pound-feet are 12 times apart");
        case fastening::TorqueMisreading::KilogramMetre:
            return tr("kilogram-metres and newton-metres are 9.8 times apart");
        case fastening::TorqueMisreading::Centimetre:
            return tr("a kilogram-centimetre is a hundredth of a kilogram-metre");
        case fastening::TorqueMisreading::DecimalPoint:
            break;
    }
    return tr("ten times, like a decimal point in the wrong place");
}

// What is odd about the figure; %1 is what was read.
QString oddWords(upkeep::Misreading misreading) {
    switch (misreading) {
        case upkeep::Misreading::OtherUnit:
            return tr("%1: is the unit right?");
        case upkeep::Misreading::Thousand:
            return tr("%1 is a thousand times off what stood here, like litres for millilitres.");
        case upkeep::Misreading::BothSides:
            return tr("%1 is twice or half of what stood here: for one side, or for both?");
        case upkeep::Misreading::Inches:
            return tr("%1 is 25.4 times off what stood here, like inches for millimetres.");
        case upkeep::Misreading::DecimalPoint:
            break;
    }
    return tr("%1 is ten times off, like a decimal point in the wrong place or another unit.");
}

}  // namespace

QString stagesWords(const base::Error& error) {
    if (error.fault == base::Fault::OutOfOrder)
        return tr("A stage before it is %1 already: look at the manual again. Where the stages are others "
                  "as well, type them with it (view Chart).")
            .arg(text(error.wanted));
    return tr("It is not plain what becomes of the stages (%1) with this figure: type them with it, as the "
              "manual prints them (view Chart).")
        .arg(text(error.given));
}

QString questionAbout(const QString& typed, const fastening::TorqueDoubt& doubt) {
    const QString meant = text(doubt.meant.text(decimalMark())) + QChar(0x00A0) +
                          text(std::string(base::nameOf(doubt.meantUnit)));
    return tr("%1 is far from what a thread like this takes (%2 to %3 N·m, for catching misreadings only). "
              "Did "
              "you mean %4 (%5)? Enter again keeps it.")
        .arg(typed, QString::number(qRound(doubt.low)), QString::number(qRound(doubt.high)), meant,
             misreadingWords(doubt.misreading));
}

QString questionAbout(const verbs::FigureDoubt& doubt) {
    if (doubt.torque)
        return questionAbout(text(doubt.read), *doubt.torque);
    return oddWords(doubt.misreading.value_or(upkeep::Misreading::DecimalPoint)).arg(text(doubt.read)) + ' ' +
           tr("Did you mean %1? Enter again keeps it.").arg(text(doubt.meant));
}

}  // namespace wm::ui
