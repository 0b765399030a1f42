// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDateTime>

#include "core/store/parts.h"
#include "core/store/recorder.h"
#include "core/store/verb_history.h"

namespace wm::store {

namespace {

constexpr int kHoursOfUndo = 12;

// Undone verbs are always the later ones, so the last that is done and the first that is undone meet. Whose
// time lies a little ahead was said before the clock was put back.
constexpr std::string_view kLastDone =
    "SELECT verb, text, changes FROM undo_change JOIN verb_log ON revision = verb "
    "WHERE done = 1 AND verb > ? AND written_at BETWEEN ? AND ? ORDER BY verb DESC LIMIT 1";
constexpr std::string_view kFirstUndone =
    "SELECT verb, text, changes FROM undo_change JOIN verb_log ON revision = verb "
    "WHERE done = 0 AND verb > ? AND written_at BETWEEN ? AND ? ORDER BY verb LIMIT 1";

struct Turn {
    std::int64_t verb = 0;
    std::string text;
    std::string changes;
};

std::string isoOf(const QDateTime& time) {
    return time.toString(Qt::ISODate).toStdString();
}

std::optional<Turn> nextTurn(const Connection& connection, bool back, std::int64_t after,
                             const QDateTime& now) {
    const std::string first = isoOf(now.addSecs(-kHoursOfUndo * 3600));
    const std::string last = isoOf(now.addSecs(kHoursOfUndo * 3600));
    Statement find(connection.handle(), back ? kLastDone : kFirstUndone);
    find.bind(1, after);
    find.bind(2, std::string_view(first));
    find.bind(3, std::string_view(last));
    if (!find.step())
        return std::nullopt;
    return Turn{find.number(0), std::string(find.text(1)), std::string(find.blob(2))};
}

// What undo keeps has no seal: that it was damaged shows when it doesn't fit the file, or leaves rows that
// are not as they were written. A disc that refuses, or is full, has words of its own.
template <class Act>
auto fittingOr(const Act& act) -> tl::expected<decltype(act()), ApplyError> {
    const auto damaged = [](const char* what) {
        warn("undo: {}", what);
        return tl::unexpected(ApplyError{ApplyError::Kind::UndoDamaged, {}, QString::fromUtf8(what)});
    };
    try {
        return act();
    } catch (const Unreadable& row) {
        return damaged(row.what());
    } catch (const Failure& failure) {
        switch (failure.primaryCode()) {
            case SQLITE_ABORT:
            case SQLITE_CONSTRAINT:
            case SQLITE_CORRUPT:
            case SQLITE_ERROR:
            case SQLITE_MISMATCH:
            case SQLITE_SCHEMA:
                return damaged(failure.what());
            default:
                throw;
        }
    }
}

bool hasMachine(const picture::Ledger& ledger) {
    return !ledger.all<items::Machine>().empty();
}

}  // namespace

std::optional<std::string> File::Parts::turnText(bool back) const {
    if (readOnly)
        return std::nullopt;
    const auto text = guarded([&]() -> tl::expected<std::optional<std::string>, ApplyError> {
        auto turn = nextTurn(db, back, sessionFrom, options.now());
        if (!turn)
            return std::nullopt;
        return std::move(turn->text);
    });
    return text.value_or(std::nullopt);
}

tl::expected<std::string, ApplyError> File::Parts::turn(bool back, LastMachine last, Redo redo) {
    Transaction writing(db, Transaction::Kind::Writing);
    // Whoever presses undo means the words that were shown; another window may have written since.
    if (revisionOf(db) != revision) {
        take(readPictureHere(db));
        return tl::unexpected(ApplyError{ApplyError::Kind::Stale, {}, {}});
    }
    const std::optional<Turn> turn = nextTurn(db, back, sessionFrom, options.now());
    if (!turn)
        return tl::unexpected(ApplyError{
            ApplyError::Kind::Refused, {base::Fault::NothingToDo, back ? "undo" : "redo", {}, {}}, {}});
    auto replayed = fittingOr([&] {
        replay(db, turn->changes, back);
        return readPictureHere(db);
    });
    if (!replayed)
        return tl::unexpected(std::move(replayed.error()));
    Picture after = *std::move(replayed);
    after.revision = revision + 1;
    Statement mark(db.handle(), "UPDATE undo_change SET done = ? WHERE verb = ?");
    mark.bind(1, std::int64_t{back ? 0 : 1});
    mark.bind(2, turn->verb);
    mark.run();
    if (redo == Redo::Never)
        run(db.handle(), "DELETE FROM undo_change WHERE done = 0");
    logVerb(db, {revision + 1, back ? "undone" : "redone", turn->verb, turn->text, timeNow().toStdString()});
    setRevision(db, revision + 1);
    if (back && last == LastMachine::Stays && hasMachine(*ledger) && !hasMachine(after.ledger))
        return tl::unexpected(
            ApplyError{ApplyError::Kind::Refused, {base::Fault::MustAnswer, "last machine", {}, {}}, {}});
    commit(writing, revision + 1);
    take(std::move(after));
    return turn->text;
}

std::optional<std::string> File::undoText() const {
    return parts_->turnText(true);
}
std::optional<std::string> File::redoText() const {
    return parts_->turnText(false);
}

tl::expected<std::string, ApplyError> File::undo(LastMachine last, Redo redo) {
    if (parts_->readOnly)
        return tl::unexpected(ApplyError{ApplyError::Kind::ReadOnly, {}, {}});
    if (auto trouble = parts_->clockTrouble())
        return tl::unexpected(*std::move(trouble));
    parts_->takeBackInterruptedWrite();
    return guarded([this, last, redo] { return parts_->turn(true, last, redo); });
}

tl::expected<std::string, ApplyError> File::redo() {
    if (parts_->readOnly)
        return tl::unexpected(ApplyError{ApplyError::Kind::ReadOnly, {}, {}});
    if (auto trouble = parts_->clockTrouble())
        return tl::unexpected(*std::move(trouble));
    parts_->takeBackInterruptedWrite();
    return guarded([this] { return parts_->turn(false, LastMachine::MayGo, Redo::May); });
}

void File::reachBack() {
    parts_->sessionFrom = 0;
}

tl::expected<void, ApplyError> File::endUndo() {
    if (parts_->readOnly)
        return {};
    return guarded([this]() -> tl::expected<void, ApplyError> {
        run(parts_->db.handle(), "DELETE FROM undo_change");
        return {};
    });
}

}  // namespace wm::store
