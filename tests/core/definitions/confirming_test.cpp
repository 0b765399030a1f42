// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/definitions/confirming.h"

#include <rapidcheck.h>

#include "core/definitions/printed_words.h"
#include "core/verbs/confirm_verb.h"
#include "tests/core/verbs/bench.h"

// Leafing through the manual: which figures, in which order, and what each answer makes of them.

namespace wm::definitions {

using namespace verbs;
using book::Book;

namespace {

using base::Fault;
using fastening::JointVersion;
using units::Decimal;
using upkeep::Misreading;
using upkeep::TaskVersion;

class ConfirmingTest : public testing::Test, public FurnishedBench {
  protected:
    void SetUp() override {
        const Book now = book();
        TaskVersion task = *now.task(oilChange);
        task.kit = {{"engine oil", std::nullopt, 850, upkeep::Unit::Millilitre, false},
                    {"drain washer", std::nullopt, 1, upkeep::Unit::Piece, false}};
        task.measures = {{"clearance", "mm", Decimal{10, 2}, Decimal{15, 2}, "common practice", false},
                         {"play", "mm", std::nullopt, std::nullopt, "", false}};
        task.source = "common practice";
        task.validFrom = {};
        must(saying(saveTask, task));
    }
    std::vector<Printed> figures() const { return printedFigures(book(), heron); }
    Printed figure(std::string_view name) const {
        for (const Printed& each : figures())
            if (each.name == name)
                return each;
        ADD_FAILURE() << name << " is not among the figures";
        return {};
    }
    std::string confirm(std::string_view name, std::string read, std::string page = "2-9") {
        return must(saying(confirmPrinted, figure(name).key,
                           ReadInManual{std::move(read), "service manual", std::move(page)}));
    }
    At refuse(std::string_view name, ReadInManual read) {
        return refusedAt(saying(confirmPrinted, figure(name).key, std::move(read)));
    }
    std::optional<FigureDoubt> doubt(std::string_view name, std::string_view read) const {
        const Book now = book();
        const auto answer = doubtAbout(now, figure(name).key, read);
        EXPECT_TRUE(answer.has_value()) << name << ' ' << read;
        return answer ? *answer : std::nullopt;
    }
    JointVersion joint(const char* name, std::string page, std::optional<Decimal> torque) {
        return {.machine = heron,
                .name = name,
                .kind = fastening::JointKind::Cover,
                .thread = "M6x1.0",
                .torque = torque,
                .source = torque ? "service manual" : "",
                .page = std::move(page)};
    }
};

TEST_F(ConfirmingTest, GathersIntervalsAmountsLimitsAndTorques) {
    std::map<PrintedKind, int> count;
    for (const Printed& each : figures())
        ++count[each.key.kind];
    EXPECT_EQ(count[PrintedKind::Quantity], 2);
    EXPECT_EQ(count[PrintedKind::Limit], 2);
    EXPECT_EQ(count[PrintedKind::Torque], 1);
    EXPECT_GE(count[PrintedKind::Interval], 1);
    EXPECT_EQ(figure("engine oil").figure, "850 ml");
    EXPECT_EQ(figure("engine oil").source, "common practice") << "of its job, where it has none of its own";
    EXPECT_EQ(figure("drain washer").figure, "1");
    EXPECT_EQ(figure("clearance").figure, "0.10 to 0.15 mm");
    EXPECT_TRUE(figure("play").figure.empty());
    EXPECT_TRUE(printedFigures(book(), MachineId{5}).empty());
}

// A task that only happenings set off has no figure in any manual.
TEST_F(ConfirmingTest, ATaskWithoutAFigureIsNoneOfThem) {
    const auto isListed = [&](std::string_view name) {
        const auto all = figures();
        return std::ranges::any_of(all, [&](const Printed& each) { return each.name == name; });
    };
    TaskVersion task{.machine = heron, .name = "After the rain"};
    task.triggers = {{upkeep::Happening::Wash, ""}};
    must(saying(saveTask, task));
    EXPECT_FALSE(isListed("After the rain"));
    task.name = "After the rain, and every six hours";
    task.limits = {{.every = 600}};
    must(saying(saveTask, task));
    EXPECT_TRUE(isListed("After the rain, and every six hours"));
}

TEST_F(ConfirmingTest, KindAfterKindAndPageAfterPage) {
    must(saying(saveJoint, joint("Cover a", "2-31", Decimal{10, 0})));
    must(saying(saveJoint, joint("Cover b", "p. 2-9", Decimal{10, 0})));
    must(saying(saveJoint, joint("Cover c", "", std::nullopt)));
    must(saying(saveJoint, joint("Cover d", "2-09", Decimal{10, 0})));
    must(saying(saveJoint, joint("Cover e", "11-2", Decimal{10, 0})));
    std::vector<std::string> names;
    PrintedKind kind = PrintedKind::Interval;
    for (const Printed& each : figures()) {
        EXPECT_GE(each.key.kind, kind);
        kind = each.key.kind;
        if (each.name.starts_with("Cover"))
            names.push_back(each.name);
    }
    EXPECT_EQ(names, (std::vector<std::string>{"Cover d", "Cover b", "Cover a", "Cover e", "Cover c"}));
}

TEST_F(ConfirmingTest, AsItStandsThereIsOneAnswerWithItsPage) {
    const auto before = confirmedCount(figures());
    EXPECT_EQ(before.confirmed, 0U);
    EXPECT_EQ(confirm("engine oil", ""), "confirmed \"Oil change: engine oil\" against the manual");
    const Printed oilNow = figure("engine oil");
    EXPECT_TRUE(oilNow.confirmed);
    EXPECT_EQ(oilNow.source, "service manual");
    EXPECT_EQ(oilNow.page, "2-9");
    EXPECT_FALSE(figure("drain washer").confirmed) << "each figure by itself";
    EXPECT_FALSE(book().task(oilChange)->confirmed) << "the interval stands on another page";
    EXPECT_EQ(confirmedCount(figures()), (ConfirmedCount{1, before.all}));
    EXPECT_EQ(refuse("engine oil", {"", "service manual", "2-9"}), At(Fault::NothingToDo, "name"));
    EXPECT_EQ(manualOf(book(), heron), "service manual");
    // The source of a limit from before may hold its page as well: that is no name of a manual.
    TaskVersion task = *book().task(oilChange);
    task.measures[0].source = "red book, p. 3-19";
    task.measures[0].confirmed = true;
    task.validFrom = {};
    must(saying(saveTask, task));
    EXPECT_EQ(manualOf(book(), heron), "service manual");
}

// The interval is printed on one page, the amount on another: it does not become the manual's with it.
TEST_F(ConfirmingTest, AConfirmedIntervalLeavesTheAmountsWithTheirSource) {
    confirm("Oil change", "");
    EXPECT_EQ(figure("Oil change").source, "service manual");
    EXPECT_EQ(figure("engine oil").source, "common practice");
    EXPECT_FALSE(figure("engine oil").confirmed);
    EXPECT_EQ(figure("clearance").source, "common practice");
    EXPECT_TRUE(figure("play").source.empty()) << "a limit is never the task's";
}

// In the editor: what was typed anew comes from where the task comes from, what stood there does not.
TEST_F(ConfirmingTest, AnAmountThatWasTypedAnewTakesTheNewSource) {
    TaskVersion task = *book().task(oilChange);
    task.source = "owner's manual";
    task.kit[1].amount = 2;
    task.kit.push_back({"paper", std::nullopt, 1, upkeep::Unit::Piece, false});
    std::swap(task.kit[0], task.kit[2]);
    task.validFrom = {};
    must(saying(saveTask, task));
    EXPECT_EQ(figure("engine oil").source, "common practice");
    EXPECT_EQ(figure("drain washer").source, "owner's manual");
    EXPECT_EQ(figure("paper").source, "owner's manual");
}

// Said again in other words it is the same interval, with whatever it may be overrun by.
TEST_F(ConfirmingTest, TheAllowanceStaysWithAnIntervalThatStays) {
    const auto allow = [this](std::int64_t hundredths) {
        TaskVersion task = *book().task(oilChange);
        task.limits = {{.every = 600, .allowance = hundredths}};
        task.source = "common practice " + std::to_string(hundredths);
        task.confirmed = false;
        task.validFrom = {};
        must(saying(saveTask, task));
    };
    const auto allowance = [this] { return book().task(oilChange)->limits.at(0).allowance; };
    allow(600);
    confirm("Oil change", "6 hours");
    EXPECT_EQ(allowance(), 600);
    allow(700);
    confirm("Oil change", "6 hours");
    EXPECT_EQ(allowance(), 700);
    confirm("Oil change", "7 h");
    EXPECT_EQ(allowance(), 700) << "as long as the new one";
    confirm("Oil change", "5 h");
    EXPECT_EQ(allowance(), 0) << "more than the whole interval is a mistake by now";
}

TEST_F(ConfirmingTest, AnotherFigureCorrectsItAndIsConfirmedAtOnce) {
    EXPECT_EQ(confirm("engine oil", "0,9 l"), "\"Oil change: engine oil\" is 900 ml by the manual");
    EXPECT_EQ(book().task(oilChange)->kit[0].amount, 900);
    confirm("clearance", "0.12-0.17");
    EXPECT_EQ(figure("clearance").figure, "0.12 to 0.17 mm");
    confirm("play", "max 0.8");
    EXPECT_EQ(figure("play").figure, "max 0.8 mm");
    EXPECT_TRUE(figure("play").confirmed);
    const std::string job = book().task(oilChange)->name;
    confirm(job, "first 1 h, then 8 h or 12 months");
    ASSERT_EQ(book().task(oilChange)->limits.size(), 2U);
    EXPECT_EQ(book().task(oilChange)->limits[0].every, 800);
    EXPECT_TRUE(book().task(oilChange)->confirmed);
    EXPECT_EQ(book().task(oilChange)->page, "2-9");
    EXPECT_TRUE(figure("engine oil").confirmed) << "what was confirmed before stays so";
}

TEST_F(ConfirmingTest, ATorqueIsTypedStraightIntoItsBlank) {
    must(saying(saveJoint, joint("Cover", "", std::nullopt)));
    EXPECT_EQ(refuse("Cover", {"", "service manual", "2-9"}), At(Fault::Empty, "figure"));
    confirm("Cover", "7-9 ft lb");
    EXPECT_EQ(figure("Cover").figure, "7 to 9 lbf·ft");
    EXPECT_TRUE(figure("Cover").confirmed);
}

TEST_F(ConfirmingTest, RefusesWhatCannotBeRead) {
    EXPECT_EQ(refuse("engine oil", {"", "", "2-9"}), At(Fault::Empty, "source"));
    EXPECT_EQ(refuse("engine oil", {"", "service manual", "  "}), At(Fault::Empty, "page"));
    EXPECT_EQ(refuse("engine oil", {"0.85", "m", "2"}), At(Fault::WrongUnit, "figure"));
    EXPECT_EQ(refuse("engine oil", {"850 mm", "m", "2"}), At(Fault::WrongUnit, "figure"));
    EXPECT_EQ(refuse("engine oil", {"-850", "m", "2"}), At(Fault::NotPositive, "figure"));
    EXPECT_EQ(refuse("engine oil", {"999999999999 l", "m", "2"}), At(Fault::TooLarge, "figure"));
    EXPECT_EQ(refuse("drain washer", {"1.5", "m", "2"}), At(Fault::WrongUnit, "figure"));
    EXPECT_EQ(refuse("drain washer", {"2 ml", "m", "2"}), At(Fault::WrongUnit, "figure"));
    EXPECT_EQ(refuse("play", {"0.8", "m", "2"}), At(Fault::Malformed, "figure"));
    EXPECT_EQ(refuse("clearance", {"0.15-0.10", "m", "2"}), At(Fault::OutOfOrder, "figure"));
    EXPECT_EQ(refuse("clearance", {"max 0.1 psi", "m", "2"}), At(Fault::WrongUnit, "figure"));
    EXPECT_EQ(refuse("clearance", {"\xFF", "m", "2"}), At(Fault::NotANumber, "figure"));
    EXPECT_EQ(refuse("engine oil", {"900", "m\x01", "2"}).fault, Fault::NotText);
    const PrintedKey gone{PrintedKind::Quantity, oilChange.value(), 7};
    EXPECT_EQ(refusedAt(saying(confirmPrinted, gone, ReadInManual{"1", "m", "2"})),
              At(Fault::Unknown, "figure"));
    const PrintedKey none{PrintedKind::Torque, 5, 0};
    EXPECT_EQ(refusedAt(saying(confirmPrinted, none, ReadInManual{"1", "m", "2"})),
              At(Fault::Unknown, "figure"));
}

TEST_F(ConfirmingTest, ADoubtfulFigureIsAskedAbout) {
    const auto litres = doubt("engine oil", "1 ml");
    ASSERT_TRUE(litres);
    EXPECT_EQ(litres->misreading, Misreading::Thousand);
    EXPECT_EQ(litres->meant, "1000 ml");
    EXPECT_EQ(doubt("engine oil", "1700")->misreading, Misreading::BothSides);
    EXPECT_EQ(doubt("clearance", "1.0-1.5")->meant, "0.10 mm");
    EXPECT_EQ(doubt("Oil change", "60 h")->meant, "6.0 h");
    EXPECT_EQ(doubt("Oil change", "6 km")->misreading, Misreading::OtherUnit);
    EXPECT_FALSE(doubt("Oil change", "8 h"));
    EXPECT_FALSE(doubt("engine oil", ""));
    const Book now = book();
    EXPECT_FALSE(doubtAbout(now, figure("engine oil").key, "much").has_value());
}

// A torque is held against its thread, even where it stood there so; without a thread against what stood.
TEST_F(ConfirmingTest, ATorqueIsAskedAboutByItsThreadOrByWhatStoodThere) {
    must(saying(saveJoint, joint("Cover", "", Decimal{100, 0})));
    const auto stored = doubt("Cover", "");
    ASSERT_TRUE(stored && stored->torque);
    EXPECT_EQ(stored->meant, "10.0 N·m");
    EXPECT_FALSE(doubt("Cover", "10"));
    EXPECT_TRUE(doubt("Cover", "8-100")) << "the high end too";
    JointVersion plain = joint("Plain", "", Decimal{24, 0});
    plain.thread.clear();
    must(saying(saveJoint, plain));
    EXPECT_EQ(doubt("Plain", "24 lbf·in")->misreading, Misreading::OtherUnit);
    EXPECT_TRUE(doubt("Plain", "2.4"));
    EXPECT_FALSE(doubt("Plain", "27"));
}

// The stages end with the torque: it is put right there as well, and that is said.
TEST_F(ConfirmingTest, StagesThatHoldTheTorqueArePutRightWithIt) {
    JointVersion head = joint("Head", "", Decimal{38, 0});
    head.thread = "M10x1.25";
    head.stages = "snug, 20, 38";
    must(saying(saveJoint, head));
    confirm("Head", "38");
    EXPECT_EQ(figure("Head").aside, "snug, 20, 38");
    EXPECT_TRUE(figure("Head").confirmed);
    EXPECT_EQ(confirm("Head", "40"), "\"Head\" is 40 N·m (stages: snug, 20, 40) by the manual");
    EXPECT_EQ(figure("Head").figure, "40 N·m");
    EXPECT_EQ(figure("Head").aside, "snug, 20, 40");
    EXPECT_EQ(refuse("Head", {"28 ft lb", "m", "2"}), At(Fault::Inconsistent, "stages"));
    EXPECT_EQ(refuse("Head", {"38-42", "m", "2"}), At(Fault::Inconsistent, "stages"));
    EXPECT_EQ(figure("Head").aside, "snug, 20, 40");
}

// A misreading is asked about first; said again, stages that would go down are refused.
TEST_F(ConfirmingTest, ADoubtfulTorqueWithStagesIsAskedAboutFirst) {
    JointVersion head = joint("Head", "", Decimal{38, 0});
    head.thread = "M10x1.25";
    head.stages = "snug, 20, 38";
    must(saying(saveJoint, head));
    const auto asked = doubt("Head", "3.9");
    ASSERT_TRUE(asked && asked->torque);
    EXPECT_EQ(refuse("Head", {"3.9", "m", "2"}), At(Fault::OutOfOrder, "stages"));
    ASSERT_TRUE(doubt("Head", "390"));
    confirm("Head", "390");
    EXPECT_EQ(figure("Head").aside, "snug, 20, 390");
}

TEST_F(ConfirmingTest, EveryNthTimeIsAFigureToo) {
    TaskVersion task{.machine = heron, .name = "Piston", .nthOf = "oil-change", .nth = 5};
    task.nthOf = book().task(oilChange)->code;
    must(saying(saveTask, task));
    EXPECT_EQ(figure("Piston").figure, "5");
    confirm("Piston", "6");
    EXPECT_EQ(figure("Piston").figure, "6");
    EXPECT_EQ(refuse("Piston", {"0", "m", "2"}), At(Fault::NotPositive, "figure"));
}

// What is said can be typed again and is the same figure: each kind, random figures, both decimal marks.
TEST(PrintedWords, ReadBackToTheSameFigure) {
    EXPECT_TRUE(rc::check("amounts, limits and torques", [] {
        const char mark = *rc::gen::element('.', ',');
        const auto decimal = [](std::int64_t least) {
            return Decimal{*rc::gen::inRange<std::int64_t>(least, 99'999), *rc::gen::inRange(0, 4)};
        };
        upkeep::KitLine line{.amount = *rc::gen::inRange<std::int64_t>(1, 99'999'999),
                             .unit = static_cast<upkeep::Unit>(*rc::gen::inRange(0, 3))};
        upkeep::KitLine kit{.unit = line.unit};
        RC_ASSERT(putAmount(kit, printedAmount(line)).has_value());
        RC_ASSERT(kit == line);
        upkeep::MeasurePoint point{.name = "x",
                                   .unit = *rc::gen::element<std::string>("mm", "", "clicks", "%")};
        if (*rc::gen::arbitrary<bool>())
            point.least = decimal(-9999);
        if (!point.least || *rc::gen::arbitrary<bool>())
            point.most = decimal(-9999);
        if (point.least && point.most && *point.most < *point.least)
            std::swap(point.least, point.most);
        // Between two limits the limits themselves are good.
        point.leastGood = point.mostGood = point.least && point.most;
        upkeep::MeasurePoint again{.name = "x", .unit = point.unit};
        RC_ASSERT(putLimit(again, printedLimit(point, mark)).has_value());
        RC_ASSERT(again == point);
        JointVersion joint{.torque = decimal(1),
                           .unit = static_cast<units::TorqueUnit>(*rc::gen::inRange(0, 5))};
        if (*rc::gen::arbitrary<bool>())
            joint.torqueHigh = Decimal{joint.torque->digits() + 5, joint.torque->places()};
        JointVersion other;
        RC_ASSERT(putTorque(other, printedTorque(joint, mark)).has_value());
        RC_ASSERT(other == joint);
    }));
}

// "kg" ends with "g" and is another unit.
TEST(PrintedWords, AUnitIsReadWhole) {
    upkeep::MeasurePoint grease{.name = "grease", .unit = "g"};
    const auto wrong = putLimit(grease, "max 2 kg");
    ASSERT_FALSE(wrong.has_value());
    EXPECT_EQ(wrong.error().fault, Fault::WrongUnit);
    EXPECT_EQ(wrong.error().given, "kg");
    EXPECT_TRUE(putLimit(grease, "max 20g").has_value());
    EXPECT_EQ(grease.most, (Decimal{20, 0}));
    upkeep::MeasurePoint far{.name = "far", .unit = "m"};
    EXPECT_FALSE(putLimit(far, "max 5 \xC2\xB5m").has_value());
}

TEST(PrintedWords, TakeAnyBytes) {
    EXPECT_TRUE(rc::check("any text is read or refused", [](const std::string& text) {
        upkeep::KitLine line{.unit = upkeep::Unit::Gram};
        (void)putAmount(line, text);
        upkeep::MeasurePoint point{.name = "x", .unit = "mm"};
        (void)putLimit(point, text);
        JointVersion joint;
        (void)putTorque(joint, text);
        TaskVersion task;
        (void)putInterval(task, text);
        RC_ASSERT(line.amount > 0);
    }));
}

}  // namespace
}  // namespace wm::definitions
