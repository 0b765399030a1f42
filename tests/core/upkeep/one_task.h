// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include "tests/core/made.h"

namespace wm::upkeep {

/// One task of one machine. Rides are of round lengths so that every figure can be added up in the head.
class OneTask : public testing::Test {
  protected:
    made::Made make;
    usage::UseFacts use;
    made::Case it;

    void ride(std::string_view date, std::string_view noted) {
        use.outings.push_back(make.outing(date, noted));
        it.atoms = usage::atomsOf(use);
    }
    void past(std::string_view low, std::string_view best, std::string_view high) {
        it.atoms = items::withPast(made::usedMachine("2026-01-01", low, best, high), usage::atomsOf(use));
        it.startedNew = false;
    }
};

}  // namespace wm::upkeep
