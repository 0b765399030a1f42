// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Every way by which text comes into a garage, with what no text may hold: it is refused, or it stands there
// harmless; and whatever stands there can be exported and read back.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/definitions/chart.h"
#include "core/exchange/json.h"
#include "core/exchange/starter.h"
#include "tests/core/base/hostile_texts.h"
#include "tests/core/exchange/shipped.h"
#include "tests/core/notebook/notebook_bench.h"

namespace wm::exchange {
namespace {

using notebook::Garage;
using verbs::VerbContext;

template <class T>
void eachText(const T& row, const std::function<void(std::string_view, const std::string&)>& look) {
    T::fields(row, [&](std::string_view name, const auto& member) {
        using M = std::decay_t<decltype(member)>;
        if constexpr (std::is_same_v<M, std::string>)
            look(name, member);
        else if constexpr (requires { member.front().fields(member.front(), [](auto, auto&) {}); })
            for (const auto& child : member)
                eachText(child, look);
    });
}

std::string disturbingText(const picture::Ledger& ledger) {
    std::string found;
    for (const picture::Row& row : ledger.rows())
        std::visit(
            [&](const auto& one) {
                eachText(one, [&](std::string_view name, const std::string& text) {
                    if (test::disturbs(text))
                        found += std::string(one.kTable) + "." + std::string(name) + " ";
                });
            },
            row);
    return found;
}

// What is wrong with the garage's own export; empty if it makes the same garage.
std::string breachOfExport(const picture::Ledger& ledger) {
    const std::string text = toJson(ledger);
    const auto rows = fromJson(text);
    if (!rows)
        return "can't be read: " + rows.error().field.text();
    verbs::Bench fresh;
    const auto taken =
        fresh.say([&rows](const VerbContext& context) { return verbs::adoptAll(context, *rows); });
    if (!taken)
        return "is not taken: " + taken.error().field.text();
    return toJson(fresh.ledger()) == text ? "" : "comes back otherwise";
}

std::string quotedCell(const std::string& text) {
    return '"' + text + '"';
}

void takeNotebook(Garage& garage, const std::string& bytes) {
    (void)garage.say([&](const VerbContext& context) -> base::Result<picture::Change> {
        auto table = notebook::readTable(bytes);
        if (!table)
            return tl::unexpected(table.error());
        const auto read = notebook::readNotebook(std::move(*table), context.book);
        if (!read)
            return tl::unexpected(read.error());
        auto taken = notebook::takeNotebook(context, *read, {.allCures = true}, "n\x1B[1m.csv");
        if (!taken)
            return tl::unexpected(taken.error());
        return std::move(taken->change);
    });
}

void takeLine(Garage& garage, const std::string& machine, const std::string& rider, const std::string& note,
              const std::string& job) {
    takeNotebook(garage, "date;machine;rider;hours;note;job;used\n07.03.2026;" + machine + ";" + rider +
                             ";1,0;" + note + ";\n08.03.2026;Heron 250;;;;" + job + ";\n");
}

struct WayIn {
    const char* name;
    void (*take)(Garage&, const std::string&);
};

void PrintTo(const WayIn& way, std::ostream* out) {
    *out << way.name;
}

template <class... Takes>
void tell(Garage& garage, base::Result<picture::Change> (*verb)(const VerbContext&, Takes...),
          std::type_identity_t<Takes>... given) {
    (void)garage.say(verbs::saying(verb, given...));
}

const WayIn kWaysIn[] = {
    {"nameInAForm", [](Garage& g, const std::string& t) { tell(g, verbs::savePerson, {.name = t}); }},
    {"nameOfTheGarage", [](Garage& g, const std::string& t) { tell(g, verbs::nameGarage, t, {}); }},
    {"wordsInAForm",
     [](Garage& g, const std::string& t) {
         tell(g, verbs::addSnag, {.machine = g.heron, .date = g.today, .what = t});
     }},
    {"noteInAForm",
     [](Garage& g, const std::string& t) {
         tell(g, verbs::logWash, {.machine = g.heron, .date = g.today, .note = t});
     }},
    {"reasonOfAStrike",
     [](Garage& g, const std::string& t) {
         tell(g, verbs::logWash, {.machine = g.heron, .date = g.today});
         tell(g, verbs::strike, g.ledger().all<usage::Wash>().back().id.value(), t);
     }},
    {"machineInANotebook",
     [](Garage& g, const std::string& t) { takeLine(g, quotedCell("Gannet" + t), "", "", ""); }},
    {"riderInANotebook",
     [](Garage& g, const std::string& t) { takeLine(g, "Heron 250", quotedCell(t), "", ""); }},
    {"noteInANotebook",
     [](Garage& g, const std::string& t) { takeLine(g, "Heron 250", "", quotedCell(t), ""); }},
    {"jobInANotebook",
     [](Garage& g, const std::string& t) { takeLine(g, "Heron 250", "", "", quotedCell(t)); }},
    {"partInANotebook",
     [](Garage& g, const std::string& t) {
         takeNotebook(g, "date;machine;job;used\n07.03.2026;Heron 250;air filter;" + quotedCell("2x " + t) +
                             "\n08.03.2026;Heron 250;fork oil;1x seal\n");
     }},
    {"wholeFile",
     [](Garage& g, const std::string& t) {
         auto rows = g.ledger().rows();
         for (picture::Row& row : rows)
             if (auto* machine = std::get_if<items::Machine>(&row)) {
                 machine->note = t;
                 machine->model = t;
             }
         const auto read = fromJson(toJson(picture::Ledger(rows)));
         verbs::Bench fresh;
         if (read && fresh.say([&](const VerbContext& context) { return verbs::adoptAll(context, *read); }))
             static_cast<verbs::Bench&>(g) = fresh;
     }},
    {"starterSchedule",
     [](Garage& g, const std::string& t) {
         auto starter = test::shippedStarter("two-stroke-motocross.json");
         starter.tasks.front().howTo = t;
         starter.tasks.back().name = t;
         tell(g, verbs::saveMachine, {.name = "Gannet", .since = g.today});
         (void)g.say([&](const VerbContext& context) {
             return verbs::adoptSchedule(context, g.last<items::Machine>(), "took over", starter.steps,
                                         starter.joints, starter.tasks);
         });
     }},
    {"pastedTorqueChart",
     [](Garage& g, const std::string& t) {
         const auto chart = definitions::checkChart(
             g.book(), g.heron,
             definitions::readChart(quotedCell(t) + ";M8;1;20;Nm;;;;;12;" + quotedCell(t)));
         (void)g.say(
             [&](const VerbContext& context) { return verbs::saveJoints(context, g.heron, chart.versions); });
     }},
};

const Garage& emptyGarage() {
    static const Garage garage;
    return garage;
}

class WaysIn : public testing::TestWithParam<WayIn> {};

TEST_P(WaysIn, APlainTextGoesIn) {
    Garage garage = emptyGarage();
    GetParam().take(garage, "Ümit's “own” 🏁");
    EXPECT_NE(toJson(garage.ledger()).find("Ümit's “own” 🏁"), std::string::npos);
}

TEST_P(WaysIn, TextThatDisturbsIsRefusedOrHarmless) {
    for (const std::string& text : test::kHostileTexts) {
        Garage garage = emptyGarage();
        GetParam().take(garage, text);
        EXPECT_EQ(disturbingText(garage.ledger()), "") << testing::PrintToString(text);
        EXPECT_EQ(breachOfExport(garage.ledger()), "") << testing::PrintToString(text);
    }
}

INSTANTIATE_TEST_SUITE_P(Text, WaysIn, testing::ValuesIn(kWaysIn),
                         [](const testing::TestParamInfo<WayIn>& one) {
                             return std::string(one.param.name);
                         });

// All of them into one garage.
TEST(EveryWayIn, WhateverIsTakenCanBeExportedAndReadBack) {
    static const std::vector<std::string> kPieces{
        "chain", " ",    "\"\"",         "\\",           "<b>", "\n",   "\t",           "\r\n",
        "\f",    "=1+1", "\xC3\xA9",     "\xE2\x80\x8D", "%1",  ";",    "\xEF\xBB\xBF", "\xF0\x9F\x94\xA7",
        "2x",    "\x0B", "\xE2\x80\xAE", "\xC2\x9B",     "|",   "\x1F", "\xE2\x80\xA8", "ride"};
    EXPECT_TRUE(rc::check([] {
        std::string text;
        for (const std::string& piece :
             *rc::gen::resize(8, rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(kPieces))))
            text += piece;
        Garage garage = emptyGarage();
        for (const WayIn& way : kWaysIn)
            if (std::string_view(way.name) != "wholeFile")
                way.take(garage, text);
        RC_ASSERT(breachOfExport(garage.ledger()) == "");
        RC_ASSERT(disturbingText(garage.ledger()) == "");
    }));
}

}  // namespace
}  // namespace wm::exchange
