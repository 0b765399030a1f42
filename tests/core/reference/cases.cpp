// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/reference/cases.h"
#include "tests/repository.h"

#include <fstream>
#include <stdexcept>

namespace wm::reference {

nlohmann::json caseOf(const std::string& file, const std::string& id) {
    std::ifstream in(test::repositoryPath("tests/reference/" + file + ".json"));
    const auto all = nlohmann::json::parse(in);
    for (const auto& one : all.at("cases"))
        if (one.at("id") == id)
            return one;
    throw std::runtime_error("no case " + id + " in " + file);
}

}  // namespace wm::reference
