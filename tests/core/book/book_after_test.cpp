// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A book made from the one before it says the same as one made anew, and a picture made from the one before
// it is the one that all rows together make, whatever came in between.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/book/book.h"
#include "tests/core/made.h"

namespace wm::book {

using picture::Change;
using picture::Garage;
using picture::Ledger;
using picture::Row;
using picture::SharedRows;
using picture::Strike;

namespace {

constexpr std::array kMachines{MachineId{2}, MachineId{3}};
constexpr std::array kItems{ItemId{4}, ItemId{5}, ItemId{6}};  // engines, and a piston
constexpr std::array kTasks{TaskId{11}, TaskId{12}, TaskId{13}, TaskId{14}};

calendar::Date start() {
    return made::day("2026-01-05");
}
const calendar::Date kToday = made::day("2026-06-01");

upkeep::TaskVersion task(std::size_t at, MachineId machine, std::string position) {
    upkeep::TaskVersion task;
    task.id = TaskVersionId{20 + static_cast<std::int64_t>(at)};
    task.task = kTasks.at(at);
    task.machine = machine;
    task.validFrom = start();
    task.code = at % 2 == 0 ? "oil" : "ring";
    task.name = task.code;
    task.position = std::move(position);
    task.limits = {{.counter = upkeep::Counter::Hours, .every = 900}};
    if (at == 1)
        task.triggers = {{.happening = upkeep::Happening::Job, .code = "oil"}};
    if (at == 2) {
        task.nthOf = "ring";
        task.nth = 2;
    }
    return task;
}

items::Move fitted(std::int64_t id, ItemId item, std::optional<MachineId> machine,
                   std::optional<ItemId> parent, calendar::Date date) {
    items::Move move;
    move.id = MoveId{id};
    move.entered = id;
    move.item = item;
    move.date = date;
    move.kind = items::MoveKind::Fitted;
    move.machine = machine;
    move.parent = parent;
    move.position = parent ? "piston" : "engine";
    return move;
}

std::vector<Row> furniture() {
    std::vector<Row> rows{Garage{.name = "g"}};
    for (const MachineId machine : kMachines)
        rows.emplace_back(items::Machine{
            .id = machine, .name = std::to_string(machine.value()), .since = start(), .startedNew = true});
    for (const ItemId item : kItems)
        rows.emplace_back(items::Item{.id = item, .name = "item", .since = start(), .startedNew = true});
    rows.emplace_back(task(0, kMachines[0], ""));
    rows.emplace_back(task(1, kMachines[0], "engine"));
    rows.emplace_back(task(2, kMachines[1], "engine"));
    rows.emplace_back(task(3, kMachines[1], "engine/piston"));
    rows.emplace_back(fitted(41, kItems[0], kMachines[0], std::nullopt, start()));
    rows.emplace_back(fitted(42, kItems[1], kMachines[1], std::nullopt, start()));
    rows.emplace_back(fitted(43, kItems[2], std::nullopt, kItems[0], start()));
    return rows;
}

/// One thing that comes to the file: what kind, on which day, about what, and how much.
struct Came {
    int what;
    int day;
    std::size_t about;
    std::int64_t much;
};
void showValue(const Came& came, std::ostream& out) {
    out << came.what << " on day " << came.day << " about " << came.about << ": " << came.much;
}

rc::Gen<std::vector<Came>> courses() {
    const auto one = rc::gen::map(
        rc::gen::tuple(rc::gen::inRange(0, 12), rc::gen::inRange(0, 140),
                       rc::gen::inRange<std::size_t>(0, 12), rc::gen::inRange<std::int64_t>(1, 400)),
        [](const auto& t) { return std::apply([](auto... values) { return Came{values...}; }, t); });
    return rc::gen::resize(rc::kNominalSize, rc::gen::container<std::vector<Came>>(20, one));
}

Row rowOf(const Came& came, std::int64_t id, const Ledger& ledger) {
    const MachineId machine = kMachines.at(came.about % 2);
    const ItemId item = kItems.at(came.about % 3);
    const calendar::Date date = start().plusDays(came.day);
    switch (came.what) {
        case 0:
        case 1:
            return usage::Outing{.id = OutingId{id},
                                 .entered = id,
                                 .machine = machine,
                                 .date = date,
                                 .hours = units::Hours{came.much}};
        case 2:
            return usage::Wash{.id = WashId{id}, .entered = id, .machine = machine, .date = date};
        case 3:
            return usage::Crash{.id = CrashId{id}, .entered = id, .machine = machine, .date = date};
        case 4:
            return usage::HourReading{.id = ReadingId{id},
                                      .entered = id,
                                      .machine = machine,
                                      .date = date,
                                      .shown = units::Hours{came.day * 100 + came.much}};
        case 5:
        case 6:
        case 7: {
            const std::size_t which = came.about % kTasks.size();
            upkeep::Record record{.id = RecordId{id},
                                  .entered = id,
                                  .machine = machine,
                                  .task = kTasks.at(which),
                                  .code = which % 2 == 0 ? "oil" : "ring",
                                  .date = date};
            if (came.what != 5)
                record.item = item;
            return record;
        }
        case 8:
            return upkeep::Deferral{.id = DeferralId{id},
                                    .entered = id,
                                    .task = kTasks.at(came.about % 4),
                                    .date = date,
                                    .untilDate = kToday.plusDays(static_cast<int>(came.much % 9))};
        case 9: {
            items::Move move = fitted(id, kItems[2], std::nullopt, kItems.at(came.about % 2), date);
            return move;
        }
        case 10:
            return items::Machine{.id = machine,
                                  .name = "renamed " + std::to_string(came.much),
                                  .since = start(),
                                  .startedNew = true};
        default: {
            const auto outings = ledger.all<usage::Outing>();
            if (outings.empty())
                return items::Person{.id = PersonId{id}, .name = std::to_string(id)};
            return Strike{.id = StrikeId{id},
                          .entered = id,
                          .fact = outings[came.about % outings.size()].id.value(),
                          .date = date,
                          .reason = "twice"};
        }
    }
}

void sameLines(const std::vector<DueLine>& a, const std::vector<DueLine>& b) {
    RC_ASSERT(a.size() == b.size());
    const auto idOf = [](const auto* row) { return row == nullptr ? 0 : row->id.value(); };
    for (std::size_t at = 0; at < a.size(); ++at) {
        RC_ASSERT(*a[at].task == *b[at].task);
        RC_ASSERT(a[at].item == b[at].item);
        RC_ASSERT(a[at].countdown.last == b[at].countdown.last);
        RC_ASSERT(a[at].countdown.completions == b[at].countdown.completions);
        RC_ASSERT(a[at].countdown.used == b[at].countdown.used);
        RC_ASSERT(a[at].countdown.triggeredOn == b[at].countdown.triggeredOn);
        RC_ASSERT(a[at].countdown.othersDone == b[at].countdown.othersDone);
        RC_ASSERT(a[at].standing.kind == b[at].standing.kind);
        RC_ASSERT(a[at].standing.likely == b[at].standing.likely);
        RC_ASSERT(a[at].standing.chance == b[at].standing.chance);
        RC_ASSERT(idOf(a[at].last) == idOf(b[at].last));
        RC_ASSERT(idOf(a[at].deferral) == idOf(b[at].deferral));
    }
}

void sameBooks(const Book& next, const Book& anew) {
    for (const MachineId machine : kMachines) {
        sameLines(next.due(machine), anew.due(machine));
        RC_ASSERT(next.atoms(machine) == anew.atoms(machine));
        RC_ASSERT(next.meterNow(machine) == anew.meterNow(machine));
        const auto records = next.records(machine, true);
        const auto recordsAnew = anew.records(machine, true);
        RC_ASSERT(std::equal(records.begin(), records.end(), recordsAnew.begin(), recordsAnew.end(),
                             [](const auto* a, const auto* b) { return *a == *b; }));
    }
    for (const ItemId item : kItems) {
        RC_ASSERT(next.atoms(item) == anew.atoms(item));
        RC_ASSERT(next.records(item).size() == anew.records(item).size());
    }
}

TEST(LongBookAfterTest, SaysWhatABookMadeAnewSays) {
    EXPECT_TRUE(rc::check("chained books and pictures", [] {
        auto ledger = std::make_shared<const Ledger>(furniture());
        std::optional<Book> book(std::in_place, ledger, kToday);
        const auto course = *courses();
        for (std::size_t at = 0; at < course.size(); ++at) {
            const auto id = static_cast<std::int64_t>(100 + at);
            const Change change{"came", {rowOf(course[at], id, *ledger)}};
            // A look at what might be leaves what is as it was.
            if (at % 7 == 3)
                (void)ledger->with(
                    {"might",
                     {usage::Wash{
                         .id = WashId{9000}, .entered = id, .machine = kMachines[0], .date = kToday}}});
            auto after = std::make_shared<const Ledger>(ledger->with(change));
            const Ledger together(after->rows());
            RC_ASSERT(after->rows() == together.rows());
            RC_ASSERT(after->nextEntered() == together.nextEntered());
            const calendar::Date today = kToday.plusDays(static_cast<int>(at / 5));  // nights pass
            Book next(after, today, *book);
            sameBooks(next, Book(std::make_shared<const Ledger>(together), today));
            book.emplace(std::move(next));
            ledger = std::move(after);
        }
        const Book anew(ledger, book->today());
        for (const MachineId machine : kMachines) {
            RC_ASSERT(book->chances(machine).clear == anew.chances(machine).clear);
            RC_ASSERT(book->chances(machine).first == anew.chances(machine).first);
        }
    }));
}

TEST(BookAfterTest, KeepsNothingOverMidnight) {
    std::vector<Row> rows = furniture();
    rows.emplace_back(upkeep::Record{.id = RecordId{90},
                                     .entered = 90,
                                     .machine = kMachines[0],
                                     .task = kTasks[0],
                                     .code = "oil",
                                     .date = start()});
    const auto ledger = std::make_shared<const Ledger>(std::move(rows));
    const Book yesterday(ledger, start().plusDays(-1));
    EXPECT_EQ(yesterday.due(kMachines[0]).size(), 0U) << "no version is in force yet";
    EXPECT_EQ(Book(ledger, kToday, yesterday).due(kMachines[0]).size(), 2U);
}

TEST(SharedRowsTest, FollowOnlyWhatTheyGrewFrom) {
    SharedRows<int> first({1, 2});
    SharedRows<int> second = first;
    second.append(3);  // moves to memory with room
    EXPECT_FALSE(second.follows(first));
    SharedRows<int> third = second;
    third.append(4);
    EXPECT_TRUE(third.follows(second));
    SharedRows<int> other = second;
    other.append(5);  // the place behind `second` is taken
    EXPECT_FALSE(other.follows(second));
    EXPECT_EQ(second.view().size(), 3U);
    EXPECT_EQ(third.view().back(), 4);
    EXPECT_EQ(other.view().back(), 5);
    EXPECT_THROW((void)first.view().at(2), std::out_of_range);
}

}  // namespace
}  // namespace wm::book
