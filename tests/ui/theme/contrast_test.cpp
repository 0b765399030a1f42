// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/contrast.h"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "ui/theme/tokens.h"

namespace wm::ui {
namespace {

// Known pairs: 21:1 for black on white stands in WCAG 2.2, "contrast ratio"; #777777 at 4.48:1 and #767676 at
// 4.54:1 are the pair about the limit in WebAIM, "Contrast and Color Accessibility", section "Text contrast".
TEST(ContrastRatio, AgreesWithPublishedPairs) {
    EXPECT_NEAR(contrastRatio(Qt::black, Qt::white), 21.0, 1e-9);
    EXPECT_NEAR(contrastRatio(Qt::white, Qt::white), 1.0, 1e-9);
    EXPECT_NEAR(contrastRatio(QColor("#777777"), Qt::white), 4.48, 0.005);
    EXPECT_NEAR(contrastRatio(QColor("#767676"), Qt::white), 4.54, 0.005);
}

TEST(ContrastRatio, CountsTranslucentTextAsWhatIsSeen) {
    EXPECT_NEAR(contrastRatio(QColor(0, 0, 0, 0), Qt::white), 1.0, 1e-6);
    EXPECT_LT(contrastRatio(QColor(0, 0, 0, 128), Qt::white), contrastRatio(Qt::black, Qt::white));
}

TEST(ContrastRatio, DoesNotCareWhichOfTheTwoIsLighter) {
    const QColor one("#8F5015");
    const QColor other("#F5F3EE");
    EXPECT_DOUBLE_EQ(contrastRatio(one, other), contrastRatio(other, one));
}

class TokenContrast : public testing::TestWithParam<std::string> {};

std::vector<std::pair<std::string, QColor>> grounds(const Tokens& tokens) {
    return {{"paper", tokens.paper},
            {"sheet", tokens.sheet},
            {"chosen row on paper", laidOver(tokens.select, tokens.paper)},
            {"chosen row on sheet", laidOver(tokens.select, tokens.sheet)}};
}

TEST_P(TokenContrast, TextReachesFourAndAHalf) {
    const Tokens tokens = GetParam() == "Dark" ? darkTokens() : lightTokens();
    const std::vector<std::pair<std::string, QColor>> texts = {{"ink", tokens.ink},
                                                               {"pencil", tokens.pencil},
                                                               {"due", tokens.due},
                                                               {"over", tokens.over},
                                                               {"unmarked", tokens.unmarked}};
    for (const auto& [groundName, ground] : grounds(tokens)) {
        for (const auto& [textName, text] : texts) {
            const double ratio = contrastRatio(text, ground);
            RecordProperty(textName + " on " + groundName, std::to_string(ratio));
            EXPECT_GE(ratio, kTextContrast) << textName << " on " << groundName;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Themes, TokenContrast, testing::Values("Light", "Dark"),
                         [](const auto& param) { return param.param; });

}  // namespace
}  // namespace wm::ui
