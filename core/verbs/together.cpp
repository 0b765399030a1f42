// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/together.h"

#include <iterator>
#include <memory>
#include <utility>

namespace wm::verbs {

Verb together(std::string text, std::vector<Verb> verbs) {
    return [text = std::move(text),
            verbs = std::move(verbs)](const VerbContext& context) -> base::Result<picture::Change> {
        picture::Change all{text, {}};
        auto ledger = std::make_shared<const picture::Ledger>(context.book.ledger());
        for (const auto& verb : verbs) {
            const book::Book book(ledger, context.book.today());
            auto change = verb(VerbContext{book, context.newId});
            if (!change)
                return change;
            ledger = std::make_shared<const picture::Ledger>(ledger->with(*change));
            all.rows.insert(all.rows.end(), std::make_move_iterator(change->rows.begin()),
                            std::make_move_iterator(change->rows.end()));
        }
        return all;
    };
}

}  // namespace wm::verbs
