// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/order/order_files.h"

#include <fstream>

#include "tests/repository.h"

namespace wm::order {

Json fileOf(const std::string& name) {
    std::ifstream in(test::repositoryPath("tests/data/order/" + name));
    return Json::parse(in);
}

const Truths& truths() {
    static const Truths kTruths(fileOf("truths.json"));
    return kTruths;
}

}  // namespace wm::order
