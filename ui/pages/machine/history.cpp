// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/history.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/picture/facts.h"
#include "ui/entry/used_parts.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QString struckWords(const picture::Strike& strike, calendar::Date today) {
    return tr("struck %1: %2").arg(dayWords(strike.date, today), text(strike.reason));
}

// Reads all facts of one kind, struck or not, and turns each into a line.
class Report {
  public:
    Report(const book::Book& book, std::optional<MachineId> only) : book_(book), only_(only) {}

    template <class Fact, class Fill>
    void each(HistoryKind kind, std::optional<EntryKind> corrected, Fill fill) {
        const auto& ledger = book_.ledger();
        for (const auto facts : {ledger.all<Fact>(), ledger.struck<Fact>()})
            for (const auto& fact : facts) {
                HistoryEntry entry;
                entry.fact = fact.id.value();
                entry.entered = fact.entered;
                entry.kind = kind;
                entry.corrected = corrected;
                entry.date = fact.date;
                if (fill(fact, entry) && (!only_ || *only_ == entry.machine))
                    add(std::move(entry));
            }
    }
    std::vector<HistoryEntry> entries() && {
        std::sort(entries_.begin(), entries_.end(), [](const HistoryEntry& a, const HistoryEntry& b) {
            return std::pair(a.date, a.entered) > std::pair(b.date, b.entered);
        });
        return std::move(entries_);
    }
    [[nodiscard]] QString person(std::optional<PersonId> id) const {
        const auto* card = id ? book_.ledger().find<items::Person>(*id) : nullptr;
        return card != nullptr ? text(card->name) : QString();
    }
    [[nodiscard]] const book::Book& book() const { return book_; }

  private:
    void add(HistoryEntry entry) {
        if (const auto* strike = book_.ledger().strikeOf(entry.fact)) {
            entry.isStruck = true;
            entry.corrected.reset();
            entry.details.prepend(struckWords(*strike, book_.today()));
        }
        entry.details.removeAll(QString());
        entries_.push_back(std::move(entry));
    }

    const book::Book& book_;
    std::optional<MachineId> only_;
    std::vector<HistoryEntry> entries_;
};

QString labelled(const char* label, const QString& words) {
    return words.isEmpty() ? QString() : QStringLiteral("%1: %2").arg(tr(label), words);
}

// What the meter showed; hours without "at" were ridden.
QString meterAt(units::Hours shown) {
    return tr("at %1").arg(hoursWords(shown));
}

QString measuredWords(const upkeep::Record& record) {
    QStringList words;
    for (const auto& each : record.measured)
        words << QStringLiteral("%1 %2 %3")
                     .arg(text(each.name), text(each.value.text(decimalMark())), text(each.unit))
                     .trimmed();
    return words.join(QStringLiteral("; "));
}

QString statedWords(const upkeep::Record& record) {
    if (!record.statedBest)
        return {};
    return hoursWords(usage::HoursBracket{record.statedLow.value_or(*record.statedBest), *record.statedBest,
                                          record.statedHigh});
}

// "hours: 15 h (10 to 25)": what somebody said lay between then and the day of his saying it.
QString toldWords(const upkeep::Record& record) {
    QStringList words;
    for (const upkeep::Stated& each : record.stated)
        words << QStringLiteral("%1: %2").arg(counterWords(each.counter),
                                              bracketWords({each.low, each.best, each.high}, each.counter));
    return words.join(QStringLiteral("; "));
}

void reportJobs(Report& report) {
    report.each<upkeep::Record>(
        HistoryKind::Job, EntryKind::Job, [&](const upkeep::Record& record, HistoryEntry& entry) {
            entry.machine = record.machine;
            const auto* task = record.task ? report.book().task(*record.task) : nullptr;
            entry.words = task != nullptr ? text(task->name) : text(record.what);
            if (record.kind == upkeep::RecordKind::LookedFine)
                entry.words += tr(", looked fine");
            if (record.kind == upkeep::RecordKind::Baseline)
                entry.words += !record.task                   ? tr(", by word")
                               : upkeep::wasNeverDone(record) ? tr(", never done, by word")
                                                              : tr(", done before, by word");
            entry.figure = record.meter ? meterAt(*record.meter) : QString();
            entry.details << labelled(QT_TR_NOOP("by"), report.person(record.by))
                          << labelled(QT_TR_NOOP("total time as stated then"), statedWords(record))
                          << labelled(QT_TR_NOOP("since then, by word"), toldWords(record))
                          << labelled(QT_TR_NOOP("used"), usesText(report.book(), record.uses))
                          << labelled(QT_TR_NOOP("measured"), measuredWords(record))
                          << labelled(QT_TR_NOOP("minutes"),
                                      record.minutes ? QString::number(record.minutes->count()) : QString())
                          << labelled(QT_TR_NOOP("by what data"), text(record.data))
                          << labelled(QT_TR_NOOP("note"), text(record.note));
            return true;
        });
}

// What was noted with an outing and stands in its line.
struct WithOuting {
    std::set<std::int64_t> washed;
    std::set<std::int64_t> crashed;
    std::map<std::int64_t, units::Hours> meter;
};

template <class Fact, class Note>
void noteWithOuting(const picture::Ledger& ledger, Note note) {
    for (const auto facts : {ledger.all<Fact>(), ledger.struck<Fact>()})
        for (const auto& fact : facts)
            if (fact.outing)
                note(fact.outing->value(), fact);
}

WithOuting notedWithOutings(const picture::Ledger& ledger) {
    WithOuting with;
    noteWithOuting<usage::Wash>(ledger,
                                [&](std::int64_t outing, const usage::Wash&) { with.washed.insert(outing); });
    noteWithOuting<usage::Crash>(
        ledger, [&](std::int64_t outing, const usage::Crash&) { with.crashed.insert(outing); });
    noteWithOuting<usage::HourReading>(ledger, [&](std::int64_t outing, const usage::HourReading& reading) {
        with.meter.emplace(outing, reading.shown);
    });
    return with;
}

QString ridingWords(const usage::Outing& outing, const WithOuting& with) {
    static constexpr const char* kinds[] = {QT_TR_NOOP("practice"), QT_TR_NOOP("race"), QT_TR_NOOP("ridden")};
    QStringList words{tr(kinds[static_cast<std::size_t>(outing.kind)])};
    if (outing.ground != usage::Ground::Unstated)
        words << nameWords(outing.ground);
    for (const usage::PieceTraits& piece : usage::kPieces)
        if (const auto counter = upkeep::counterOf(piece.of);
            piece.noted && counter && outing.*piece.noted->amount > 0)
            words << countWords(outing.*piece.noted->amount, *counter);
    if (with.crashed.contains(outing.id.value()))
        words << tr("crashed");
    if (with.washed.contains(outing.id.value()))
        words << tr("washed");
    return words.join(QStringLiteral(", "));
}

void reportRiding(Report& report) {
    const WithOuting with = notedWithOutings(report.book().ledger());
    report.each<usage::Outing>(
        HistoryKind::Riding, EntryKind::Outing, [&](const usage::Outing& outing, HistoryEntry& entry) {
            entry.machine = outing.machine;
            entry.words = ridingWords(outing, with);
            entry.figure = outing.hours ? hoursWords(*outing.hours) : tr("hours not noted");
            const auto* event =
                outing.event ? report.book().ledger().find<outlook::Event>(*outing.event) : nullptr;
            entry.details << labelled(QT_TR_NOOP("event"), event != nullptr ? text(event->name) : QString())
                          << labelled(QT_TR_NOOP("meter after"), with.meter.contains(entry.fact)
                                                                     ? hoursWords(with.meter.at(entry.fact))
                                                                     : QString())
                          << labelled(QT_TR_NOOP("rider"), report.person(outing.rider))
                          << labelled(QT_TR_NOOP("note"), text(outing.note));
            return true;
        });
    report.each<usage::Wash>(
        HistoryKind::Riding, EntryKind::Wash, [](const usage::Wash& wash, HistoryEntry& entry) {
            entry.machine = wash.machine;
            entry.words = wash.pressure ? tr("washed, pressure washer") : tr("washed by hand");
            entry.details << labelled(QT_TR_NOOP("note"), text(wash.note));
            return !wash.outing;
        });
    report.each<usage::Crash>(
        HistoryKind::Riding, EntryKind::Crash, [](const usage::Crash& crash, HistoryEntry& entry) {
            entry.machine = crash.machine;
            entry.words = crash.note.empty() ? tr("crash") : tr("crash: %1").arg(text(crash.note));
            return !crash.outing;
        });
}

QString meterWords(usage::MeterEvent event) {
    switch (event) {
        case usage::MeterEvent::Plain:
            break;
        case usage::MeterEvent::Replaced:
            return tr("meter replaced");
        case usage::MeterEvent::Reset:
            return tr("meter set back");
        case usage::MeterEvent::RolledOver:
            return tr("meter rolled over");
        case usage::MeterEvent::Stopped:
            return tr("meter stands still");
        case usage::MeterEvent::Resumed:
            return tr("meter counts again");
    }
    return tr("meter read");
}

void reportMeters(Report& report) {
    report.each<usage::HourReading>(HistoryKind::Meter, EntryKind::Reading,
                                    [](const usage::HourReading& reading, HistoryEntry& entry) {
                                        entry.machine = reading.machine;
                                        entry.words = meterWords(reading.event);
                                        entry.figure = meterAt(reading.shown);
                                        entry.details << labelled(QT_TR_NOOP("note"), text(reading.note));
                                        return !reading.outing && !reading.record;
                                    });
    report.each<usage::DistanceReading>(
        HistoryKind::Meter, std::nullopt, [](const usage::DistanceReading& reading, HistoryEntry& entry) {
            entry.machine = reading.machine;
            entry.words = meterWords(reading.event);
            entry.figure = tr("at %1").arg(countWords(reading.shown.count(), upkeep::Counter::Metres));
            return !reading.outing && !reading.record;
        });
}

void reportSnags(Report& report) {
    report.each<upkeep::Snag>(
        HistoryKind::Snag, EntryKind::Snag, [](const upkeep::Snag& snag, HistoryEntry& entry) {
            entry.machine = snag.machine;
            entry.words = tr("snag: %1").arg(text(snag.what));
            entry.details << labelled(QT_TR_NOOP("if left"), consequenceWords(snag.consequence));
            return true;
        });
    report.each<upkeep::SnagEnd>(HistoryKind::Snag, std::nullopt,
                                 [&](const upkeep::SnagEnd& end, HistoryEntry& entry) {
                                     const auto* snag = report.book().ledger().find<upkeep::Snag>(end.snag);
                                     if (snag == nullptr || end.record)
                                         return false;
                                     entry.machine = snag->machine;
                                     entry.words = tr("snag over: %1").arg(text(snag->what));
                                     entry.details << text(end.how);
                                     return true;
                                 });
    report.each<upkeep::Deferral>(
        HistoryKind::PutOff, std::nullopt, [&](const upkeep::Deferral& deferral, HistoryEntry& entry) {
            entry.machine = deferral.machine;
            const auto* task = deferral.task ? report.book().task(*deferral.task) : nullptr;
            const auto* snag =
                deferral.snag ? report.book().ledger().find<upkeep::Snag>(*deferral.snag) : nullptr;
            entry.words = tr("put off: %1")
                              .arg(task != nullptr   ? text(task->name)
                                   : snag != nullptr ? text(snag->what)
                                                     : QString());
            entry.figure = deferral.untilDate
                               ? tr("until %1").arg(dayWords(*deferral.untilDate, report.book().today()))
                               : QString();
            entry.details << labelled(QT_TR_NOOP("why"), text(deferral.reason))
                          << labelled(QT_TR_NOOP("by"), report.person(deferral.by));
            return true;
        });
}

// Where it was put at the very moment at which it came off, if not on the shelf.
const items::Move* putOnAgain(const book::Book& book, const items::Move& off) {
    for (const items::Move& move : book.ledger().all<items::Move>())
        if (move.kind == items::MoveKind::Fitted && move.item == off.item && move.date == off.date &&
            move.part == off.part && move.entered >= off.entered && move.machine)
            return &move;
    return nullptr;
}

QString moveWords(const book::Book& book, const items::Move& move, const QString& item) {
    switch (move.kind) {
        case items::MoveKind::Fitted:
            return tr("%1 fitted, %2").arg(item, text(move.position));
        case items::MoveKind::Removed:
            if (const items::Move* on = putOnAgain(book, move))
                return tr("%1 taken off, to %2")
                    .arg(item, text(picture::machineName(book.ledger(), *on->machine)));
            return tr("%1 taken off, to the shelf").arg(item);
        case items::MoveKind::Away:
            return tr("%1 taken off, to a workshop").arg(item);
        case items::MoveKind::Retired:
            break;
    }
    return tr("%1 scrapped or sold").arg(item);
}

// The machine that a move was about: the one it was fitted to, or the one that carried the item until then.
std::optional<MachineId> machineOf(const book::Book& book, const items::Move& move) {
    const calendar::Moment at{move.date, move.part};
    std::optional<MachineId> last = move.machine;
    for (const auto& spell : book.fittings().machineSpells(move.item)) {
        if (at < spell.from || move.machine)
            break;
        last = spell.machine;
        if (spell.to == at)  // at that moment it may have gone on to another machine
            break;
    }
    return last;
}

void reportItems(Report& report) {
    report.each<items::Move>(HistoryKind::Item, std::nullopt,
                             [&](const items::Move& move, HistoryEntry& entry) {
                                 const auto machine = machineOf(report.book(), move);
                                 const auto* item = report.book().ledger().find<items::Item>(move.item);
                                 if (!machine || item == nullptr)
                                     return false;
                                 entry.machine = *machine;
                                 entry.words = moveWords(report.book(), move, text(item->name));
                                 entry.details << labelled(QT_TR_NOOP("note"), text(move.note));
                                 return true;
                             });
    report.each<items::Setting>(
        HistoryKind::Item, std::nullopt, [](const items::Setting& setting, HistoryEntry& entry) {
            entry.machine = setting.machine;
            entry.words = QStringLiteral("%1: %2").arg(text(setting.name), text(setting.value));
            entry.details << text(setting.note);
            return true;
        });
}

}  // namespace

std::vector<HistoryEntry> historyOf(const book::Book& book, std::optional<MachineId> machine) {
    Report report(book, machine);
    reportJobs(report);
    reportRiding(report);
    reportMeters(report);
    reportSnags(report);
    reportItems(report);
    return std::move(report).entries();
}

}  // namespace wm::ui
