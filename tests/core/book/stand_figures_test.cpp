// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/stand_figures.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/core/fastening/stand.h"

namespace wm::book {

using picture::Ledger;
using picture::Row;

namespace {

using fastening::Figure;
using fastening::figureText;

class FiguresTest : public testing::Test {
  protected:
    Book book_ = fastening::standBook();
    std::vector<Figure> figures_ = figuresOf(book_, std::nullopt);

    const Figure& point(const std::string& name) {
        const auto found = std::find_if(figures_.begin(), figures_.end(), [&](const Figure& figure) {
            return fastening::pointName(figure) == name;
        });
        EXPECT_NE(found, figures_.end()) << name;
        return *found;
    }
};

TEST_F(FiguresTest, EveryJointKitLineLimitAndSettingIsThereOnce) {
    std::size_t expected = 0;
    for (const auto* machine : book_.machines()) {
        expected += book_.joints(machine->id).size();
        for (const auto* task : book_.tasks(machine->id))
            expected += task->kit.size() + task->measures.size();
        expected += 9;  // the settings of the stand
    }
    EXPECT_EQ(figures_.size(), expected);
    std::set<std::pair<MachineId, std::string>> names;
    for (const Figure& figure : figures_)
        EXPECT_TRUE(names.emplace(figure.machine, fastening::pointName(figure)).second) << figure.code;
}

TEST_F(FiguresTest, OneMachineIsAPartOfAll) {
    const MachineId machine = book_.machines().front()->id;
    const auto one = figuresOf(book_, machine);
    EXPECT_LT(one.size(), figures_.size());
    for (const Figure& figure : one)
        EXPECT_EQ(figure.machine, machine);
}

TEST_F(FiguresTest, ReadAsTheyWereWritten) {
    EXPECT_EQ(figureText(point("joint:rear-axle-nut")), "110 N·m");
    EXPECT_EQ(figureText(point("joint:stem-nut")), "");  // nobody has typed it
    EXPECT_EQ(figureText(point("quantity:fork-oil/fork oil")), "1000 ml");
    EXPECT_EQ(figureText(point("setting:needle clip")), "third");
    EXPECT_EQ(figureText(point("setting:front pressure")), "0.85 bar");
    EXPECT_EQ(figureText(point("setting:front pressure"), '.', "psi"), "12 psi");
    EXPECT_EQ(figureText(point("setting:front pressure"), ',', "mm"), "0,85 bar");
    EXPECT_EQ(figureText(point("setting:preload length"), '.', "in"), "9.76 in");
}

TEST_F(FiguresTest, ALimitSaysWhichEndItIs) {
    Figure limit{.kind = fastening::FigureKind::Limit, .low = units::Decimal{10, 1}, .unit = "mm"};
    EXPECT_EQ(figureText(limit), "at least 1.0 mm");
    limit.high = units::Decimal{25, 1};
    EXPECT_EQ(figureText(limit, ','), "1,0 to 2,5 mm");
    limit.low.reset();
    EXPECT_EQ(figureText(limit), "at most 2.5 mm");
}

TEST_F(FiguresTest, OnlyTheLastSettingCounts) {
    Ledger ledger = book_.ledger();
    const MachineId machine = book_.machines().front()->id;
    std::vector<Row> rows;
    rows.emplace_back(items::Setting{.id = SettingId(900'001),
                                     .entered = ledger.nextEntered(),
                                     .machine = machine,
                                     .date = *calendar::makeDate(2026, 4, 1),
                                     .name = "gearing",
                                     .value = "12-50"});
    const Book later(std::make_shared<const Ledger>(ledger.with({"", rows})), book_.today());
    const auto figures = figuresOf(later, machine);
    EXPECT_EQ(std::count_if(figures.begin(), figures.end(),
                            [](const Figure& figure) { return figure.code == "gearing"; }),
              1);
    const auto found = std::find_if(figures.begin(), figures.end(),
                                    [](const Figure& figure) { return figure.code == "gearing"; });
    EXPECT_EQ(found->words, "12-50");
}

}  // namespace
}  // namespace wm::book
