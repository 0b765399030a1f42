// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <stdexcept>

#include "core/picture/ledger.h"
#include "core/store/connection.h"

namespace wm::store {

/// A row that this program cannot make sense of: a word or a date that it does not know, bytes that are no
/// text. What it says begins with the place ("table wash, row 7, column note ...").
class Unreadable : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// A row that is not as this program wrote it; also one that it didn't write, or that is gone.
class Altered : public Unreadable {
  public:
    using Unreadable::Unreadable;
};

struct Picture {
    picture::Ledger ledger;
    std::int64_t revision = 0;
};

/// Everything in the file, as one moment's picture, each row held against its seal. Throws Failure,
/// Unreadable.
Picture readPicture(const Connection& connection);
/// The same inside a transaction that is open already.
Picture readPictureHere(const Connection& connection);

std::int64_t revisionOf(const Connection& connection);

}  // namespace wm::store
