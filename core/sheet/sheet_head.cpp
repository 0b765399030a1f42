// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <map>

#include "core/book/evening.h"
#include "core/book/state.h"
#include "core/sheet/sheet_parts.h"
#include "core/sheet/sheet_words.h"

namespace wm::sheet {

using base::phrase;

namespace {

constexpr std::int64_t kDay = 24 * 60;

calendar::Moment now(const book::Book& book) {
    return {book.today(), calendar::DayPart::AfterRiding};
}

std::string configurationOf(const SheetSource& from) {
    std::string text;
    for (const auto& [position, item] : from.book.fittings().on(from.machine, now(from.book))) {
        const auto* card = from.book.ledger().find<items::Item>(item);
        if (card == nullptr)
            continue;
        text += fmt::format("{}{}: {}", text.empty() ? "" : " · ", position, card->name);
    }
    return text;
}

std::string targetOf(const SheetSource& from) {
    const auto& events = from.book.ahead(from.machine).events;
    if (events.empty())
        return {};
    const outlook::EventAhead& next = events.front();
    const auto days = next.first - from.book.today();
    const Speech& speech = from.speech;
    const std::string when = days <= 0   ? speech(phrase("Sheet", "today"))
                             : days == 1 ? speech(phrase("Sheet", "tomorrow"))
                                         : speech(phrase("Sheet", "%n day(s)", nullptr, days));
    return fmt::format("{}, {} ({})", next.name, dayText(next.first, speech), when);
}

std::string windowText(const weekend::WorkWindow& window, const Speech& speech) {
    return speech(phrase("Sheet", "%1 %2 to %3, %n pair(s) of hands", nullptr, window.hands)
                      .arg(dayText(window.date, speech))
                      .arg(units::timeOfDayText(window.startsAt))
                      .arg(units::timeOfDayText(window.endsAt)));
}

std::string workTimeText(const book::Evening& evening, units::Minutes own, const Speech& speech) {
    const std::string ours = std::to_string(own.count());
    if (evening.window == nullptr)
        return speech(phrase("Sheet", "%1 min").arg(ours));
    const auto room = (evening.window->endsAt - evening.window->startsAt).count();
    const std::string all = std::to_string(evening.work.count());
    std::string text = evening.machines.size() < 2
                           ? speech(phrase("Sheet", "%1 of %2 min").arg(ours).arg(std::to_string(room)))
                           : speech(phrase("Sheet", "%1 min; all machines %2 of %3 min")
                                        .arg(ours)
                                        .arg(all)
                                        .arg(std::to_string(room)));
    if (evening.work.count() > room)
        text += speech(phrase("Sheet", ": %1 min too long").arg(std::to_string(evening.work.count() - room)));
    return text;
}

std::string snagText(const book::OpenSnag& open, const Speech& speech) {
    std::string text = fmt::format("{} ({})", open.snag->what, dateText(open.snag->date, speech));
    if (open.deferral != nullptr) {
        text +=
            open.deferral->untilDate
                ? speech(
                      phrase("Sheet", ", put off until %1").arg(dateText(*open.deferral->untilDate, speech)))
                : speech(phrase("Sheet", ", put off"));
        if (!open.deferral->reason.empty())
            text += ": " + open.deferral->reason;
    } else if (open.snag->wish == upkeep::SnagWish::Watch) {
        text += speech(phrase("Sheet", ", to be watched"));
    }
    return text;
}

std::string whyText(fastening::MarkKind why, const Speech& speech) {
    switch (why) {
        case fastening::MarkKind::Loosened:
            return speech(phrase("Sheet", "loosened"));
        case fastening::MarkKind::Confirmed:
            return speech(phrase("Sheet", "confirmed"));
        case fastening::MarkKind::FoundFine:
            return speech(phrase("Sheet", "found fine"));
        case fastening::MarkKind::FoundMoved:
            return speech(phrase("Sheet", "found moved"));
        case fastening::MarkKind::MarkBroken:
            return speech(phrase("Sheet", "mark broken"));
        case fastening::MarkKind::RiddenOpen:
            break;
    }
    return speech(phrase("Sheet", "ridden open"));
}

std::string gapText(const book::Gap& gap, const Speech& speech) {
    const std::string day = dateText(gap.since, speech);
    const std::string text = gap.isAway
                                 ? speech(phrase("Sheet", "%1, away since %2").arg(gap.position).arg(day))
                                 : speech(phrase("Sheet", "%1, off since %2").arg(gap.position).arg(day));
    std::string all = gap.where.empty() ? text : fmt::format("{} ({})", text, gap.where);
    if (gap.backOn)
        all = speech(phrase("Sheet", "%1, back %2").arg(all).arg(dateText(*gap.backOn, speech)));
    return all;
}

std::string doubtText(const book::Book& book, const book::Doubt& doubt, const Speech& speech) {
    std::string what;
    for (const std::string& position : doubt.positions)
        what += (what.empty() ? "" : ", ") + position;
    const std::string day = dateText(doubt.since, speech);
    switch (doubt.why) {
        case book::Doubting::OutAndBack:
            return speech(phrase("Sheet", "%1: off and back on %2, torqued?").arg(what).arg(day));
        case book::Doubting::OlderMoves:
            return speech(
                phrase("Sheet", "%1: put on since %2, nobody said whether torqued").arg(what).arg(day));
        case book::Doubting::Wrench: {
            const auto* tool = book.ledger().find<fastening::Tool>(*doubt.tool);
            return speech(phrase("Sheet", "%1: tightened with %2, which failed its check")
                              .arg(book.joint(doubt.joints.front())->name)
                              .arg(tool == nullptr ? std::string{} : tool->name));
        }
        case book::Doubting::CameWith: {
            const auto* machine = book.ledger().find<items::Machine>(*doubt.from);
            return speech(phrase("Sheet", "%1: came from %2 with joints loose there, look at them")
                              .arg(what)
                              .arg(machine == nullptr ? std::string{} : machine->name));
        }
        case book::Doubting::Impossible:
            break;
    }
    const auto* item = book.ledger().find<items::Item>(*doubt.item);
    return speech(phrase("Sheet", "%1: %2 can't sit there").arg(what).arg(item == nullptr ? "" : item->name));
}

// What is undone there and can't be torqued before something is back on.
std::string withWhatIsOut(std::string gap, const book::State& state, const std::string& position,
                          const Speech& speech) {
    std::string joints;
    for (const book::JointOut& each : state.out)
        if (each.position == position)
            joints += (joints.empty() ? "" : ", ") + each.joint->name;
    return joints.empty() ? gap
                          : speech(phrase("Sheet", "%1; undone with it: %2").arg(std::move(gap)).arg(joints));
}

bool rides(const SheetSource& from, ItemId item) {
    const auto spells = from.book.fittings().machineSpells(item);
    return !spells.empty() && spells.back().machine == from.machine && !spells.back().to;
}

}  // namespace

void fillHead(JobSheet& sheet, const SheetSource& from) {
    const auto* machine = from.book.ledger().find<items::Machine>(from.machine);
    sheet.machine = machine->name;
    sheet.configuration = configurationOf(from);
    if (const auto meter = from.book.meterNow(from.machine))
        sheet.meter = hoursWithUnit(*meter, from.speech.mark);
    sheet.totalTime = bracketText(from.book.life(from.machine).hours, from.speech);
    sheet.date = dayText(from.book.today(), from.speech);
    sheet.target = targetOf(from);
    for (const weekend::Job& job : from.jobs)
        sheet.jobs.push_back(job.name);
    for (const book::OpenSnag& open : from.book.snags(from.machine))
        if (!open.picked)
            sheet.openSnags.push_back(snagText(open, from.speech));
    const book::State state = book::stateOf(from.book, from.machine);
    for (const book::Gap& gap : state.gaps)
        sheet.notFitted.push_back(withWhatIsOut(gapText(gap, from.speech), state, gap.position, from.speech));
    for (const book::OpenJoint& open : state.handTight)
        sheet.handTight.push_back(fmt::format("{} ({} {})", open.joint->name,
                                              whyText(open.state.why, from.speech),
                                              dateText(open.state.since, from.speech)));
    for (const book::Doubt& doubt : state.doubts)
        sheet.inDoubt.push_back(doubtText(from.book, doubt, from.speech));
}

void fillClock(JobSheet& sheet, const SheetSource& from) {
    const book::Evening evening = book::eveningOf(from.book, std::nullopt);
    sheet.workTime = workTimeText(evening, from.plan.work, from.speech);
    units::Minutes begins{};  // the machines of an evening are worked on one after the other
    for (const book::MachineWork& work : evening.machines) {
        if (work.machine == from.machine)
            break;
        if (work.plan)
            begins += work.plan->work;
    }
    if (evening.window != nullptr) {
        sheet.window = windowText(*evening.window, from.speech);
        begins += evening.window->startsAt;
    }
    for (std::size_t at = 0; at < sheet.lines.size(); ++at) {
        const units::Minutes starts = from.plan.acts[at].starts;
        sheet.lines[at].clock = evening.window != nullptr
                                    ? units::timeOfDayText(units::Minutes{(begins + starts).count() % kDay})
                                    : "+" + units::timeOfDayText(starts);
    }
}

std::vector<SettingLine> settingsOf(const SheetSource& from) {
    // The last version of each setting, machine's own first, then by item.
    std::map<std::pair<std::string, std::string>, const items::Setting*> last;
    for (const items::Setting& setting : from.book.ledger().all<items::Setting>()) {
        if (setting.machine != from.machine || setting.date > from.book.today())
            continue;
        std::string item;
        if (setting.item) {
            const auto* card = from.book.ledger().find<items::Item>(*setting.item);
            if (card == nullptr || !rides(from, *setting.item))
                continue;
            item = card->name;
        }
        auto& slot = last[{item, setting.name}];
        if (slot == nullptr || slot->date <= setting.date)
            slot = &setting;
    }
    FieldIds ids('S');
    std::vector<SettingLine> lines;
    for (const auto& [key, setting] : last) {
        const std::string name = key.first.empty() ? key.second : key.first + ": " + key.second;
        lines.push_back({name, setting->value, dateText(setting->date, from.speech), ids.next()});
    }
    return lines;
}

}  // namespace wm::sheet
