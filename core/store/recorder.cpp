// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/recorder.h"

#include <memory>

#include "core/store/row_shape.h"
#include "core/store/seal.h"
#include "core/store/seal_total.h"

namespace wm::store {

namespace {

struct Free {
    void operator()(void* bytes) const { sqlite3_free(bytes); }
};
using Bytes = std::unique_ptr<void, Free>;

}  // namespace

Recorder::Recorder(const Connection& connection) : db_(connection.handle()) {
    require(sqlite3session_create(db_, "main", &session_), "starting to record");
    // Undo and redo carry the seals along with the rows.
    std::vector<std::string> tables = factTables();
    tables.emplace_back(kSealTable);
    for (const std::string& table : tables) {
        const int code = sqlite3session_attach(session_, table.c_str());
        if (code != SQLITE_OK) {
            sqlite3session_delete(session_);
            require(code, "recording a table");
        }
    }
}

Recorder::~Recorder() {
    sqlite3session_delete(session_);
}

std::string Recorder::changes() const {
    int size = 0;
    void* bytes = nullptr;
    require(sqlite3session_changeset(session_, &size, &bytes), "taking down changes");
    const Bytes owned(bytes);
    return {static_cast<const char*>(bytes), static_cast<std::size_t>(size)};
}

void replay(const Connection& connection, std::string_view changes, bool back) {
    int size = static_cast<int>(changes.size());
    // The interface takes void*, but neither call writes there.
    void* bytes = const_cast<char*>(changes.data());
    Bytes inverted;
    if (back) {
        int invertedSize = 0;
        void* invertedBytes = nullptr;
        require(sqlite3changeset_invert(size, bytes, &invertedSize, &invertedBytes), "inverting changes");
        inverted.reset(invertedBytes);
        size = invertedSize;
        bytes = invertedBytes;
    }
    const auto refuse = [](void*, int, sqlite3_changeset_iter*) -> int { return SQLITE_CHANGESET_ABORT; };
    require(sqlite3changeset_apply(connection.handle(), size, bytes, nullptr, refuse, nullptr),
            "applying changes");
    moveTotal(connection, {static_cast<const char*>(bytes), static_cast<std::size_t>(size)});
}

}  // namespace wm::store
