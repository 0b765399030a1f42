// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/weight_words.h"

#include <QStringList>

#include "core/units/decimal.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QString ofWords(const usage::HourWeight& weight) {
    QStringList parts;
    if (weight.ground)
        parts += groundWords(*weight.ground);
    if (weight.pace)
        parts += paceWords(*weight.pace);
    return parts.isEmpty() ? tr("every hour") : parts.join(tr(" at "));
}

}  // namespace

QString groundWords(usage::Ground ground) {
    return ground == usage::Ground::Unstated ? tr("ground not stated") : nameWords(ground);
}

QString paceWords(usage::Pace pace) {
    return pace == usage::Pace::Unstated ? tr("pace not stated") : tr("%1 pace").arg(nameWords(pace));
}

QString factorText(std::int64_t permille) {
    int places = 3;
    while (places > 0 && permille % 10 == 0) {
        permille /= 10;
        --places;
    }
    return text(units::Decimal{permille, places}.text(decimalMark()));
}

QString weightWords(const std::vector<usage::HourWeight>& weights) {
    QStringList each;
    for (const usage::HourWeight& weight : weights)
        each += tr("%1 counts %2").arg(ofWords(weight), factorText(weight.permille));
    return each.join(tr(", "));
}

}  // namespace wm::ui
