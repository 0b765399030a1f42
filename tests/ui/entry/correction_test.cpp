// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QCheckBox>
#include <QLineEdit>
#include <algorithm>
#include <map>

#include "core/exchange/row_json.h"
#include "core/picture/consistency.h"
#include "core/verbs/verbs.h"
#include "tests/ui/garage.h"
#include "ui/entry/entry_form.h"
#include "ui/entry/form_table.h"
#include "ui/pages/machine/history.h"
#include "ui/words/error_words.h"

// A fact that is put right keeps all that was not touched, also what its form has no field for.

namespace wm::ui {
namespace {

class CorrectionTest : public testing::Test {
  protected:
    // The fact that stands for the last one of its kind, once it was opened for correction and only saved.
    template <class Fact>
    Fact savedUnchanged(EntryKind kind) {
        const Fact old = last<Fact>();
        EntryRequest request;
        request.kind = kind;
        request.machine = old.machine;
        request.corrects = old.id.value();
        const auto form = makeForm(garage_.workbench(), request);
        form->findChild<QLineEdit*>(QStringLiteral("reason"))->setText(QStringLiteral("looked again"));
        auto verb = form->saying();
        EXPECT_TRUE(verb.has_value());
        garage_.say(*verb);
        Fact fresh = last<Fact>();
        EXPECT_NE(fresh.id, old.id) << "nothing was written";
        fresh.id = old.id;
        fresh.entered = old.entered;
        EXPECT_EQ(fresh, old);
        return fresh;
    }
    template <class Fact>
    [[nodiscard]] Fact last() const {
        const Fact* last = nullptr;
        for (const Fact& fact : garage_.book().ledger().all<Fact>())
            if (last == nullptr || last->entered < fact.entered)
                last = &fact;
        EXPECT_NE(last, nullptr);
        return last == nullptr ? Fact{} : *last;
    }

    Garage garage_{Garage::Fill::Season};
};

TEST_F(CorrectionTest, AnOutingKeepsItsDistanceAndItsEvent) {
    const auto& events = garage_.book().ledger().all<outlook::Event>();
    ASSERT_FALSE(events.empty());
    verbs::OutingDraft draft;
    draft.outing.machine = garage_.machine("Heron 250");
    draft.outing.date = day("2026-05-06");
    draft.outing.hours = units::Hours(130);
    draft.outing.distance = units::Metres(41'000);
    draft.outing.starts = 3;
    draft.outing.kind = usage::OutingKind::Race;
    draft.outing.ground = usage::Ground::Sand;
    draft.outing.note = "gate four";
    draft.handTightSeen = true;
    garage_.say([draft](const verbs::VerbContext& context) { return verbs::logOuting(context, draft); });
    EXPECT_EQ(savedUnchanged<usage::Outing>(EntryKind::Outing).distance, units::Metres(41'000));
}

TEST_F(CorrectionTest, AnOutingThatNobodyTimedStaysSo) {
    verbs::OutingDraft draft;
    draft.outing.machine = garage_.machine("Heron 250");
    draft.outing.date = day("2026-05-06");
    draft.handTightSeen = true;
    garage_.say([draft](const verbs::VerbContext& context) { return verbs::logOuting(context, draft); });
    EXPECT_EQ(savedUnchanged<usage::Outing>(EntryKind::Outing).hours, std::nullopt);
}

TEST_F(CorrectionTest, ASnagKeepsItsTask) {
    upkeep::Snag snag;
    snag.machine = garage_.machine("Heron 250");
    snag.date = day("2026-05-06");
    snag.what = "chain rattles on the slider";
    snag.task = garage_.book().tasks(snag.machine).front()->task;
    garage_.say([snag](const verbs::VerbContext& context) { return verbs::addSnag(context, snag); });
    EXPECT_EQ(savedUnchanged<upkeep::Snag>(EntryKind::Snag).task, snag.task);
}

TEST_F(CorrectionTest, AWashAndACrashKeepTheirWords) {
    usage::Wash wash;
    wash.machine = garage_.machine("Heron 250");
    wash.date = day("2026-05-06");
    wash.pressure = true;
    wash.note = "degreased";
    garage_.say([wash](const verbs::VerbContext& context) { return verbs::logWash(context, wash); });
    savedUnchanged<usage::Wash>(EntryKind::Wash);
    usage::Crash crash;
    crash.machine = wash.machine;
    crash.date = wash.date;
    crash.note = "left lever";
    garage_.say([crash](const verbs::VerbContext& context) { return verbs::logCrash(context, crash); });
    savedUnchanged<usage::Crash>(EntryKind::Crash);
}

// A fact as text, without its own id, its place in the order, and the ids of what was entered anew with it.
template <class R>
std::string bare(R row) {
    row.id = {};
    if constexpr (requires { row.entered; })
        row.entered = 0;
    if constexpr (requires { row.record->value(); })
        row.record = row.record ? std::optional(RecordId{1}) : std::nullopt;
    if constexpr (requires { row.outing->value(); })
        row.outing = row.outing ? std::optional(OutingId{1}) : std::nullopt;
    if constexpr (requires { row.snag->value(); })
        row.snag = row.snag ? std::optional(SnagId{1}) : std::nullopt;
    else if constexpr (requires { row.snag.value(); })
        row.snag = {};
    if constexpr (std::is_same_v<R, upkeep::FollowUpAnswer>)
        row.origin = 0;
    return std::string(R::kTable) + " " + exchange::jsonOf(row).dump();
}

// All that counts, sorted; a job sheet is paper and stays as it was.
std::vector<std::string> whatCounts(const picture::Ledger& ledger) {
    std::vector<std::string> texts;
    picture::eachTable(ledger, [&]<class R>(picture::RowsView<R> rows) {
        if constexpr (R::kKind == base::RowKind::Fact && !std::is_same_v<R, picture::Strike>)
            for (const R& row : rows)
                texts.push_back(bare(row));
    });
    std::sort(texts.begin(), texts.end());
    return texts;
}

std::string without(const std::vector<std::string>& these, const std::vector<std::string>& those) {
    std::vector<std::string> left;
    std::set_difference(these.begin(), these.end(), those.begin(), those.end(), std::back_inserter(left));
    std::string text;
    for (const auto& each : left)
        text += each + "\n";
    return text;
}

// Facts are opened for correction and saved as they stand: not one word may go, and nothing may come back
// that was settled. At most so many of each kind, the newest first: each costs a whole reckoning of the
// garage.
std::map<EntryKind, int> correctIdly(Garage& garage, int mostOfAKind) {
    std::map<EntryKind, int> corrected;
    const auto before = whatCounts(garage.book().ledger());
    for (const auto& entry : historyOf(garage.book(), std::nullopt)) {
        if (!entry.corrected || corrected[*entry.corrected] >= mostOfAKind ||
            garage.book().ledger().strikeOf(entry.fact) != nullptr)
            continue;
        ++corrected[*entry.corrected];
        EntryRequest request;
        request.kind = *entry.corrected;
        request.machine = entry.machine;
        request.corrects = entry.fact;
        const auto form = makeForm(garage.workbench(), request);
        form->findChild<QLineEdit*>(QStringLiteral("reason"))->setText(QStringLiteral("looked again"));
        if (auto* seen = form->findChild<QCheckBox*>(QStringLiteral("handTightSeen")))
            seen->setChecked(true);
        auto verb = form->saying();
        if (!verb) {
            ADD_FAILURE() << entry.words.toStdString() << ": "
                          << wordsFor(verb.error().front()).toStdString();
            continue;
        }
        garage.say(*verb);
        const auto after = whatCounts(garage.book().ledger());
        EXPECT_EQ(without(before, after), "") << "went with " << entry.words.toStdString();
        EXPECT_EQ(without(after, before), "") << "came with " << entry.words.toStdString();
    }
    return corrected;
}

TEST(IdleCorrectionTest, LeavesASeasonAsItWas) {
    Garage garage(Garage::Fill::Season);
    EXPECT_GE(correctIdly(garage, 3)[EntryKind::Job], 3);
}

TEST(LongIdleCorrectionTest, LeavesTheDemoGarageAsItWas) {
    Garage garage(Garage::Fill::Demo);
    const auto corrected = correctIdly(garage, 2);
    EXPECT_GE(corrected.size(), 4U);
    for (const auto& [kind, count] : corrected)
        EXPECT_GE(count, 1);
}

}  // namespace
}  // namespace wm::ui
