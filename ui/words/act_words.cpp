// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/act_words.h"

#include <QStringList>
#include <algorithm>
#include <array>

#include "core/base/circle.h"
#include "ui/words/error_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

struct ActWord {
    const char* name;  ///< as core names it
    const char* words;
};
constexpr std::array<ActWord, 9> kActWords{{{"crack", QT_TR_NOOP("crack loose")},
                                            {"off", QT_TR_NOOP("off")},
                                            {"do", QT_TR_NOOP("do")},
                                            {"job", QT_TR_NOOP("job")},
                                            {"on", QT_TR_NOOP("on")},
                                            {"torque", QT_TR_NOOP("torque")},
                                            {"break loose", QT_TR_NOOP("crack loose for")},
                                            {"run", QT_TR_NOOP("run the engine")},
                                            {"wait", QT_TR_NOOP("wait until it is cold")}}};

QString wordsOfAct(const QString& act) {
    for (const ActWord& word : kActWords) {
        const QString name = QLatin1String(word.name);
        if (act == name)
            return tr(word.words);
        if (act.startsWith(name + QLatin1Char(' ')))
            return tr("%1 %2").arg(tr(word.words), quoted(act.mid(name.size() + 1)));
    }
    return quoted(act);
}

}  // namespace

QString deedWords(upkeep::Deed deed) {
    return tr(kActWords.at(static_cast<std::size_t>(deed)).words);
}

QString comesWords(upkeep::Comes comes) {
    switch (comes) {
        case upkeep::Comes::Before:
            return tr("before it comes off");
        case upkeep::Comes::Between:
            return tr("while it is off");
        case upkeep::Comes::After:
            break;
    }
    return tr("when it is back on");
}

QString cycleWords(const QString& given) {
    const QString arrow = QString::fromUtf8(base::kBefore);
    QStringList acts;
    for (const QString& act : given.split(given.contains(arrow) ? arrow : QStringLiteral(", ")))
        acts += wordsOfAct(act);
    return acts.join(arrow);
}

}  // namespace wm::ui
