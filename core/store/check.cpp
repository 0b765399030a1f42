// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "core/base/text.h"
#include "core/store/migration.h"
#include "core/store/parts.h"
#include "core/store/row_shape.h"
#include "core/store/seal.h"

namespace wm::store {

namespace {

// References that no foreign key can state: each query names what is referred to and not there.
constexpr std::array<std::string_view, 10> kLoose = {
    "SELECT 'record ' || id || ': no task ' || task FROM record "
    "WHERE task IS NOT NULL AND task NOT IN (SELECT task FROM task_version)",
    "SELECT 'snag ' || id || ': no task ' || task FROM snag WHERE task IS NOT NULL AND task NOT IN (SELECT "
    "task FROM "
    "task_version)",
    "SELECT 'deferral ' || id || ': no task ' || task FROM deferral "
    "WHERE task IS NOT NULL AND task NOT IN (SELECT task FROM task_version)",
    "SELECT 'pick ' || id || ': no task ' || task FROM pick WHERE task IS NOT NULL AND task NOT IN (SELECT "
    "task FROM "
    "task_version)",
    "SELECT 'issued_sheet ' || owner || ': no task ' || task FROM issued_sheet_jobs "
    "WHERE task IS NOT NULL AND task NOT IN (SELECT task FROM task_version)",
    "SELECT 'joint_mark ' || id || ': no joint ' || joint FROM joint_mark "
    "WHERE joint NOT IN (SELECT joint FROM joint_version)",
    "SELECT 'follow_up_answer ' || id || ': no origin ' || origin FROM follow_up_answer "
    "WHERE origin NOT IN (SELECT id FROM record UNION ALL SELECT id FROM crash UNION ALL SELECT id FROM "
    "calibration)",
    "SELECT 'foreign key: ' || \"table\" || ' ' || coalesce(rowid, '') || ' -> ' || parent "
    "FROM pragma_foreign_key_check",
    "SELECT 'search: no such fact ' || rowid FROM search WHERE rowid NOT IN (SELECT id FROM all_facts)",
    "SELECT 'strike ' || id || ': no fact ' || fact FROM strike WHERE fact NOT IN (SELECT id FROM all_facts)",
};

std::string allFacts() {
    std::string sql;
    eachRowType([&sql](auto row) {
        using R = decltype(row);
        if constexpr (R::kKind == base::RowKind::Fact)
            sql += (sql.empty() ? "SELECT id FROM \"" : " UNION ALL SELECT id FROM \"") +
                   std::string(R::kTable) + '"';
    });
    return "WITH all_facts (id) AS (" + sql + ") ";
}

std::string sharedIds() {
    std::string sql;
    eachRowType([&sql](auto row) {
        using R = decltype(row);
        // The garage's card is always number 1.
        if constexpr (!std::is_same_v<R, picture::Garage>)
            sql += (sql.empty() ? "SELECT id FROM \"" : " UNION ALL SELECT id FROM \"") +
                   std::string(R::kTable) + '"';
    });
    return "SELECT 'id ' || id || ' is used ' || count(*) || ' times' FROM (" + sql +
           ") GROUP BY id HAVING count(*) > 1";
}

void gather(const Connection& connection, const std::string& sql, std::vector<QString>& into) {
    Statement rows(connection.handle(), sql);
    while (rows.step()) {
        const std::string_view line = rows.text(0);
        if (line != "ok")
            into.push_back(QString::fromUtf8(line.data(), static_cast<qsizetype>(line.size())));
    }
}

// Where a file is opened for reading only SQLite leaves the CHECKs of its tables out, so this one may write;
// it does not.
void checkStructure(const Connection& opened, const QString& path, const Options& options,
                    std::vector<QString>& into) {
    const Connection connection(path, Connection::Mode::Writing, options);
    connection.harden();
    if (versionOf(opened) <= latestVersion(options.schema))
        connection.trustSchema();
    gather(connection, "PRAGMA integrity_check(20)", into);
}

// How often it is looked again, after the time that each look waits by itself.
constexpr int kPatience = 15;

bool isHeld(const tl::expected<void, ApplyError>& looked) {
    return !looked && looked.error().kind == ApplyError::Kind::Locked;
}

constexpr std::size_t kMostReplacedNamed = 20;

// Bytes that are no text at all are a fault, and not counted here.
bool isReplaced(const Stored& stored, const std::string& column) {
    if (stored.kind != Stored::Kind::Text || !base::isUtf8(stored.bytes))
        return false;
    return (column == "name" ? base::onOneLine(stored.bytes) : base::harmless(stored.bytes)) != stored.bytes;
}

void gatherReplaced(const Connection& connection, const std::string& table, std::vector<QString>& into) {
    Statement rows(connection.handle(), "SELECT * FROM \"" + table + '"');
    while (rows.step())
        for (int column = 0; column < rows.columns(); ++column) {
            const std::string name = rows.columnName(column);
            if (into.size() < kMostReplacedNamed && isReplaced(rows.stored(column), name))
                into.push_back(QString::fromStdString("table " + table + ", row " +
                                                      std::to_string(rows.number(0)) + ", column " + name));
        }
}

}  // namespace

std::vector<QString> File::check() const {
    std::vector<QString> found;
    const auto look = [&]() -> tl::expected<void, ApplyError> {
        // One moment: what another program writes between two looks is no fault.
        const Transaction reading(parts_->db, Transaction::Kind::Reading);
        checkStructure(parts_->db, parts_->path, parts_->options, found);
        for (const std::string_view query : kLoose)
            gather(parts_->db, allFacts() + std::string(query), found);
        gather(parts_->db, sharedIds(), found);
        for (const std::string& line : alteredRows(parts_->db, kMostAlteredNamed))
            found.push_back(QString::fromStdString(line));
        readPictureHere(parts_->db);
        return {};
    };
    auto looked = guarded(look);
    // Nor is it one that another program is writing just now.
    for (int again = 0; again < kPatience && isHeld(looked); ++again) {
        found.clear();
        looked = guarded(look);
    }
    if (!looked && std::find(found.begin(), found.end(), looked.error().detail) == found.end())
        found.push_back(looked.error().detail);
    return found;
}

std::vector<QString> File::replacedTexts() const {
    std::vector<QString> found;
    // What can't be read is among the faults.
    (void)guarded([&]() -> tl::expected<void, ApplyError> {
        for (const std::string& table : factTables())
            gatherReplaced(parts_->db, table, found);
        return {};
    });
    return found;
}

}  // namespace wm::store
