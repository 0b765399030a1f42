// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <set>

#include "tests/core/verbs/bench.h"

// Whatever is said to a file in whatever order: what is refused changes nothing, and what is accepted leaves
// a file that could be taken in as a whole.

namespace wm::verbs {

using book::Book;
using book::OpenJoint;
using picture::Ledger;

namespace {

using items::MoveKind;

/// Something that a person might say, in numbers: what, on which day, and three details.
struct Said {
    int what;
    int on;
    std::int64_t a;
    std::int64_t b;
    bool yes;
};

// Of full range from the first case on; rapidcheck would begin with small numbers.
rc::Gen<std::vector<Said>> talkOf(int most) {
    const auto said = rc::gen::map(
        rc::gen::tuple(rc::gen::inRange(0, 20), rc::gen::inRange(-5, 160),
                       rc::gen::inRange<std::int64_t>(-1, 12), rc::gen::inRange<std::int64_t>(-50, 3'000),
                       rc::gen::arbitrary<bool>()),
        [](const auto& t) { return std::apply([](auto... values) { return Said{values...}; }, t); });
    const auto saids = rc::gen::mapcat(rc::gen::inRange(0, most), [said](int count) {
        return rc::gen::container<std::vector<Said>>(static_cast<std::size_t>(count), said);
    });
    return rc::gen::resize(rc::kNominalSize, saids);
}

void showValue(const Said& said, std::ostream& out) {
    out << said.what << " on " << said.on << ": " << said.a << ' ' << said.b << ' ' << said.yes;
}

template <class R>
decltype(R::id) anyOf(const Ledger& ledger, std::int64_t which) {
    const auto& rows = ledger.all<R>();
    if (rows.empty() || which < 0)
        return decltype(R::id){3};  // not there
    return rows[static_cast<std::size_t>(which) % rows.size()].id;
}

class Talk : public FurnishedBench {
  public:
    std::set<int> accepted;  ///< the kinds of things that were accepted at least once

    void hear(const Said& said) {
        const auto before = ledger().rows();
        const auto change = say(verbOf(said));
        if (change) {
            accepted.insert(said.what);
            RC_ASSERT(!change->text.empty());
            RC_ASSERT(!change->rows.empty());
        } else {
            RC_ASSERT(ledger().rows() == before);
        }
    }

  private:
    [[nodiscard]] calendar::Date dayOf(const Said& said) const { return day("2026-01-10").plusDays(said.on); }
    [[nodiscard]] TaskId taskOf(const Said& said) const { return said.a % 2 == 0 ? oilChange : pads; }
    [[nodiscard]] ItemId itemOf(const Said& said) const { return anyOf<items::Item>(ledger(), said.a); }

    [[nodiscard]] Verb verbOf(const Said& said) const {
        return said.what < 7 ? useOf(said) : said.what < 13 ? workOf(said) : otherOf(said);
    }

    [[nodiscard]] Verb useOf(const Said& s) const {
        const usage::Outing outing{
            .machine = heron, .date = dayOf(s), .hours = units::Hours{s.b / 10}, .starts = s.a};
        const auto shown = units::Hours{s.on * 100 + s.b / 20};
        switch (s.what) {
            case 0:
                return ride({.outing = outing, .washed = s.yes, .handTightSeen = s.a > 5});
            case 1:
                return ride({.outing = outing, .meterAfter = shown, .crashed = s.yes, .handTightSeen = true});
            case 2:
                return saying(logReading, {.machine = heron, .date = dayOf(s), .shown = shown});
            case 3:
                return saying(
                    logDistance,
                    {.machine = heron, .date = dayOf(s), .shown = units::Metres{s.on * 1000 + s.b}});
            case 4:
                return saying(logWash, {.machine = heron, .date = dayOf(s), .pressure = s.yes});
            case 5:
                return saying(logCrash, {.machine = heron, .date = dayOf(s)});
            default:
                return saying(saveItem, {.name = "spare", .since = dayOf(s), .startedNew = s.yes});
        }
    }

    [[nodiscard]] Verb workOf(const Said& s) const {
        JobDraft draft{.record = {.machine = heron, .task = taskOf(s), .date = dayOf(s)}};
        switch (s.what) {
            case 7:
                if (s.yes)
                    draft.record.uses = {{.line = oil, .amount = s.b}};
                draft.record.steps = {{"rear-wheel"}};
                if (s.a > 5)
                    draft.confirmed = {axle};
                return record(draft);
            case 8:
                draft.record.kind = s.yes ? upkeep::RecordKind::Baseline : upkeep::RecordKind::LookedFine;
                draft.record.meter = units::Hours{s.on * 100 + s.b / 20};
                return record(draft);
            case 9:
                return saying(addSnag, {.machine = heron, .date = dayOf(s), .what = std::to_string(s.a)});
            case 10:
                draft.record.task.reset();
                draft.record.snag = anyOf<upkeep::Snag>(ledger(), s.a);
                return s.yes ? record(draft)
                             : saying(endSnag, {.snag = *draft.record.snag, .date = dayOf(s)});
            case 11:
                return saying(defer, {.machine = heron,
                                      .task = taskOf(s),
                                      .date = dayOf(s),
                                      .untilDate = today.plusDays(static_cast<std::int32_t>(s.a)),
                                      .reason = s.yes ? std::to_string(s.b) : std::string{}});
            default:
                return saying(markJoints, {{.joint = axle,
                                            .date = dayOf(s),
                                            .kind = s.yes ? fastening::MarkKind::Confirmed
                                                          : fastening::MarkKind::FoundMoved}});
        }
    }

    [[nodiscard]] Verb otherOf(const Said& s) const {
        items::Move move{.item = itemOf(s), .date = dayOf(s), .machine = heron, .position = "rear wheel"};
        switch (s.what) {
            case 13:
                move.kind = static_cast<MoveKind>(s.b & 3);
                return saying(moveItem, move);
            case 14:
                return saying(swapItem, move, s.yes ? MoveKind::Removed : MoveKind::Away);
            case 15:
                return saying(moveStock,
                              {.line = oil,
                               .date = dayOf(s),
                               .amount = s.b,
                               .why = s.yes ? stock::StockWhy::Bought : stock::StockWhy::Lost},
                              s.yes ? std::optional(stock::Lot{}) : std::nullopt);
            case 16:
                return saying(countStock, oil, std::nullopt, s.b, dayOf(s));
            case 17:
                return saying(pick, heron, taskOf(s), std::nullopt, s.yes);
            case 18: {
                auto version = *book().task(taskOf(s));
                version.limits[0].every = s.b;
                version.validFrom = dayOf(s);
                return saying(saveTask, version);
            }
            default:
                return saying(strike, anyFact(s), s.yes ? "mistyped" : "");
        }
    }

    [[nodiscard]] std::int64_t anyFact(const Said& s) const {
        switch (s.b % 5) {
            case 0:
                return anyOf<usage::Outing>(ledger(), s.a).value();
            case 1:
                return anyOf<items::Move>(ledger(), s.a).value();
            case 2:
                return anyOf<usage::HourReading>(ledger(), s.a).value();
            case 3:
                return anyOf<stock::StockMove>(ledger(), s.a).value();
            default:
                return anyOf<upkeep::Record>(ledger(), s.a).value();
        }
    }
};

// What the book says of the machine and its things, to be compared.
auto figures(const FurnishedBench& bench) {
    const Book book = bench.book();
    std::vector<std::string> open;
    for (const OpenJoint& joint : book.handTight(bench.heron))
        open.push_back(joint.joint->name);
    return std::tuple(book.life(bench.heron), book.life(bench.engine), book.life(bench.wheel),
                      book.meterNow(bench.heron), book.onHand(bench.oil)->amount, open,
                      book.snags(bench.heron).size());
}

TEST(LongVerbsPropertyTest, AFileStaysOneThatCanBeTakenIn) {
    std::set<int> accepted;
    EXPECT_TRUE(rc::check("every talk leaves a sound file", [&] {
        Talk talk;
        const auto saids = *talkOf(40).as("what is said");
        for (const Said& said : saids)
            talk.hear(said);
        accepted.insert(talk.accepted.begin(), talk.accepted.end());

        const Ledger& ledger = talk.ledger();
        const Ledger anew(ledger.rows());
        RC_ASSERT(anew.rows() == ledger.rows());
        RC_ASSERT(anew.nextEntered() == ledger.nextEntered());
        for (const auto& outing : ledger.struck<usage::Outing>())
            RC_ASSERT(anew.strikeOf(outing.id.value()) != nullptr);

        FurnishedBench& original = talk;
        Bench empty;
        const auto adopted = empty.say(saying(adoptAll, ledger.rows()));
        if (!adopted)
            RC_FAIL(adopted.error().field.text() + ", given " + adopted.error().given);
        RC_ASSERT(empty.ledger().rows() == ledger.rows());
        RC_ASSERT(empty.book().life(original.heron) == original.book().life(original.heron));
    }));
    // A kind that is seldom accepted may miss all of these talks; a few more, always the same, settle it.
    for (std::uint64_t seed = 0; accepted.size() < 20 && seed < 200; ++seed) {
        Talk talk;
        for (const Said& said : talkOf(40)(rc::Random(seed), rc::kNominalSize).value())
            talk.hear(said);
        accepted.insert(talk.accepted.begin(), talk.accepted.end());
    }
    EXPECT_EQ(accepted.size(), 20U) << "some kinds of verb were never accepted: the talk is too wild";
}

TEST(LongVerbsPropertyTest, StrikeAndReEntryGiveEqualFigures) {
    std::size_t corrected = 0;
    EXPECT_TRUE(rc::check("an outing entered again counts as before", [&] {
        Talk talk;
        const auto saids = *talkOf(25).as("what is said");
        for (const Said& said : saids)
            talk.hear(said);
        const auto before = figures(talk);
        const auto noted = talk.ledger().all<usage::Outing>();
        const std::vector<usage::Outing> outings(noted.begin(), noted.end());
        for (const usage::Outing& outing : outings) {
            OutingDraft again{.outing = outing, .handTightSeen = true};
            for (const auto& reading : talk.ledger().all<usage::HourReading>())
                if (reading.outing == outing.id)
                    again.meterAfter = reading.shown;
            for (const auto& wash : talk.ledger().all<usage::Wash>())
                again.washed = again.washed || wash.outing == outing.id;
            for (const auto& crash : talk.ledger().all<usage::Crash>())
                again.crashed = again.crashed || crash.outing == outing.id;
            const auto change = talk.say(saying(correct, outing.id.value(), "entered anew", ride(again)));
            if (!change)
                RC_FAIL(change.error().field.text() + ", given " + change.error().given);
            ++corrected;
        }
        RC_ASSERT(talk.ledger().all<usage::Outing>().size() == outings.size());
        RC_ASSERT(figures(talk) == before);
    }));
    EXPECT_GT(corrected, 50U);
}

}  // namespace
}  // namespace wm::verbs
