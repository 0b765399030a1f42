// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/renew_words.h"

#include <algorithm>
#include <array>

#include "ui/words/tr.h"

namespace wm::ui {

namespace {

struct RenewedWord {
    std::string_view field;
    const char* words;
};

constexpr std::array<RenewedWord, 41> kRenewed{
    {{"off_minutes", QT_TR_NOOP("minutes to open")},
     {"on_minutes", QT_TR_NOOP("minutes to close")},
     {"needs", QT_TR_NOOP("what comes off first")},
     {"break_loose", QT_TR_NOOP("what is cracked loose")},
     {"loose_before", QT_TR_NOOP("when it is cracked loose")},
     {"joints", QT_TR_NOOP("joints")},
     {"frees", QT_TR_NOOP("what it frees")},
     {"doings", QT_TR_NOOP("what is done besides")},
     {"edges", QT_TR_NOOP("order")},
     {"body_state", QT_TR_NOOP("engine cold or warm")},
     {"leaves_unrideable", QT_TR_NOOP("out of use meanwhile")},
     {"follow_ups", QT_TR_NOOP("what it brings")},
     {"name", QT_TR_NOOP("name")},
     {"short_name", QT_TR_NOOP("short name")},
     {"refit", QT_TR_NOOP("what to mind on refit")},
     {"cautions", QT_TR_NOOP("cautions")},
     {"kind", QT_TR_NOOP("kind of joint")},
     {"position", QT_TR_NOOP("where it sits")},
     {"held", QT_TR_NOOP("by what it is held")},
     {"sequence", QT_TR_NOOP("sequence")},
     {"renew", QT_TR_NOOP("what is renewed with it")},
     {"steps", QT_TR_NOOP("what comes off")},
     {"comes_last", QT_TR_NOOP("whether it comes last")},
     {"sends_out", QT_TR_NOOP("whether it goes away")},
     {"renews", QT_TR_NOOP("whether it is as new afterwards")},
     {"limits", QT_TR_NOOP("interval")},
     {"weights", QT_TR_NOOP("how hours are weighted")},
     {"combine", QT_TR_NOOP("first or last limit")},
     {"count_from", QT_TR_NOOP("from when it counts")},
     {"every_nth", QT_TR_NOOP("what comes every n-th time")},
     {"extra", QT_TR_NOOP("what comes every n-th time")},
     {"nth_of", QT_TR_NOOP("which job it goes by")},
     {"nth", QT_TR_NOOP("which job it goes by")},
     {"triggers", QT_TR_NOOP("what makes it due")},
     {"consequence", QT_TR_NOOP("what follows if it is left undone")},
     {"kit", QT_TR_NOOP("parts and fluids")},
     {"measures", QT_TR_NOOP("what is measured")},
     {"minutes", QT_TR_NOOP("minutes")},
     {"tools", QT_TR_NOOP("tools")},
     {"how_to", QT_TR_NOOP("how to do it")},
     {"felt", QT_TR_NOOP("whether a rider feels it")}}};

}  // namespace

QString groupWords(definitions::RenewalGroup group) {
    using definitions::RenewalGroup;
    switch (group) {
        case RenewalGroup::Order:
            return tr("order and joints");
        case RenewalGroup::NewTasks:
            return tr("new tasks");
        case RenewalGroup::Intervals:
            return tr("intervals");
        case RenewalGroup::Words:
            break;
    }
    return tr("words, kits, cautions");
}

QString renewedWords(std::string_view field) {
    const auto at = std::find_if(kRenewed.begin(), kRenewed.end(),
                                 [&](const RenewedWord& word) { return word.field == field; });
    return at == kRenewed.end() ? QString() : tr(at->words);
}

QString renewedWords(const std::vector<std::string>& fields) {
    QStringList words;
    for (const std::string& field : fields)
        words << renewedWords(std::string_view(field));
    words.removeDuplicates();
    return words.join(QStringLiteral(", "));
}

}  // namespace wm::ui
