// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/used_parts.h"

#include <gtest/gtest.h>

#include "tests/ui/garage.h"
#include "ui/words/error_words.h"

namespace wm::ui {
namespace {

class UsedParts : public testing::Test {
  protected:
    std::string read(const char* typed) {
        const auto uses = parseUses(garage_.book(), QString::fromUtf8(typed));
        if (!uses)
            return "refused " + std::to_string(static_cast<int>(uses.error().fault));
        return usesText(garage_.book(), *uses).toStdString();
    }
    static std::string refused(base::Fault fault) {
        return "refused " + std::to_string(static_cast<int>(fault));
    }

    Garage garage_{Garage::Fill::Season};
};

TEST_F(UsedParts, ReadsNamesAndAmounts) {
    EXPECT_EQ(read("engine oil 10W-40 850 ml; oil filter 1"), "engine oil 10W-40 850 ml; oil filter 1");
    EXPECT_EQ(read("oil filter"), "oil filter 1");
    EXPECT_EQ(read("  ; "), "");
}

TEST_F(UsedParts, TakesAnyPartOfANameThatOnlyOneLineHas) {
    EXPECT_EQ(read("grease 25 g"), "waterproof grease 25 g");
    EXPECT_EQ(read("FORK 0,7 l"), "fork oil 5W 700 ml");
    EXPECT_EQ(read("grease 0.025 kg"), "waterproof grease 25 g");
    EXPECT_EQ(read("1,1 l fork oil 5W"), "fork oil 5W 1100 ml");
    EXPECT_EQ(read("25 g grease"), "waterproof grease 25 g");
    EXPECT_EQ(read("oil 100 ml"), refused(base::Fault::Unknown));
    EXPECT_EQ(read("brake fluid 100 ml"), refused(base::Fault::Unknown));
}

TEST_F(UsedParts, NamesTheLinesThatAnAmbiguousNameFits) {
    const auto uses = parseUses(garage_.book(), QStringLiteral("oil 100 ml"));
    ASSERT_FALSE(uses);
    const QString words = wordsFor(uses.error());
    EXPECT_TRUE(words.startsWith(QStringLiteral("The part or fluid “oil” "))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("fork oil 5W"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("engine oil 10W-40"))) << words.toStdString();
}

TEST_F(UsedParts, RefusesAmountsThatCannotBe) {
    EXPECT_EQ(read("oil filter 1 ml"), refused(base::Fault::WrongUnit));
    EXPECT_EQ(read("oil filter 0"), refused(base::Fault::NotPositive));
    EXPECT_EQ(read("oil filter -2"), refused(base::Fault::NotPositive));
    EXPECT_EQ(read("oil filter 1.5"), refused(base::Fault::NotANumber));
    EXPECT_EQ(read("fork oil 5W 0.0001 l"), refused(base::Fault::NotPositive));
    EXPECT_EQ(read("fork oil 5W 100 l"), "fork oil 5W 100000 ml");
    EXPECT_EQ(read("fork oil 5W 99999 l"), refused(base::Fault::TooLarge));
}

}  // namespace
}  // namespace wm::ui
