// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string_view>

#include "core/store/connection.h"

/// A seal speaks of its row alone: a row that is lost together with its seal leaves nothing that misses it.
/// So the file keeps, in the page that every write touches, how many seals there are and what they add up to.
namespace wm::store {

/// Files have the total from this version on.
inline constexpr int kTotalFrom = 8;

/// How many seals, and the sum of their digests modulo 2^64: it does not depend on the order in which they
/// were written, and a write adds to it without reading the others.
struct SealTotal {
    std::int64_t rows = 0;
    std::uint64_t sum = 0;

    void add(std::int64_t digest);
    void take(std::int64_t digest);
    bool operator==(const SealTotal&) const = default;
};

/// Whether this file keeps one.
bool hasTotal(const Connection& connection);
/// What the file says. Throws Failure.
SealTotal totalOf(const Connection& connection);
/// Inside a transaction. Throws Failure.
void setTotal(const Connection& connection, const SealTotal& total);
/// Moves what the file says by what recorded changes did to the seals. Inside their transaction; throws
/// Failure.
void moveTotal(const Connection& connection, std::string_view changes);

}  // namespace wm::store
