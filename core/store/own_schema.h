// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdexcept>
#include <string>

#include "core/store/connection.h"

namespace wm::store {

/// A file that holds what no program of ours puts there; what() names it.
class Foreign : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// A file in which something is gone that holds no facts; what() names it.
class Lacking : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// Compares all tables, indexes and triggers of a file, by name and text, with what its version wrote. Of a
/// version that is not known here it only sees that nothing in it can run when it is read. Nothing of the
/// file runs meanwhile. Throws Foreign for what is too much or different, Lacking for what is missing,
/// Failure for a missing table of facts.
void requireOwnSchema(const Connection& connection, const Schema& schema);

/// An empty database in memory with the tables of `schema` up to `version`.
class Model {
  public:
    Model(const Schema& schema, int version);
    [[nodiscard]] const Connection& connection() const { return connection_; }

  private:
    Connection connection_;
};

}  // namespace wm::store
