// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "core/store/copying.h"
#include "core/store/migration.h"
#include "core/store/on_disk.h"
#include "core/store/own_schema.h"
#include "core/store/parts.h"
#include "core/store/row_shape.h"
#include "core/store/verb_history.h"

namespace wm::store {

namespace {

std::int64_t rowCount(const Connection& connection) {
    std::int64_t rows = 0;
    eachRowType([&](auto row) {
        rows += numberOf(connection.handle(),
                         "SELECT count(*) FROM \"" + std::string(decltype(row)::kTable) + "\"");
    });
    return rows;
}

struct LastWord {
    bool stands = false;
    LogLine line;
};

// How each verb stands at the end of a log.
std::map<std::int64_t, LastWord> lastWords(const std::vector<LogLine>& log) {
    std::map<std::int64_t, LastWord> words;
    for (const LogLine& line : log)
        words[line.ofVerb] = {line.what != "undone", line};
    return words;
}

std::vector<LostVerb> lostBetween(const std::vector<LogLine>& then, const std::vector<LogLine>& now) {
    const auto before = lastWords(then);
    std::vector<LogLine> changed;
    std::map<std::int64_t, bool> standsNow;
    for (const auto& [verb, word] : lastWords(now)) {
        const auto old = before.find(verb);
        const bool stoodThen = old != before.end() && old->second.stands;
        if (word.stands != stoodThen)
            changed.push_back(word.line);
    }
    std::sort(changed.begin(), changed.end(),
              [](const LogLine& a, const LogLine& b) { return a.revision > b.revision; });
    std::vector<LostVerb> lost;
    for (const LogLine& line : changed)
        lost.push_back({QString::fromStdString(line.text), QString::fromStdString(line.writtenAt),
                        line.what == "undone"});
    return lost;
}

void requireOurs(const Connection& connection, const Schema& schema) {
    if (numberOf(connection.handle(), "PRAGMA application_id") != kApplicationId)
        throw Failure(SQLITE_NOTADB, "not a copy of such a file");
    connection.harden();
    requireOwnSchema(connection, schema);
    quickCheck(connection);
}

}  // namespace

tl::expected<BackupPreview, ApplyError> File::preview(const Backup& backup) const {
    return guarded([&]() -> tl::expected<BackupPreview, ApplyError> {
        const Connection then(backup.path, Connection::Mode::ReadOnly, parts_->options);
        requireOurs(then, parts_->options.schema);
        return BackupPreview{lostBetween(readLog(then), readLog(parts_->db)), rowCount(parts_->db),
                             rowCount(then)};
    });
}

tl::expected<void, ApplyError> File::restoreTo(const Backup& backup, const QString& path) const {
    return guarded([&]() -> tl::expected<void, ApplyError> {
        if (disk::exists(path) || garageThatOwns(path))
            return tl::unexpected(ApplyError{
                ApplyError::Kind::Refused, {base::Fault::Duplicate, "path", path.toStdString(), {}}, {}});
        const Connection then(backup.path, Connection::Mode::ReadOnly, parts_->options);
        requireOurs(then, parts_->options.schema);
        copyChecked(then, path, rightsOf(parts_->path), parts_->options);
        return {};
    });
}

}  // namespace wm::store
