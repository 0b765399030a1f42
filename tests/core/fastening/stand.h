// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/book/book.h"
#include "core/fastening/figure.h"

namespace wm::fastening {

/// Machines as they stand in front of somebody who looks a figure up: the schedules that the program brings,
/// with threads, a few figures and settings on top. All of it invented.
std::shared_ptr<const picture::Ledger> standLedger(int machines = 2);
book::Book standBook(int machines = 2);

/// The kind and the code of a figure, as the lists of queries name it: "joint:rear-axle-nut".
std::string pointName(const Figure& figure);

/// One line of tests/data/lookup/queries.json.
struct AskedFor {
    std::string query;
    std::string machine;
    std::string kind;
    std::string unit;
    std::vector<std::string> find;
};
std::vector<AskedFor> askedFor();

}  // namespace wm::fastening
