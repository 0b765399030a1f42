// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <limits>
#include <map>
#include <memory>
#include <random>
#include <string>
#include <vector>

namespace wm::store::sample {

/// A file layer for SQLite that goes wrong on demand, over the system's own.
///
/// Faults: the n-th call of a kind, or all from the n-th on, answer with an error of the test's choice.
///
/// Power: with holdWrites() what is written stays in memory, seen by every reader here, and reaches the real
/// file only when it is synced. At the cut every call fails; settle() then lets a random part of what was not
/// synced reach the real file, sector by sector (so in any order and torn), as a disc without power may.
class FaultyVfs {
  public:
    enum class Call { Open, Read, Write, Truncate, Sync, kCount };

    explicit FaultyVfs(std::string name);
    ~FaultyVfs();
    FaultyVfs(const FaultyVfs&) = delete;
    FaultyVfs& operator=(const FaultyVfs&) = delete;
    [[nodiscard]] const std::string& name() const { return name_; }

    /// The `nth` call from now (1 = the next) answers `code`, and so do all later ones if `onwards`. Only
    /// files whose name ends with `suffix` count.
    void fail(Call call, int nth, int code, bool onwards, std::string suffix = {});
    void failNothing();
    /// Whether the fault was met since fail().
    [[nodiscard]] bool hasFailed() const { return hasFailed_; }

    void holdWrites() { holds_ = true; }
    /// The power goes at the `nth` write, truncation or sync from now.
    void cutAt(int nth);
    [[nodiscard]] bool isOff() const { return isOff_; }
    /// Writes, truncations and syncs so far.
    [[nodiscard]] int changes() const { return changes_; }
    /// After the cut, with every connection closed.
    void settle(std::mt19937& chance);

  private:
    struct Write {
        bool isTruncation = false;
        std::int64_t at = 0;  ///< the new size, for a truncation
        std::vector<char> bytes;
    };
    // A file as its readers see it, and what of that has not been synced.
    struct Image {
        std::vector<char> seen;
        std::vector<Write> unsynced;
    };
    struct Methods;
    struct OpenFile;

    int answerTo(Call call, const std::string& path);
    int change(Call call, const std::string& path);
    Image& imageOf(const std::string& path);
    static void apply(const Write& write, std::vector<char>& to);
    static std::vector<char> contentOf(const std::string& path);
    static void store(const std::string& path, const std::vector<char>& content);

    std::string name_;
    sqlite3_vfs vfs_{};
    sqlite3_vfs* real_ = nullptr;

    Call failing_ = Call::kCount;
    std::string suffix_;
    int failAt_ = 0;
    int failCode_ = SQLITE_OK;
    bool failOnwards_ = false;
    bool hasFailed_ = false;

    bool holds_ = false;
    bool isOff_ = false;
    int changes_ = 0;
    int cutAt_ = std::numeric_limits<int>::max();
    std::map<std::string, std::unique_ptr<Image>> images_;
};

}  // namespace wm::store::sample
