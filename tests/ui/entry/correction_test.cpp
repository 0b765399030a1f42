// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QLineEdit>

#include "core/verbs/verbs.h"
#include "tests/ui/garage.h"
#include "ui/entry/entry_form.h"
#include "ui/entry/form_table.h"

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

}  // namespace
}  // namespace wm::ui
