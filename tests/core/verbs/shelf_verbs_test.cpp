// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using fastening::MarkKind;
using stock::StockWhy;

class StockVerbsTest : public testing::Test, public FurnishedBench {
  protected:
    At lineWith(const std::function<void(stock::StockLine&)>& spoil) {
        stock::StockLine other{.name = "spark plug", .partNumber = "SP-1"};
        spoil(other);
        return refusedAt(saying(saveStockLine, other));
    }
    At moveWith(const std::function<void(stock::StockMove&)>& spoil) {
        stock::StockMove other{.line = oil, .date = day("2026-03-01"), .amount = -50};
        spoil(other);
        return refusedAt(saying(moveStock, other, std::optional<stock::Lot>{}));
    }
    At orderWith(const std::function<void(stock::StockOrder&)>& spoil) {
        stock::StockOrder other{.line = oil, .date = day("2026-03-01"), .amount = 2000};
        spoil(other);
        return refusedAt(saying(orderStock, other));
    }
    const std::optional<stock::Lot> noLot{};
};

TEST_F(StockVerbsTest, SavesALineOfTheShelf) {
    stock::StockLine plug{.name = "spark plug", .partNumber = "SP-1"};
    EXPECT_EQ(must(saying(saveStockLine, plug)), "added spark plug on the shelf");
    plug.id = last<stock::StockLine>();
    plug.keep = 2;
    EXPECT_EQ(must(saying(saveStockLine, plug)), "changed spark plug on the shelf");
    EXPECT_EQ(refusedAt(saying(saveStockLine, plug)), At(Fault::NothingToDo, "id"));
    EXPECT_EQ(lineWith([](auto& l) { l.partNumber = "sp-1"; }), At(Fault::Duplicate, "part_number"));
    EXPECT_EQ(lineWith([](auto& l) {
                  l.name = "Engine Oil";
                  l.partNumber = "";
              }),
              At(Fault::Duplicate, "name"));
    plug.id = StockLineId{1};
    EXPECT_EQ(refusedAt(saying(saveStockLine, plug)), At(Fault::Unknown, "id"));
    EXPECT_EQ(lineWith([](auto& l) { l.name = ""; }), At(Fault::Empty, "name"));
    EXPECT_EQ(lineWith([](auto& l) { l.packAmount = 0; }), At(Fault::NotPositive, "pack_amount"));
    EXPECT_EQ(lineWith([](auto& l) { l.packAmount = 100'000'001; }), At(Fault::TooLarge, "pack_amount"));
    EXPECT_EQ(lineWith([](auto& l) { l.packPrice = units::Money{-1}; }), At(Fault::Negative, "pack_price"));
    EXPECT_EQ(lineWith([](auto& l) { l.leadDays = -1; }), At(Fault::Negative, "lead_days"));
    EXPECT_EQ(lineWith([](auto& l) { l.keep = -1; }), At(Fault::Negative, "keep"));
    EXPECT_EQ(lineWith([](auto& l) { l.openedDays = 0; }), At(Fault::NotPositive, "opened_days"));
    EXPECT_EQ(lineWith([](auto& l) { l.note = "\xff"; }), At(Fault::NotText, "note"));
}

TEST_F(StockVerbsTest, ANewLineMayComeWithItsFirstCount) {
    EXPECT_EQ(must(saying(addStockLine, {.name = "spark plug"}, 4)), "added spark plug on the shelf");
    EXPECT_EQ(ledger().all<stock::StockMove>().back().why, stock::StockWhy::Counted);
    const auto line = ledger().all<stock::StockMove>().back().line;
    EXPECT_EQ(ledger().find<stock::StockLine>(line)->name, "spark plug");
    EXPECT_EQ(book().onHand(line)->amount, 4);
    const auto rows = ledger().rows();
    EXPECT_EQ(refusedAt(saying(addStockLine, {.name = "link"}, -1)), At(Fault::Negative, "counted"));
    EXPECT_EQ(refusedAt(saying(addStockLine, {.name = "Spark Plug"}, 1)), At(Fault::Duplicate, "name"));
    EXPECT_EQ(ledger().rows(), rows);
}

TEST_F(StockVerbsTest, ALineKeepsTheUnitItWasCountedIn) {
    stock::StockLine card = *ledger().find<stock::StockLine>(oil);
    card.unit = stock::Unit::Gram;
    EXPECT_EQ(refusedAt(saying(saveStockLine, card)), At(Fault::WrongUnit, "unit"));
}

TEST_F(StockVerbsTest, SavesAContainer) {
    stock::Lot lot{.line = oil, .label = "B", .received = day("2026-03-01")};
    EXPECT_EQ(must(saying(saveLot, lot)), "added a container of engine oil");
    lot.id = last<stock::Lot>();
    lot.opened = day("2026-03-05");
    EXPECT_EQ(must(saying(saveLot, lot)), "changed a container of engine oil");
    const auto at = [&](auto&& spoil) {
        stock::Lot other = lot;
        spoil(other);
        return refusedAt(saying(saveLot, other));
    };
    EXPECT_EQ(at([](auto&) {}), At(Fault::NothingToDo, "id"));
    EXPECT_EQ(at([](auto& l) { l.line = StockLineId{1}; }), At(Fault::Unknown, "line"));
    EXPECT_EQ(at([](auto& l) { l.id = LotId{1}; }), At(Fault::Unknown, "id"));
    EXPECT_EQ(at([](auto& l) { l.received = day("2026-05-21"); }), At(Fault::OutOfOrder, "opened"));
    EXPECT_EQ(at([](auto& l) { l.opened = day("2026-05-21"); }), At(Fault::InFuture, "opened"));
    EXPECT_EQ(at([](auto& l) { l.bestBefore = calendar::Date{900'000}; }),
              At(Fault::NotADate, "best_before"));
    must(saying(saveStockLine, stock::StockLine{.name = "spark plug"}));
    EXPECT_EQ(at([this](auto& l) { l.line = last<stock::StockLine>(); }), At(Fault::Inconsistent, "line"));
}

TEST_F(StockVerbsTest, BooksInAndOut) {
    EXPECT_EQ(
        must(saying(moveStock,
                    stock::StockMove{.line = oil, .lot = bottle, .date = day("2026-03-01"), .amount = 50},
                    noLot)),
        "took 50 ml of engine oil off the shelf");
    EXPECT_EQ(ledger().all<stock::StockMove>().back().amount, -50);
    EXPECT_EQ(ledger().find<stock::Lot>(bottle)->opened, day("2026-03-01"));
    EXPECT_EQ(must(saying(moveStock,
                          stock::StockMove{
                              .line = oil, .date = day("2026-03-02"), .amount = -20, .why = StockWhy::Lost},
                          noLot)),
              "booked 20 ml of engine oil as lost");
    EXPECT_EQ(book().onHand(oil)->amount, 930);
    must(saying(saveStockLine, stock::StockLine{.name = "spark plug"}));
    EXPECT_EQ(must(saying(moveStock,
                          stock::StockMove{.line = last<stock::StockLine>(),
                                           .date = day("2026-03-02"),
                                           .amount = 3,
                                           .why = StockWhy::Bought},
                          noLot)),
              "booked in 3 × spark plug");
}

TEST_F(StockVerbsTest, RefusesAMoveThatCannotBe) {
    EXPECT_EQ(moveWith([](auto& m) { m.line = StockLineId{1}; }), At(Fault::Unknown, "line"));
    EXPECT_EQ(moveWith([](auto& m) { m.lot = LotId{1}; }), At(Fault::Unknown, "lot"));
    EXPECT_EQ(moveWith([](auto& m) { m.order = StockOrderId{1}; }), At(Fault::Unknown, "stock_order"));
    EXPECT_EQ(moveWith([](auto& m) { m.record = RecordId{1}; }), At(Fault::Unknown, "record"));
    EXPECT_EQ(moveWith([](auto& m) { m.date = day("2026-05-21"); }), At(Fault::InFuture, "date"));
    EXPECT_EQ(moveWith([](auto& m) { m.amount = 0; }), At(Fault::NotPositive, "amount"));
    EXPECT_EQ(moveWith([](auto& m) { m.amount = std::numeric_limits<std::int64_t>::min(); }),
              At(Fault::TooLarge, "amount"));
    EXPECT_EQ(moveWith([](auto& m) { m.amount = std::numeric_limits<std::int64_t>::max(); }),
              At(Fault::TooLarge, "amount"));
    EXPECT_EQ(moveWith([](auto& m) { m.why = StockWhy::Bought; }), At(Fault::Negative, "amount"));
    EXPECT_EQ(moveWith([](auto& m) { m.price = units::Money{-1}; }), At(Fault::Negative, "price"));
    EXPECT_EQ(moveWith([](auto& m) { m.note = "\xff"; }), At(Fault::NotText, "note"));
    must(saying(saveStockLine, stock::StockLine{.name = "spark plug"}));
    EXPECT_EQ(moveWith([this](auto& m) {
                  m.line = last<stock::StockLine>();
                  m.lot = bottle;
              }),
              At(Fault::Inconsistent, "lot"));
    const stock::StockMove used{.line = oil, .date = day("2026-03-01"), .amount = -5};
    EXPECT_EQ(refusedAt(saying(moveStock, used, std::optional(stock::Lot{}))),
              At(Fault::Inconsistent, "lot"));
}

TEST_F(StockVerbsTest, APurchaseWorksAnOrderOff) {
    EXPECT_EQ(
        must(saying(orderStock, stock::StockOrder{.line = oil, .date = day("2026-03-01"), .amount = 2000})),
        "ordered 2000 ml of engine oil");
    EXPECT_EQ(book().onHand(oil)->onOrder, 2000);
    must(saying(moveStock,
                stock::StockMove{.line = oil,
                                 .date = day("2026-03-05"),
                                 .amount = 1000,
                                 .why = StockWhy::Bought,
                                 .order = last<stock::StockOrder>()},
                std::optional(stock::Lot{.label = "C", .bestBefore = day("2028-01-01")})));
    EXPECT_EQ(book().onHand(oil)->onOrder, 1000);
    EXPECT_EQ(ledger().all<stock::Lot>().back().received, day("2026-03-05"));
    EXPECT_EQ(ledger().all<stock::StockMove>().back().lot, last<stock::Lot>());
    EXPECT_EQ(orderWith([](auto& o) { o.line = StockLineId{1}; }), At(Fault::Unknown, "line"));
    EXPECT_EQ(orderWith([](auto& o) { o.amount = 0; }), At(Fault::NotPositive, "amount"));
    EXPECT_EQ(orderWith([](auto& o) { o.amount = 100'000'001; }), At(Fault::TooLarge, "amount"));
    EXPECT_EQ(orderWith([](auto& o) { o.date = day("2026-05-21"); }), At(Fault::InFuture, "date"));
    EXPECT_EQ(orderWith([](auto& o) { o.expected = day("2026-02-28"); }), At(Fault::OutOfOrder, "expected"));
    EXPECT_EQ(orderWith([](auto& o) { o.note = "\xff"; }), At(Fault::NotText, "note"));
}

TEST_F(StockVerbsTest, CountsTheShelf) {
    must(saying(
        moveStock,
        stock::StockMove{.line = oil, .date = day("2026-03-01"), .amount = 1000, .why = StockWhy::Bought},
        std::optional(stock::Lot{.label = "B"})));
    const std::optional<LotId> whole{};
    EXPECT_EQ(must(saying(countStock, oil, whole, 700, today)), "counted 700 ml of engine oil");
    // 1300 are missing: the older bottle is empty, the other one has 700.
    EXPECT_EQ(book().onHand(oil)->amount, 700);
    EXPECT_EQ(ledger().all<stock::StockMove>().back().amount, -300);
    EXPECT_EQ(refusedAt(saying(countStock, oil, whole, 700, today)), At(Fault::NothingToDo, "counted"));
    must(saying(countStock, oil, std::optional(bottle), 100, today));
    EXPECT_EQ(book().onHand(oil)->amount, 800);
    EXPECT_EQ(refusedAt(saying(countStock, oil, whole, -1, today)), At(Fault::Negative, "counted"));
    EXPECT_EQ(refusedAt(saying(countStock, oil, whole, 100'000'001, today)), At(Fault::TooLarge, "counted"));
    EXPECT_EQ(refusedAt(saying(countStock, StockLineId{1}, whole, 1, today)), At(Fault::Unknown, "line"));
    EXPECT_EQ(refusedAt(saying(countStock, oil, std::optional(LotId{1}), 1, today)),
              At(Fault::Unknown, "lot"));
    EXPECT_EQ(refusedAt(saying(countStock, oil, whole, 1, day("2026-05-21"))), At(Fault::InFuture, "date"));
}

class JointVerbsTest : public testing::Test, public FurnishedBench {};

TEST_F(JointVerbsTest, MarksJoints) {
    const auto marks = [&](std::vector<MarkKind> kinds) {
        std::vector<fastening::JointMark> result;
        for (const MarkKind kind : kinds)
            result.push_back({.joint = axle, .date = day("2026-03-01"), .kind = kind});
        return saying(markJoints, result);
    };
    EXPECT_EQ(must(marks({MarkKind::Loosened})), "loosened rear axle nut on Heron 250");
    EXPECT_EQ(must(marks({MarkKind::Confirmed})), "torqued rear axle nut on Heron 250");
    EXPECT_EQ(must(marks({MarkKind::FoundFine})), "found rear axle nut fine on Heron 250");
    EXPECT_EQ(must(marks({MarkKind::FoundMoved})), "found rear axle nut moved on Heron 250");
    EXPECT_EQ(book().handTight(heron).size(), 1U);
    EXPECT_EQ(must(marks({MarkKind::Confirmed, MarkKind::Confirmed})), "torqued 2 joints on Heron 250");
    EXPECT_EQ(must(marks({MarkKind::FoundMoved, MarkKind::Confirmed})), "marked 2 joints on Heron 250");
    EXPECT_TRUE(book().handTight(heron).empty());
    EXPECT_EQ(refusedAt(marks({})), At(Fault::NothingToDo, "marks"));
}

TEST_F(JointVerbsTest, RefusesAMarkThatCannotBe) {
    const auto at = [&](auto&& spoil) {
        std::vector<fastening::JointMark> marks(2, {.joint = axle, .date = day("2026-03-01")});
        spoil(marks[1]);
        return refusedAt(saying(markJoints, marks));
    };
    EXPECT_EQ(at([](auto& m) { m.joint = JointId{1}; }), At(Fault::Unknown, "marks[1].joint"));
    EXPECT_EQ(at([](auto& m) { m.by = PersonId{1}; }), At(Fault::Unknown, "marks[1].by_person"));
    EXPECT_EQ(at([](auto& m) { m.record = RecordId{1}; }), At(Fault::Unknown, "marks[1].record"));
    EXPECT_EQ(at([](auto& m) { m.date = day("2026-05-21"); }), At(Fault::InFuture, "marks[1].date"));
    EXPECT_EQ(at([](auto& m) { m.date = day("2026-01-01"); }), At(Fault::BeforeItsTime, "marks[1].date"));
    EXPECT_EQ(at([](auto& m) {
                  m.torque = units::Decimal{0, 0};
              }),
              At(Fault::NotPositive, "marks[1].torque"));
    EXPECT_EQ(at([](auto& m) { m.note = "\xff"; }), At(Fault::NotText, "marks[1].note"));
}

}  // namespace
}  // namespace wm::verbs
