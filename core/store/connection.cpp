// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/connection.h"

#include <QSqlDatabase>
#include <QSqlDriver>
#include <QSqlError>
#include <QUuid>
#include <QVariant>
#include <array>
#include <utility>

#include "core/store/store.h"

namespace wm::store {

namespace {

// A path is data: no character of it can become a parameter of the address.
QString addressOf(const QString& path, Connection::Mode mode, const Options& options) {
    QString address = QStringLiteral("file:");
    address += QString::fromLatin1(QByteArray::fromStdString(onDisk(path).native()).toPercentEncoding("/"));
    switch (mode) {
        case Connection::Mode::ReadOnly:
            address += QStringLiteral("?mode=ro");
            break;
        case Connection::Mode::Writing:
            address += QStringLiteral("?mode=rw");
            break;
        case Connection::Mode::Creating:
            address += QStringLiteral("?mode=rwc");
            break;
    }
    if (!options.vfs.empty())
        address += QStringLiteral("&vfs=") + QString::fromStdString(options.vfs);
    return address;
}

// Far above what any statement of ours needs, far below what holds a computer up.
constexpr std::array<std::pair<int, int>, 10> kLimits{{
    {SQLITE_LIMIT_LENGTH, 512 * 1024 * 1024},  // what undo keeps of a whole file taken in is one value
    {SQLITE_LIMIT_SQL_LENGTH, 1'000'000},
    {SQLITE_LIMIT_COLUMN, 200},
    {SQLITE_LIMIT_EXPR_DEPTH, 100},
    {SQLITE_LIMIT_COMPOUND_SELECT, 200},
    {SQLITE_LIMIT_FUNCTION_ARG, 20},
    {SQLITE_LIMIT_ATTACHED, 0},
    {SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 1000},
    {SQLITE_LIMIT_VARIABLE_NUMBER, 500},
    {SQLITE_LIMIT_TRIGGER_DEPTH, 10},
}};

sqlite3* handleOf(const QSqlDatabase& database) {
    const QVariant handle = database.driver()->handle();
    if (!handle.isValid() || qstrcmp(handle.typeName(), "sqlite3*") != 0)
        throw Failure(SQLITE_MISUSE, "Qt gave no SQLite connection");
    return *static_cast<sqlite3* const*>(handle.constData());
}

}  // namespace

Connection::Connection(const QString& path, Mode mode, const Options& options)
    : name_(QUuid::createUuid().toString(QUuid::WithoutBraces)) {
    {
        QSqlDatabase database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name_);
        QString settings =
            QStringLiteral("QSQLITE_OPEN_URI;QSQLITE_BUSY_TIMEOUT=%1").arg(options.busyMilliseconds);
        if (mode == Mode::ReadOnly)
            settings += QStringLiteral(";QSQLITE_OPEN_READONLY");
        database.setConnectOptions(settings);
        database.setDatabaseName(addressOf(path, mode, options));
        if (database.open())
            handle_ = handleOf(database);
        const QSqlError error = database.lastError();
        if (handle_ == nullptr) {
            const int code = error.nativeErrorCode().toInt();
            const std::string text = error.text().toStdString();
            database = QSqlDatabase();
            close();
            throw Failure(code == 0 ? SQLITE_ERROR : code, text);
        }
    }
    sqlite3_extended_result_codes(handle_, 1);
    sqlite3_progress_handler(
        handle_, options.mostSteps, [](void*) { return 1; }, nullptr);
}

Connection::~Connection() {
    close();
}

void Connection::close() {
    QSqlDatabase::database(name_, false).close();
    QSqlDatabase::removeDatabase(name_);
}

bool Connection::readOnly() const {
    return sqlite3_db_readonly(handle_, "main") != 0;
}

sqlite3_file* Connection::file() const {
    sqlite3_file* file = nullptr;
    if (sqlite3_file_control(handle_, "main", SQLITE_FCNTL_FILE_POINTER, &file) != SQLITE_OK ||
        file == nullptr || file->pMethods == nullptr)
        throw Failure(SQLITE_CANTOPEN, "the file has no content to read");
    return file;
}

std::array<unsigned char, 100> Connection::header() const {
    std::array<unsigned char, 100> bytes{};
    sqlite3_file* from = file();
    const int code = from->pMethods->xRead(from, bytes.data(), static_cast<int>(bytes.size()), 0);
    if (code != SQLITE_OK && code != SQLITE_IOERR_SHORT_READ)
        throw Failure(code, "reading the header");
    return bytes;
}

bool Connection::headerIsOurs() const {
    const auto bytes = header();
    std::uint32_t id = 0;
    for (std::size_t at = 68; at < 72; ++at)
        id = id << 8U | bytes[at];
    return id == static_cast<std::uint32_t>(kApplicationId);
}

bool Connection::isBeingWritten() const {
    sqlite3_file* of = file();
    int isHeld = 0;
    if (const int code = of->pMethods->xCheckReservedLock(of, &isHeld); code != SQLITE_OK)
        throw Failure(code, "looking whether it is being written");
    return isHeld != 0;
}

bool Connection::endsWithAPage() const {
    // While this reads, nobody can be in the middle of a write.
    Transaction reading(*this, Transaction::Kind::Reading);
    const std::int64_t pageSize = numberOf(handle_, "PRAGMA page_size");
    (void)numberOf(handle_, "SELECT count(*) FROM sqlite_schema");
    sqlite3_file* measured = file();
    sqlite3_int64 size = 0;
    if (const int code = measured->pMethods->xFileSize(measured, &size); code != SQLITE_OK)
        throw Failure(code, "measuring the file");
    return size % pageSize == 0;
}

void Connection::harden() const {
    run(handle_, "PRAGMA foreign_keys = ON");
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    for (const auto& [what, most] : kLimits)
        sqlite3_limit(handle_, what, most);
    run(handle_, "PRAGMA cell_size_check = ON");
    run(handle_, "PRAGMA temp_store = MEMORY");
    if (numberOf(handle_, "PRAGMA foreign_keys") != 1)
        throw Failure(SQLITE_MISUSE, "references are not checked");
}

void Connection::trustSchema() const {
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 1, nullptr);
}

void Connection::setDurability(Durability durability) const {
    if (textOf(handle_, "PRAGMA journal_mode = TRUNCATE") != "truncate")
        throw Failure(SQLITE_BUSY, "the journal mode could not be set");
    run(handle_, durability == Durability::NoSync ? "PRAGMA synchronous = OFF" : "PRAGMA synchronous = FULL");
    if (durability == Durability::Full && numberOf(handle_, "PRAGMA synchronous") != 2)
        throw Failure(SQLITE_MISUSE, "writes are not synced");
}

Transaction::Transaction(const Connection& connection, Kind kind, Durability durability)
    : db_(connection.handle()) {
    if (durability == Durability::NoTransaction)
        return;
    run(db_, kind == Kind::Writing ? "BEGIN IMMEDIATE" : "BEGIN");
    open_ = true;
}

Transaction::~Transaction() {
    rollBack();
}

void Transaction::rollBack() noexcept {
    // After a full disk or a failed write SQLite may have rolled back by itself.
    if (open_ && sqlite3_get_autocommit(db_) == 0)
        sqlite3_exec(db_, "ROLLBACK", nullptr, nullptr, nullptr);
    open_ = false;
}

void Transaction::commit() {
    if (!open_)
        return;
    run(db_, "COMMIT");
    open_ = false;
}

void copyDatabase(const Connection& from, const Connection& to) {
    sqlite3_backup* copy = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
    if (copy == nullptr)
        throw Failure::of(to.handle(), "starting a copy");
    const int stepped = sqlite3_backup_step(copy, -1);
    const int finished = sqlite3_backup_finish(copy);
    if (stepped != SQLITE_DONE)
        throw Failure(stepped, std::string(sqlite3_errstr(stepped)) + " (copying)");
    if (finished != SQLITE_OK)
        throw Failure(finished, std::string(sqlite3_errstr(finished)) + " (finishing a copy)");
}

}  // namespace wm::store
