// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/state_words.h"

#include <QStringList>
#include <map>

#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

QString gapSinceWords(const book::Book& book, const book::Gap& gap) {
    const QString day = dayWords(gap.since, book.today());
    return gap.isAway ? tr("away since %1").arg(day) : tr("off since %1").arg(day);
}

QString gapWords(const book::Book& book, const book::Gap& gap) {
    QString words = tr("%1, %2").arg(text(gap.position), gapSinceWords(book, gap));
    if (!gap.where.empty())
        words += QStringLiteral(" (%1)").arg(text(gap.where).simplified());
    if (gap.backOn)
        words += (*gap.backOn < book.today() ? tr(", promised for %1") : tr(", back %1"))
                     .arg(dayWords(*gap.backOn, book.today()));
    return gap.isDoubtful ? tr("%1: is it needed?").arg(words) : words;
}

QString doubtedWords(const book::Book& book, const book::Doubt& doubt) {
    if (doubt.why == book::Doubting::Wrench) {
        const auto* joint = book.joint(doubt.joints.front());
        return joint == nullptr ? QString() : text(joint->name);
    }
    QStringList positions;
    for (const std::string& position : doubt.positions)
        positions << text(position);
    return positions.join(QStringLiteral(", "));
}

namespace {

// The joints that would answer it.
QString askedJoints(const book::Book& book, const book::Doubt& doubt) {
    QStringList names;
    for (const JointId id : doubt.joints)
        if (const auto* joint = book.joint(id))
            names << text(joint->name);
    return names.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(names.join(QStringLiteral(", ")));
}

}  // namespace

QString whyDoubtedWords(const book::Book& book, const book::Doubt& doubt) {
    const auto& ledger = book.ledger();
    switch (doubt.why) {
        case book::Doubting::OutAndBack:
            return tr("off and back on %1: torqued?").arg(dayWords(doubt.since, book.today())) +
                   askedJoints(book, doubt);
        case book::Doubting::OlderMoves:
            return tr("put on since %1, nobody said whether it was torqued")
                .arg(dayWords(doubt.since, book.today()));
        case book::Doubting::Wrench: {
            const auto* tool = doubt.tool ? ledger.find<fastening::Tool>(*doubt.tool) : nullptr;
            return tr("tightened with %1, which failed its check")
                .arg(tool == nullptr ? QString() : text(tool->name));
        }
        case book::Doubting::CameWith: {
            const auto* from = doubt.from ? ledger.find<items::Machine>(*doubt.from) : nullptr;
            return tr("came from %1 with joints loose there: look at them")
                       .arg(from == nullptr ? QString() : text(from->name)) +
                   askedJoints(book, doubt);
        }
        case book::Doubting::Impossible:
            break;
    }
    const auto* item = doubt.item ? ledger.find<items::Item>(*doubt.item) : nullptr;
    return item == nullptr ? QString() : tr("%1 can't sit there: %2").arg(text(item->name), text(item->kind));
}

QString shortDoubtWords(const book::Doubt& doubt) {
    switch (doubt.why) {
        case book::Doubting::OutAndBack:
        case book::Doubting::OlderMoves:
            return tr("put on: torqued?");
        case book::Doubting::Wrench:
            return tr("its wrench failed");
        case book::Doubting::CameWith:
            return tr("came with loose joints?");
        case book::Doubting::Impossible:
            break;
    }
    return tr("can't sit there");
}

QString inDoubtWords(const book::Book& book, const book::Doubt& doubt) {
    return tr("%1, %2").arg(doubtedWords(book, doubt), whyDoubtedWords(book, doubt));
}

QString gapWords(const book::Book& book, const std::vector<book::Gap>& gaps) {
    QStringList all;
    for (const book::Gap& gap : gaps)
        all << gapWords(book, gap);
    return all.join(QStringLiteral("; "));
}

QString outWords(const std::vector<book::JointOut>& out) {
    // What sits in the engine can be torqued on the bench.
    std::map<std::pair<std::string, bool>, QStringList> byPlace;
    for (const book::JointOut& each : out) {
        const bool isInside = each.joint->position && !each.joint->position->empty();
        byPlace[{each.position, !isInside}] << text(each.joint->name);
    }
    QStringList all;
    for (const auto& [place, names] : byPlace)
        all << (place.second ? tr("undone, to torque once the %1 is back: %2")
                             : tr("undone in the %1, which is off: %2"))
                   .arg(text(place.first), names.join(QStringLiteral(", ")));
    return all.join(QStringLiteral("; "));
}

QString stateWords(const book::Book& book, MachineId machine) {
    const book::State state = book::stateOf(book, machine);
    if (state.isWhole())
        return tr("Whole, as far as it is recorded");
    QStringList why;
    for (const book::Gap& gap : state.gaps)
        why << tr("%1, %2").arg(text(gap.position), gapSinceWords(book, gap));
    if (!state.handTight.empty())
        why << tr("%1 hand-tight").arg(state.handTight.size());
    if (!state.doubts.empty())
        why << tr("%1 in doubt").arg(state.doubts.size());
    return tr("Not whole: %1").arg(why.join(QStringLiteral("; ")));
}

}  // namespace wm::ui
