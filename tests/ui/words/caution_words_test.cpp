// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/caution_words.h"

#include <gtest/gtest.h>

#include <set>

namespace wm::ui {
namespace {

TEST(CautionWordsTest, NamesHazardRemedyAndWhoDecidesForEveryHazard) {
    std::set<QString> seen;
    for (std::size_t at = 0; at < base::Names<upkeep::Hazard>::names.size(); ++at) {
        const CautionWords words = cautionWords(static_cast<upkeep::Hazard>(at));
        EXPECT_FALSE(words.hazard.isEmpty());
        EXPECT_TRUE(words.doThis.endsWith('.')) << words.hazard.toStdString();
        EXPECT_TRUE(words.deferTo.endsWith('.')) << words.hazard.toStdString();
        EXPECT_TRUE(seen.insert(words.hazard).second) << words.hazard.toStdString();
    }
}

TEST(CautionWordsTest, SendsTheShockToAWorkshop) {
    EXPECT_TRUE(cautionWords(upkeep::Hazard::GasCharged).deferTo.contains(QStringLiteral("workshop")));
}

}  // namespace
}  // namespace wm::ui
