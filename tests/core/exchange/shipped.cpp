// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/exchange/shipped.h"

#include <gtest/gtest.h>

#include "tests/core/exchange/schema_check.h"

namespace wm::test {

std::string shippedText(const std::string& file) {
    return repositoryText("resources/starters/" + file);
}

exchange::Starter shippedStarter(const std::string& file) {
    auto starter = exchange::readStarter(shippedText(file));
    if (!starter) {
        const base::Error& error = starter.error();
        ADD_FAILURE() << file << ": " << error.field << " given " << error.given << " wanted "
                      << error.wanted;
        return {};
    }
    return *std::move(starter);
}

}  // namespace wm::test
