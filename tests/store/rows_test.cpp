// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <limits>
#include <map>
#include <set>

#include "core/store/migration.h"
#include "core/store/reading.h"
#include "core/store/recorder.h"
#include "core/store/row_shape.h"
#include "core/store/seal_total.h"
#include "core/store/writing.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

using picture::Row;
using sample::Folder;

class RowsTest : public testing::Test {
  protected:
    void SetUp() override {
        connection_ =
            std::make_unique<Connection>(folder_.path("rows.wm"), Connection::Mode::Creating, Options{});
        connection_->harden();
        connection_->trustSchema();
        layOut(*connection_, currentSchema());
    }
    void write(const std::vector<Row>& rows) {
        Transaction writing(*connection_, Transaction::Kind::Writing);
        RowWriter writer(*connection_);
        const Recorder recorder(*connection_);
        for (const Row& row : rows)
            writer.write(row);
        moveTotal(*connection_, recorder.changes());
        writing.commit();
    }
    // What the file says when `row` is to be written: the words of the CHECK, or nothing.
    std::string refusal(const Row& row) {
        try {
            write({row});
            return {};
        } catch (const Failure& failure) {
            return failure.what();
        }
    }

    Folder folder_;
    std::unique_ptr<Connection> connection_;
};

TEST_F(RowsTest, ComeBackAsTheyWereWritten) {
    const std::vector<Row> rows = sample::everyRow();
    std::set<std::size_t> types;
    for (const Row& row : rows)
        types.insert(row.index());
    ASSERT_EQ(types.size(), picture::kTables) << "the sample leaves a row type out";
    write(rows);
    EXPECT_EQ(readPicture(*connection_).ledger.rows(), picture::Ledger(rows).rows());
}

TEST_F(RowsTest, EveryFieldOfTheSampleIsFilled) {
    // A field that is everywhere at its default would prove nothing when it comes back.
    std::map<std::string, bool> filled;
    for (const Row& each : sample::everyRow())
        std::visit(
            [&](const auto& row) {
                using R = std::decay_t<decltype(row)>;
                std::vector<std::string> defaults;
                const R empty{};
                R::fields(row, [&](std::string_view name, const auto& member) {
                    using Member = std::decay_t<decltype(member)>;
                    R::fields(empty, [&](std::string_view other, const auto& unset) {
                        if constexpr (std::is_same_v<std::decay_t<decltype(unset)>, Member>)
                            if (other == name)
                                filled[std::string(R::kTable) + "." + std::string(name)] |=
                                    !(unset == member);
                    });
                });
            },
            each);
    for (const auto& [field, isFilled] : filled)
        EXPECT_TRUE(isFilled || field == "garage.id") << field;
}

TEST_F(RowsTest, KeepDecimalsAsPrinted) {
    write(sample::everyRow());
    const auto ledger = readPicture(*connection_).ledger;
    const auto& joint = ledger.all<fastening::JointVersion>().front();
    EXPECT_EQ(joint.torque->text(), "20.00");
    EXPECT_EQ(joint.torqueHigh->text(), "22.0");
    EXPECT_EQ(ledger.all<upkeep::Record>().front().measured.back().value.text(), "-0.5");
}

TEST_F(RowsTest, HoldTheEndsOfTheirRange) {
    usage::Outing outing;
    outing.id = OutingId{std::numeric_limits<std::int64_t>::max()};
    outing.entered = 1;
    outing.machine = MachineId{sample::kMachine};
    outing.hours = units::Hours{2'400};
    outing.distance = units::Metres{3'000'000};
    outing.date = calendar::makeDate(2199, 12, 31).value();
    outing.note = std::string("a\nb") + std::string(19'000, 'x');
    auto rows = sample::oneMachine();
    rows.emplace_back(outing);
    write(rows);
    EXPECT_EQ(readPicture(*connection_).ledger.all<usage::Outing>().front(), outing);
}

TEST_F(RowsTest, ReplaceACardWithItsChildren) {
    write(sample::everyRow());
    auto ledger = readPicture(*connection_).ledger;
    outlook::Event event = ledger.all<outlook::Event>().front();
    event.calledOff = true;
    event.entries.pop_back();
    write({event});
    EXPECT_EQ(readPicture(*connection_).ledger.all<outlook::Event>(), std::vector{event});
}

TEST_F(RowsTest, AreNeverChangedIfTheyAreFacts) {
    write(sample::everyRow());
    eachRowType([this](auto row) {
        using R = decltype(row);
        if constexpr (R::kKind != base::RowKind::Editable) {
            try {
                run(connection_->handle(),
                    "UPDATE \"" + std::string(R::kTable) + "\" SET entered = entered + 1");
                ADD_FAILURE() << R::kTable << " can be changed";
            } catch (const Failure& failure) {
                EXPECT_NE(std::string(failure.what()).find("never changed"), std::string::npos);
            }
        }
    });
}

TEST_F(RowsTest, AreRefusedIfTheySayWhatCannotBe) {
    write(sample::everyRow());
    usage::Outing outing;
    outing.id = OutingId{900};
    outing.entered = 99;
    outing.machine = MachineId{sample::kMachine};
    EXPECT_EQ(refusal(outing), "");
    outing.id = OutingId{901};
    outing.starts = -1;
    EXPECT_NE(refusal(outing).find("starts >= 0"), std::string::npos);

    weekend::Pick pick{PickId{902}, MachineId{sample::kMachine}, TaskId{21}, SnagId{40}, true};
    EXPECT_NE(refusal(pick).find("(task IS NULL) <> (snag IS NULL)"), std::string::npos);

    items::Move move{MoveId{903},
                     99,
                     ItemId{2},
                     sample::day(3, 1),
                     calendar::DayPart::Riding,
                     items::MoveKind::Fitted,
                     {},
                     {},
                     "rear wheel",
                     ""};
    EXPECT_NE(refusal(move).find("kind = 'fitted'"), std::string::npos);
    move.parent = ItemId{2};
    EXPECT_NE(refusal(move).find("parent IS NOT item"), std::string::npos);

    outing.starts = 0;
    outing.machine = MachineId{777};
    EXPECT_NE(refusal(outing).find("FOREIGN KEY"), std::string::npos);
}

TEST_F(RowsTest, MayComeInAnyOrder) {
    auto rows = sample::everyRow();
    std::reverse(rows.begin(), rows.end());
    write(rows);
    EXPECT_EQ(readPicture(*connection_).ledger.rows(), picture::Ledger(rows).rows());
}

TEST_F(RowsTest, ThatCannotBeReadAreNamed) {
    write(sample::everyRow());
    run(connection_->handle(), "PRAGMA ignore_check_constraints = ON");
    run(connection_->handle(), "INSERT INTO crash VALUES (904, 99, 1001, '2026-02-30', NULL, '')");
    try {
        readPicture(*connection_);
        ADD_FAILURE() << "30 February was read";
    } catch (const Unreadable& row) {
        EXPECT_STREQ(row.what(),
                     "table crash, row 904, column date holds what is not known here: 2026-02-30");
    }
}

}  // namespace
}  // namespace wm::store
