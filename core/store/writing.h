// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/picture/rows.h"
#include "core/store/connection.h"
#include "core/store/seal.h"

namespace wm::store {

/// Writes rows, each with its seal, with statements that are prepared once. Facts and versions are added; a
/// card replaces the one of the same id, children and all. Throws Failure.
class RowWriter {
  public:
    explicit RowWriter(const Connection& connection) : db_(connection.handle()) {}
    void write(const picture::Row& row);

  private:
    template <class R>
    void writeRow(const R& row);
    template <class R, class Child>
    void writeChildren(const R& row, std::string_view field, const std::vector<Child>& children);
    void writeSeal(std::string_view table, std::int64_t id, bool again);
    template <class MakeSql>
    Statement& statement(const std::string& key, const MakeSql& sql);

    sqlite3* db_;
    std::map<std::string, Statement> statements_;
    RowDigest digest_;
};

}  // namespace wm::store
