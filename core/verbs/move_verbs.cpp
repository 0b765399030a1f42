// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/move_verbs.h"

#include <memory>

#include "core/book/fitting.h"
#include "core/items/positions.h"
#include "core/picture/facts.h"
#include "core/verbs/move_parts.h"
#include "core/verbs/names.h"

namespace wm::verbs {

using items::Move;
using items::MoveKind;

namespace {

// Where a fitted item goes, in words.
std::string placeName(const Ledger& ledger, const Move& move) {
    if (move.machine)
        return machineName(ledger, *move.machine);
    const auto* parent = move.parent ? ledger.find<items::Item>(*move.parent) : nullptr;
    return parent == nullptr ? std::string{} : parent->name;
}

// Only a fitted item has a place to name, only one that was sent away comes back on a day.
void settlePlace(Move& move) {
    if (move.kind != MoveKind::Away)
        move.backOn.reset();
    if (move.kind == MoveKind::Fitted)
        return;
    move.machine.reset();
    move.parent.reset();
    move.position.clear();
}

// Nobody can say by this what held it through the riding since.
void settleTold(const Book& book, Move& move) {
    if (move.told == items::Told::Work && book::proposedTold(book, move) == items::Told::Unasked)
        move.told = items::Told::Unasked;
}

/// The rows of one verb, each move checked against those before it.
class Moving {
  public:
    explicit Moving(const VerbContext& context)
        : context_(context), book_(std::make_unique<Book>(copyOf(context.book))) {}

    Result<void> take(const FitDraft& draft) {
        const Move& move = draft.move;
        const auto* item = book_->ledger().find<items::Item>(move.item);
        if (draft.fromElsewhere && item != nullptr)
            if (auto off = takeOffElsewhere(draft); !off)
                return off;
        if (draft.oldGoesTo)
            if (auto off = takeOffOld(draft); !off)
                return off;
        return add(move);
    }

    Result<void> add(Move move) {
        BookChecks check(*book_);
        move.entered = book_->ledger().nextEntered();
        const auto* item = check.row<items::Item>("item", move.item);
        checkMove(check, *book_, move, item);
        if (item != nullptr)
            checkKind(check, move, *item);
        if (!check.failed())
            check.take(book_->fittings().check(move));
        if (check.failed())
            return tl::unexpected(check.refusal().value());
        text_ = moveText(book_->ledger(), move, item->name);
        Entry entry(book_->ledger(), context_.newId);
        entry.add(std::move(move));
        auto change = std::move(entry).change(text_);
        book_ = std::make_unique<Book>(std::make_shared<const Ledger>(book_->ledger().with(change)),
                                       context_.book.today());
        for (auto& row : change.rows)
            rows_.push_back(std::move(row));
        return {};
    }

    Change change(const base::Phrase& text) && { return {base::stored(text), std::move(rows_)}; }
    [[nodiscard]] const base::Phrase& text() const { return text_; }

  private:
    static Book copyOf(const Book& book) {
        return Book(std::make_shared<const Ledger>(book.ledger()), book.today(), book);
    }

    static Move offBefore(const Move& move, ItemId item, MoveKind goesTo) {
        return {.item = item,
                .date = move.date,
                .part = move.part,
                .kind = goesTo,
                .note = move.note,
                .told = move.told};
    }

    Result<void> takeOffElsewhere(const FitDraft& draft) {
        const Move& move = draft.move;
        const auto now = book_->fittings().placeOf(move.item, {move.date, move.part});
        if (!now || now->kind != MoveKind::Fitted)
            return {};
        if (now->machine == move.machine && now->parent == move.parent && now->position == move.position)
            return base::refuse(Fault::NothingToDo, "item");
        return add(offBefore(move, move.item, MoveKind::Removed));
    }

    Result<void> takeOffOld(const FitDraft& draft) {
        const Move& move = draft.move;
        if (*draft.oldGoesTo == MoveKind::Fitted)
            return base::refuse(Fault::Inconsistent, "old");
        const auto old = book::sitsAt(*book_, move);
        if (!old)
            return base::refuse(Fault::NotFitted, "position", move.position);
        if (*old == move.item)
            return base::refuse(Fault::NothingToDo, "item");
        return add(offBefore(move, *old, *draft.oldGoesTo));
    }

    const VerbContext& context_;
    std::unique_ptr<Book> book_;
    std::vector<picture::Row> rows_;
    base::Phrase text_;
};

}  // namespace

void checkMove(BookChecks& check, const Book& book, Move& move, const items::Item* item) {
    settlePlace(move);
    checkShape(check, move);
    check.fact(move.date);
    if (item != nullptr)
        check.notBefore(move.date, item->since);
    if (move.machine)
        check.machineOn(*move.machine, move.date);
    if (const auto* parent = check.row<items::Item>("parent", move.parent))
        check.notBefore(move.date, parent->since);
    check.row<upkeep::Record>("record", move.record);
    if (!check.failed())
        settleTold(book, move);
}

void checkKind(BookChecks& check, const Move& move, const items::Item& item) {
    if (move.kind == MoveKind::Fitted && !check.failed())
        check.that(items::accepts(move.position, item.kind), Fault::WrongKind, "item", item.name,
                   move.position);
}

base::Phrase moveText(const Ledger& ledger, const Move& move, const std::string& item) {
    switch (move.kind) {
        case MoveKind::Fitted:
            return phrase("Undo", "fitted %1 to %2").arg(item).arg(placeName(ledger, move));
        case MoveKind::Removed:
            return phrase("Undo", "put %1 on the shelf").arg(item);
        case MoveKind::Away:
            return phrase("Undo", "sent %1 away").arg(item);
        case MoveKind::Retired:
            break;
    }
    return phrase("Undo", "retired %1").arg(item);
}

Result<Change> moveItem(const VerbContext& context, Move move) {
    Moving moving(context);
    if (auto added = moving.add(std::move(move)); !added)
        return tl::unexpected(added.error());
    const auto text = moving.text();
    return std::move(moving).change(text);
}

Result<Change> fitItem(const VerbContext& context, FitDraft draft) {
    Moving moving(context);
    draft.move.kind = MoveKind::Fitted;
    if (auto taken = moving.take(draft); !taken)
        return tl::unexpected(taken.error());
    const auto text = moving.text();
    return std::move(moving).change(text);
}

Result<Change> swapItem(const VerbContext& context, Move move, MoveKind oldGoesTo) {
    return fitItem(context, {std::move(move), oldGoesTo});
}

Result<Change> fitSet(const VerbContext& context, std::vector<FitDraft> drafts) {
    if (drafts.empty())
        return base::refuse(Fault::NothingToDo, "moves");
    Moving moving(context);
    for (std::size_t at = 0; at < drafts.size(); ++at) {
        drafts[at].move.kind = MoveKind::Fitted;
        if (auto taken = moving.take(drafts[at]); !taken) {
            base::Error error = taken.error();
            error.field = error.field.within("moves", at);
            return tl::unexpected(std::move(error));
        }
    }
    const auto text =
        drafts.size() == 1 ? moving.text() : phrase("Undo", "fitted %n item(s)", nullptr, drafts.size());
    return std::move(moving).change(text);
}

}  // namespace wm::verbs
