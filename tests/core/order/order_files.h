// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "tests/core/order/order_truths.h"

namespace wm::order {

/// A file of tests/data/order. Throws where it can't be read.
Json fileOf(const std::string& name);
const Truths& truths();

}  // namespace wm::order
