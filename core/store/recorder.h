// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/store/connection.h"

struct sqlite3_session;

namespace wm::store {

/// Takes down what is changed in the tables of facts and their seals from here on, and in no other. Throws
/// Failure.
class Recorder {
  public:
    explicit Recorder(const Connection& connection);
    ~Recorder();
    Recorder(const Recorder&) = delete;
    Recorder& operator=(const Recorder&) = delete;
    /// The changes so far, as bytes that replay() takes.
    [[nodiscard]] std::string changes() const;

  private:
    sqlite3* db_;
    sqlite3_session* session_ = nullptr;
};

/// Applies recorded changes, or (`back`) takes them back; the total of the seals moves with them. Throws
/// Failure if the file is not as it was when they were recorded; the caller's transaction then leaves nothing
/// of them.
void replay(const Connection& connection, std::string_view changes, bool back);

}  // namespace wm::store
