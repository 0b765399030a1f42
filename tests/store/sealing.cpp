// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/store/sealing.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include "core/store/connection.h"
#include "core/store/seal.h"

namespace wm::store::sample {

void executeSealed(const QString& path, const std::string& sql) {
    const Connection connection(path, Connection::Mode::Writing, Options{});
    char* error = nullptr;
    EXPECT_EQ(sqlite3_exec(connection.handle(), sql.c_str(), nullptr, nullptr, &error), SQLITE_OK) << error;
    sqlite3_free(error);
    Transaction writing(connection, Transaction::Kind::Writing);
    sealAll(connection);
    writing.commit();
}

}  // namespace wm::store::sample
