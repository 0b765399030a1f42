// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <map>

#include "core/book/evening.h"
#include "core/sheet/sheet_parts.h"
#include "core/sheet/sheet_words.h"

namespace wm::sheet {

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
    const std::string when = days <= 0 ? "today" : days == 1 ? "tomorrow" : fmt::format("{} days", days);
    return fmt::format("{}, {} ({})", next.name, dayText(next.first), when);
}

std::string windowText(const weekend::WorkWindow& window) {
    return fmt::format("{} {} to {}, {} {}", dayText(window.date), units::timeOfDayText(window.startsAt),
                       units::timeOfDayText(window.endsAt), window.hands,
                       window.hands == 1 ? "pair of hands" : "pairs of hands");
}

std::string workTimeText(const book::Evening& evening, units::Minutes own) {
    if (evening.window == nullptr)
        return fmt::format("{} min", own.count());
    const auto room = (evening.window->endsAt - evening.window->startsAt).count();
    std::string text = evening.machines.size() < 2 ? fmt::format("{} of {} min", own.count(), room)
                                                   : fmt::format("{} min; all machines {} of {} min",
                                                                 own.count(), evening.work.count(), room);
    if (evening.work.count() > room)
        text += fmt::format(": {} min too long", evening.work.count() - room);
    return text;
}

std::string snagText(const book::OpenSnag& open) {
    std::string text = fmt::format("{} ({})", open.snag->what, dateText(open.snag->date));
    if (open.deferral != nullptr) {
        text += ", put off";
        if (open.deferral->untilDate)
            text += " until " + dateText(*open.deferral->untilDate);
        if (!open.deferral->reason.empty())
            text += ": " + open.deferral->reason;
    } else if (open.snag->wish == upkeep::SnagWish::Watch) {
        text += ", to be watched";
    }
    return text;
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
        sheet.meter = hoursWithUnit(*meter, from.mark);
    sheet.totalTime = bracketText(from.book.life(from.machine).hours, from.mark);
    sheet.date = dayText(from.book.today());
    sheet.target = targetOf(from);
    for (const weekend::Job& job : from.jobs)
        sheet.jobs.push_back(job.name);
    for (const book::OpenSnag& open : from.book.snags(from.machine))
        if (!open.picked)
            sheet.openSnags.push_back(snagText(open));
    for (const book::OpenJoint& open : from.book.handTight(from.machine))
        sheet.handTight.push_back(fmt::format("{} ({} {})", open.joint->name, base::nameOf(open.state.why),
                                              dateText(open.state.since)));
}

void fillClock(JobSheet& sheet, const SheetSource& from) {
    const book::Evening evening = book::eveningOf(from.book, std::nullopt);
    sheet.workTime = workTimeText(evening, from.plan.work);
    units::Minutes begins{};  // the machines of an evening are worked on one after the other
    for (const book::MachineWork& work : evening.machines) {
        if (work.machine == from.machine)
            break;
        if (work.plan)
            begins += work.plan->work;
    }
    if (evening.window != nullptr) {
        sheet.window = windowText(*evening.window);
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
    // The last wording of each setting, machine's own first, then by item.
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
        lines.push_back({name, setting->value, dateText(setting->date), ids.next()});
    }
    return lines;
}

}  // namespace wm::sheet
