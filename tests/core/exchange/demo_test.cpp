// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The demo garage: built from its text line by line, and its key figures reckoned a second time from the same
// text by plain sums. "Long": some thousand verbs, each on a book of its own.
#include "core/exchange/demo.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "core/book/book.h"
#include "core/book/drawer_of_book.h"
#include "core/book/evening.h"
#include "core/book/round.h"
#include "core/exchange/csv_text.h"
#include "core/exchange/json.h"
#include "core/verbs/verbs.h"
#include "tests/memo.h"
#include "tests/repository.h"

namespace wm::exchange {
namespace {

std::string fileText(const std::string& path) {
    std::ifstream in(test::repositoryPath(path));
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

DemoText demoText() {
    DemoText text;
    for (const std::string& name : demoFiles())
        text.files[name] = fileText("demo-db/" + name);
    for (const char* name : {"two-stroke-motocross", "four-stroke-motocross", "four-stroke-enduro"})
        text.starters.push_back(fileText(std::string("resources/starters/") + name + ".json"));
    return text;
}

using Line = std::map<std::string, std::string>;

std::vector<Line> linesOf(const std::string& name) {
    const auto table = readCsv(fileText("demo-db/" + name));
    std::vector<Line> lines;
    for (const CsvRow& row : table->rows) {
        Line& line = lines.emplace_back();
        for (std::size_t at = 0; at < table->columns.size(); ++at)
            line[table->columns[at]] = row.cells[at];
    }
    return lines;
}

std::int64_t hundredths(const std::string& hours) {
    return units::parseHours("hours", hours)->count();
}

// What the meter counted from one day's evening to another's, by the figures read after outings and apart
// from them; a new meter starts where the old one ended.
std::int64_t metered(const std::string& machine, int from, int to) {
    std::multimap<int, Line> readings;
    for (const Line& line : linesOf("readings.csv"))
        readings.emplace(std::stoi(line.at("day")), line);
    for (const Line& line : linesOf("outings.csv"))
        if (!line.at("meter").empty())
            readings.emplace(std::stoi(line.at("day")), line);
    std::int64_t total = 0;
    std::optional<std::int64_t> last;
    for (const auto& [day, line] : readings) {
        if (line.at("machine") != machine || day < from || day > to)
            continue;
        const bool apart = line.contains("shown");
        if (apart && !line.at("before").empty()) {
            total += hundredths(line.at("before")) - last.value_or(0);
            last = hundredths(line.at("shown"));
            continue;
        }
        const std::int64_t shown = hundredths(apart ? line.at("shown") : line.at("meter"));
        total += shown - last.value_or(shown);
        last = shown;
    }
    return total;
}

// What riders noted before the meter of a machine was first read.
std::int64_t notedBeforeMeter(const std::string& machine) {
    int first = 1;
    for (const Line& line : linesOf("readings.csv"))
        if (line.at("machine") == machine)
            first = std::min(first, std::stoi(line.at("day")));
    std::int64_t noted = 0;
    for (const Line& line : linesOf("outings.csv"))
        if (line.at("machine") == machine && std::stoi(line.at("day")) < first)
            noted += hundredths(line.at("hours"));
    return noted;
}

class LongDemoTest : public testing::Test {
  protected:
    // Told once; BuildsTheSameAgain tells it anew and compares.
    static void SetUpTestSuite() {
        const DemoText text = demoText();
        std::string all;
        for (const auto& [name, content] : text.files)
            all += name + content;
        for (const std::string& starter : text.starters)
            all += starter;
        const test::Memo memo("demo.json", all);
        if (const auto before = memo.text()) {
            if (auto rows = fromJson(*before)) {
                take(picture::Ledger(std::move(*rows)));
                return;
            }
        }
        auto built = buildDemo(text);
        if (!built) {
            const base::Error& error = built.error();
            FAIL() << error.field << ": fault " << static_cast<int>(error.fault) << ", given " << error.given
                   << ", wanted " << error.wanted;
        }
        memo.keep(toJson(*built));
        take(std::move(*built));
    }
    static void take(picture::Ledger ledger) {
        ledger_ = new std::shared_ptr<const picture::Ledger>(
            std::make_shared<const picture::Ledger>(std::move(ledger)));
    }
    static void TearDownTestSuite() {
        delete ledger_;
        ledger_ = nullptr;
    }
    void SetUp() override { ASSERT_NE(ledger_, nullptr); }

    [[nodiscard]] static const picture::Ledger& ledger() { return **ledger_; }
    [[nodiscard]] static book::Book book() { return {*ledger_, *ledger().garage().pinnedToday}; }
    template <class R>
    [[nodiscard]] static decltype(R::id) named(const std::string& name) {
        for (const R& row : ledger().all<R>())
            if (row.name == name)
                return row.id;
        ADD_FAILURE() << "no " << name;
        return decltype(R::id){};
    }
    [[nodiscard]] static MachineId machine(const std::string& name) { return named<items::Machine>(name); }

  private:
    static inline std::shared_ptr<const picture::Ledger>* ledger_ = nullptr;
};

TEST_F(LongDemoTest, StandsStillOnAThursdayBeforeARace) {
    const auto today = *ledger().garage().pinnedToday;
    EXPECT_EQ(today.iso(), "2026-05-07");
    EXPECT_EQ(today.isoWeekday(), 4);
    const book::Book now = book();
    ASSERT_FALSE(now.ahead(machine("Heron 250")).events.empty());
    EXPECT_EQ(now.ahead(machine("Heron 250")).events.front().first.iso(), "2026-05-16");
    EXPECT_EQ(now.ahead(machine("Sorrel 450")).events.front().first.iso(), "2026-05-24");
    EXPECT_TRUE(now.ahead(machine("Plover 125")).events.empty());
    ASSERT_NE(now.nextWindow(), nullptr);
    EXPECT_EQ(now.nextWindow()->date.isoWeekday(), 5);
    EXPECT_EQ(units::timeOfDayText(now.nextWindow()->startsAt), "18:00");
}

TEST_F(LongDemoTest, BuildsTheSameAgain) {
    const auto again = buildDemo(demoText());
    ASSERT_TRUE(again);
    EXPECT_EQ(again->rows(), ledger().rows());
}

TEST_F(LongDemoTest, IsTakenOverByAnEmptyFile) {
    const book::Book empty(std::make_shared<const picture::Ledger>(), *ledger().garage().pinnedToday);
    const auto change = verbs::adoptAll({empty, [] { return 1; }}, ledger().rows());
    ASSERT_TRUE(change) << change.error().field << " given " << change.error().given;
    EXPECT_EQ(picture::Ledger{}.with(*change).rows(), ledger().rows());
    const auto read = fromJson(toJson(ledger()));
    ASSERT_TRUE(read) << read.error().field;
    EXPECT_EQ(picture::Ledger(*read).rows(), ledger().rows());
}

TEST_F(LongDemoTest, HoursAgreeWithTheMeters) {
    const book::Book now = book();
    for (const Line& line : linesOf("machines.csv")) {
        const std::string& name = line.at("name");
        const auto life = now.life(machine(name));
        EXPECT_EQ(life.hours.best.count(),
                  hundredths(line.at("past_best")) + notedBeforeMeter(name) + metered(name, -1000, 0))
            << name;
    }
    EXPECT_EQ(now.life(machine("Heron 250")).hours.best, units::Hours{6130});
    EXPECT_EQ(now.life(machine("Sorrel 450")).hours.best, units::Hours{21400});
    EXPECT_EQ(now.life(machine("Plover 125")).hours.best, units::Hours{1840});
    const auto crake = now.life(machine("Crake 250")).hours;
    EXPECT_EQ(crake.best, units::Hours{11000 + 4100});
    EXPECT_EQ(crake.low, units::Hours{6000 + 4100});
    EXPECT_FALSE(crake.high) << "nobody knows how much it did before";
}

TEST_F(LongDemoTest, EnginesAndWheelsCarryTheirOwnHours) {
    const book::Book now = book();
    const auto best = [&](const char* name) { return now.life(named<items::Item>(name)).hours.best.count(); };
    // Engine no. 1 came out on day -117, no. 2 went in on -110; its piston was new then.
    EXPECT_EQ(best("Heron engine no. 1"), 2100 + metered("Heron 250", -216, -117));
    EXPECT_EQ(best("Heron engine no. 2"), 3400 + metered("Heron 250", -123, 0));
    EXPECT_EQ(best("Heron crank no. 2"), best("Heron engine no. 2"));
    EXPECT_EQ(best("Heron piston B"), metered("Heron 250", -123, 0));
    EXPECT_EQ(best("Heron piston C"), 0) << "on the shelf in engine no. 1";
    // Mud wheels from the eve of day -201 to the eve of -54.
    const std::int64_t mud = metered("Heron 250", -207, -60);
    // Before that they were on the old Heron, up to the eve of day -389.
    EXPECT_EQ(best("Mud rear wheel"), 850 + metered("Old Heron", -432, -396) + mud);
    EXPECT_EQ(best("Hard rear wheel"), 2100 + metered("Heron 250", -216, 0) - mud);
}

// Out of the old Heron with its engine, a month in the club's frame, back, and then into the Crake's own
// engine.
TEST_F(LongDemoTest, APistonLivedInTwoEnginesAndThreeMachines) {
    const book::Book now = book();
    const auto piston = named<items::Item>("Heron piston D");
    std::set<std::string> engines;
    std::set<std::string> machines;
    for (const Line& line : linesOf("moves.csv")) {
        if (line.at("to").empty())
            continue;
        if (line.at("item") == "Heron piston D")
            engines.insert(line.at("to"));
        if (line.at("item") == "Heron engine no. 3")
            machines.insert(line.at("to"));
    }
    EXPECT_EQ(engines, (std::set<std::string>{"Heron engine no. 3", "Crake engine"}));
    EXPECT_EQ(machines, (std::set<std::string>{"Old Heron", "Club Heron"}));
    EXPECT_EQ(
        now.life(piston).hours.best.count(),
        metered("Old Heron", -333, -228) + metered("Club Heron", -310, -285) + metered("Crake 250", -118, 0));
    EXPECT_TRUE(now.life(piston).hours.isExact()) << "every hour of it was metered";
}

TEST_F(LongDemoTest, TellsTwoSeasons) {
    const book::Book now = book();
    std::vector<std::string> here;
    for (const auto* each : now.machines())
        here.push_back(each->name);
    EXPECT_EQ(here, (std::vector<std::string>{"Crake 250", "Heron 250", "Plover 125", "Sorrel 450"}));
    EXPECT_EQ(ledger().all<items::Machine>().size(), 6U) << "one sold, one given back";
    std::set<std::int64_t> riders;
    std::set<std::int64_t> workers;
    calendar::Date first = now.today();
    for (const auto& outing : ledger().all<usage::Outing>()) {
        first = std::min(first, outing.date);
        riders.insert(outing.rider ? outing.rider->value() : 0);
    }
    for (const auto& record : ledger().all<upkeep::Record>())
        if (record.by)
            workers.insert(record.by->value());
    EXPECT_GE(riders.size(), 4U);
    EXPECT_GE(workers.size(), 4U);
    EXPECT_GT(now.today() - first, 365 + 30);
    // The Crake's shock is at the workshop, and its snags are of each kind.
    const auto shock = named<items::Item>("Crake shock");
    const items::Move* last = nullptr;
    for (const auto& move : ledger().all<items::Move>())
        if (move.item == shock)
            last = &move;
    ASSERT_NE(last, nullptr);
    EXPECT_EQ(last->kind, items::MoveKind::Away);
    const auto open = now.snags(machine("Crake 250"));
    EXPECT_GE(open.size(), 3U);
    EXPECT_EQ(std::count_if(open.begin(), open.end(), [](const auto& s) { return s.deferral != nullptr; }),
              1);
    EXPECT_GE(now.life(machine("Crake 250")).crashes, 1);
    EXPECT_GT(now.life(machine("Crake 250")).distance.best, units::Metres{800'000});
}

TEST_F(LongDemoTest, CountsAgreeWithTheLines) {
    const book::Book now = book();
    std::map<std::string, usage::Exposure> sums;
    for (const Line& line : linesOf("outings.csv")) {
        usage::Exposure& sum = sums[line.at("machine")];
        sum.outings += 1;
        sum.starts += line.at("starts").empty() ? 0 : std::stoi(line.at("starts"));
        sum.mudDays += line.at("ground") == "mud" || line.at("ground") == "water" ? 1 : 0;
        sum.washes += line.at("wash").empty() ? 0 : 1;
        sum.pressureWashes += line.at("wash") == "pressure" ? 1 : 0;
        sum.crashes += line.at("crash") == "yes" ? 1 : 0;
    }
    for (const Line& line : linesOf("washes.csv")) {
        sums[line.at("machine")].washes += 1;
        sums[line.at("machine")].pressureWashes += line.at("wash") == "pressure" ? 1 : 0;
    }
    std::int64_t outings = 0;
    for (const auto& [name, sum] : sums) {
        const auto life = now.life(machine(name));
        EXPECT_EQ(life.outings, sum.outings) << name;
        EXPECT_EQ(life.starts, sum.starts) << name;
        EXPECT_EQ(life.mudDays, sum.mudDays) << name;
        EXPECT_EQ(life.washes, sum.washes) << name;
        EXPECT_EQ(life.pressureWashes, sum.pressureWashes) << name;
        EXPECT_EQ(life.crashes, sum.crashes) << name;
        outings += sum.outings;
    }
    EXPECT_GE(outings, 150);
    EXPECT_LE(outings, 170);
}

TEST_F(LongDemoTest, JobsAgreeWithTheLines) {
    std::size_t jobs = 0;
    for (const Line& line : linesOf("jobs.csv")) {
        std::stringstream words(line.at("jobs"));
        const bool snag = line.at("jobs").starts_with("snag:");
        for (std::string word; words >> word;)
            jobs += snag ? 0 : 1;
        jobs += snag ? 1 : 0;
    }
    EXPECT_EQ(ledger().all<upkeep::Record>().size(), jobs);
}

TEST_F(LongDemoTest, SomeOfEverythingIsDue) {
    const book::Book now = book();
    for (const auto* each : now.machines()) {
        std::map<outlook::StandingKind, int> kinds;
        for (const auto& line : now.due(each->id))
            ++kinds[line.standing.kind];
        EXPECT_GE(kinds[outlook::StandingKind::Overdue], 1) << each->name;
        EXPECT_LE(kinds[outlook::StandingKind::Overdue], 7) << each->name;
        EXPECT_GE(kinds[outlook::StandingKind::BeforeEvent], 3) << each->name;
        EXPECT_GE(kinds[outlook::StandingKind::InHand], 30) << each->name;
    }
    std::set<std::string> never;
    for (const auto& line : now.due(machine("Heron 250")))
        if (line.standing.kind == outlook::StandingKind::NoRecord)
            never.insert(line.task->code);
    EXPECT_EQ(never, (std::set<std::string>{"rear-brake-fluid", "silencer-packing", "steering-grease"}));
    EXPECT_FALSE(now.pickedJobs(machine("Heron 250")).empty());
}

// What the head counts is what is listed, and the chances are in their order.
TEST_F(LongDemoTest, WhatIsCountedIsWhatIsListed) {
    using outlook::StandingKind;
    const book::Book now = book();
    std::int64_t picked = 0;
    for (const auto* each : now.machines()) {
        std::map<StandingKind, std::int64_t> listed;
        std::map<StandingKind, std::int64_t> left;
        for (const auto& line : now.due(each->id)) {
            if (line.deferral != nullptr || book::isOnlyOfTheRound(line))
                continue;
            ++listed[line.standing.kind];
            left[line.standing.kind] += !line.picked;
            picked += line.picked;
        }
        const auto& chances = now.chances(each->id);
        EXPECT_EQ(chances.dueNow, listed[StandingKind::Overdue]) << each->name;
        EXPECT_EQ(chances.mayBeOver, listed[StandingKind::MayBeOver]) << each->name;
        EXPECT_EQ(chances.beforeEvent, listed[StandingKind::BeforeEvent]) << each->name;
        EXPECT_EQ(chances.leftOver, left[StandingKind::Overdue] + left[StandingKind::MayBeOver])
            << each->name;
        EXPECT_EQ(chances.leftBefore, left[StandingKind::BeforeEvent]) << each->name;
        if (chances.clear) {
            EXPECT_LE(*chances.clear, *chances.clearOfRest)
                << each->name << ": fewer jobs, fewer that fall due";
        }
        EXPECT_FALSE(chances.clearOfUnpicked && chances.leftOver > 0) << each->name;
    }
    EXPECT_GT(picked, 0);
}

TEST_F(LongDemoTest, TheSorrelStandsHalfFinished) {
    const book::Book now = book();
    std::set<std::string> loose;
    for (const auto& open : now.handTight(machine("Sorrel 450")))
        loose.insert(open.joint->code);
    EXPECT_TRUE(loose.contains("swingarm-pivot-nut"));
    EXPECT_TRUE(loose.contains("rear-axle-nut"));
    EXPECT_FALSE(now.followUps(machine("Sorrel 450")).empty());
    // One valve has closed up to its limit: its shims are due, the round of the look is not.
    for (const auto& line : now.due(machine("Sorrel 450")))
        EXPECT_EQ(line.countdown.value.has_value(), line.task->code == "valve-shims") << line.task->code;
    const auto snags = now.snags(machine("Heron 250"));
    EXPECT_TRUE(std::any_of(snags.begin(), snags.end(), [](const auto& s) { return s.deferral != nullptr; }));
}

// The middle wrench came back yesterday: it clicked too early. What it tightened since autumn stands in the
// recall, and asks to be re-checked but for what was tightened or loosened since.
TEST_F(LongDemoTest, AFailedCheckRecallsWhatTheWrenchTightened) {
    const book::Book now = book();
    const auto recalls = book::recallsOf(now);
    ASSERT_EQ(recalls.size(), 1U);
    EXPECT_EQ(recalls[0].tool->name, "Middle click");
    ASSERT_NE(recalls[0].recall.lastGood, nullptr);
    std::set<std::string> open;
    for (const auto& line : recalls[0].recall.lines)
        if (book::stillDoubted(now, recalls[0], line)) {
            const auto* joint = now.joint(line.tightened->joint);
            open.insert(now.ledger().find<items::Machine>(joint->machine)->name + " " + joint->code);
        }
    EXPECT_EQ(recalls[0].recall.lines.size(), 7U);
    EXPECT_GE(open.size(), 4U);
    EXPECT_TRUE(open.contains("Heron 250 bar-clamp-bolts"));
    std::size_t asked = 0;
    for (const auto* each : now.machines())
        for (const auto& demand : now.followUps(each->id))
            asked += demand.origin == recalls[0].recall.failed->id.value() ? 1 : 0;
    EXPECT_EQ(asked, open.size());
}

// The Heron's rear sprocket came loose three times; the other sprocket joints never.
TEST_F(LongDemoTest, SaysWhichJointIsLooserThanItsKind) {
    const book::Book now = book();
    const auto lines = book::cameLoose(now, std::nullopt);
    ASSERT_FALSE(lines.empty());
    EXPECT_EQ(lines[0].joint->code, "rear-sprocket-bolts");
    EXPECT_EQ(lines[0].joint->machine, machine("Heron 250"));
    EXPECT_EQ(lines[0].figures.moved, 3);
    ASSERT_TRUE(lines[0].comparison);
    EXPECT_EQ(lines[0].comparison->othersMoved, 0);
    EXPECT_TRUE(lines[0].comparison->stands)
        << lines[0].comparison->chance << " of " << lines[0].comparison->compared << ", "
        << lines[0].comparison->ridden.count() << " against " << lines[0].comparison->othersRidden.count();
}

TEST_F(LongDemoTest, TheDrawerHasOneOfEachStanding) {
    const book::Book now = book();
    std::map<std::string, fastening::ToolState> states;
    for (const auto& choice : book::drawerOf(now))
        states[choice.tool->name] = choice.standing.state;
    EXPECT_EQ(states.at("Long red"), fastening::ToolState::InHand);
    EXPECT_EQ(states.at("Middle click"), fastening::ToolState::InHand) << "put right when it was found out";
    EXPECT_EQ(states.at("Old bar"), fastening::ToolState::Unknown);
}

// Another machine wants the same evening: together it is too much, and that is said.
TEST_F(LongDemoTest, TheHeronsPicksFitTheNextEveningByThemselves) {
    const book::Book now = book();
    const auto evening = book::eveningOf(now, machine("Heron 250"));
    ASSERT_EQ(evening.machines.size(), 1U);
    ASSERT_TRUE(evening.machines.front().plan);
    EXPECT_GE(evening.machines.front().jobs.size(), 3U);
    ASSERT_TRUE(evening.left);
    const units::Minutes alone = *evening.left + evening.elsewhere;
    EXPECT_GE(alone, units::Minutes{0});
    EXPECT_LT(alone, units::Minutes{60}) << "an evening, not an hour";
    EXPECT_EQ(evening.elsewhere, book::eveningOf(now, machine("Plover 125")).work);
    EXPECT_GT(evening.elsewhere, alone);
    EXPECT_EQ(evening.left, book::eveningOf(now, std::nullopt).left);
}

TEST_F(LongDemoTest, TheShelfIsARealShelf) {
    const book::Book now = book();
    int tooOld = 0;
    int onOrder = 0;
    int partUsed = 0;
    for (const auto& there : now.shelf()) {
        const auto* line = ledger().find<stock::StockLine>(there.line);
        EXPECT_GE(there.amount, 0) << line->name;
        onOrder += there.onOrder > 0 ? 1 : 0;
        for (const auto& lot : there.lots) {
            tooOld += lot.tooOld && lot.amount > 0 ? 1 : 0;
            partUsed +=
                line->unit != stock::Unit::Piece && lot.lot && lot.amount > 0 && lot.amount < line->packAmount
                    ? 1
                    : 0;
        }
    }
    EXPECT_GE(tooOld, 1);
    EXPECT_GE(onOrder, 3);
    EXPECT_GE(partUsed, 5);
}

TEST_F(LongDemoTest, EveryTorqueIsOfAnInventedManualOrUnconfirmed) {
    const book::Book now = book();
    int confirmed = 0;
    int unconfirmed = 0;
    int blank = 0;
    for (const auto* each : now.machines()) {
        for (const auto* joint : now.joints(each->id)) {
            if (!joint->torque) {
                ++blank;
                EXPECT_FALSE(joint->confirmed) << joint->code;
                continue;
            }
            joint->confirmed ? ++confirmed : ++unconfirmed;
            EXPECT_TRUE(!joint->confirmed || joint->source.find("(invented)") != std::string::npos)
                << joint->code;
            EXPECT_FALSE(joint->page.empty()) << joint->code;
        }
    }
    EXPECT_GE(confirmed, 30);
    EXPECT_GE(unconfirmed, 3);
    EXPECT_GE(blank, 50);
}

std::string faultOf(DemoText text) {
    const auto built = buildDemo(text);
    return built ? "built" : built.error().field.text();
}

TEST(DemoTextTest, NamesTheLineThatIsWrong) {
    DemoText text = demoText();
    text.files["people.csv"] = "# two\nday,name\n-216,Odile\n-216,Odile\n";
    EXPECT_EQ(faultOf(text), "people.csv line 4, name");
    text.files["people.csv"] = "day,name\nyesterday,Odile\n";
    EXPECT_EQ(faultOf(text), "people.csv line 2, day");
    text.files["people.csv"] = "day\n-216\n";
    EXPECT_EQ(faultOf(text), "people.csv line 2, name");
    text.files.erase("people.csv");
    EXPECT_EQ(faultOf(text), "people.csv");
}

TEST(DemoTextTest, RefusesAFileThatItDoesNotKnow) {
    DemoText text = demoText();
    text.files["more.csv"] = "day\n";
    EXPECT_EQ(faultOf(text), "files");
    EXPECT_EQ(faultOf(DemoText{}), "garage.csv");
}

TEST(CsvTextTest, ReadsQuotedCellsAndLineNumbers) {
    const auto table = readCsv("# a remark\na,b\n1,\"two, \"\"three\"\"\nfour\"\r\n\n 5 ,\n");
    ASSERT_TRUE(table);
    ASSERT_EQ(table->rows.size(), 2U);
    EXPECT_EQ(table->rows[0].cells[1], "two, \"three\"\nfour");
    EXPECT_EQ(table->rows[0].line, 3U);
    EXPECT_EQ(table->rows[1].cells, (std::vector<std::string>{"5", ""}));
    EXPECT_EQ(table->rows[1].line, 6U);
}

TEST(CsvTextTest, RefusesWhatIsBroken) {
    EXPECT_EQ(readCsv("").error().fault, base::Fault::Empty);
    EXPECT_EQ(readCsv("a,a\n").error().fault, base::Fault::Duplicate);
    EXPECT_EQ(readCsv("a,b\n1\n").error().field, "line 2");
    EXPECT_EQ(readCsv("a\n\"open\n").error().fault, base::Fault::Malformed);
    EXPECT_EQ(readCsv("a\n\"x\"y\n").error().fault, base::Fault::Malformed);
    EXPECT_EQ(readCsv("a\n\xff\n").error().fault, base::Fault::NotText);
}

}  // namespace
}  // namespace wm::exchange
