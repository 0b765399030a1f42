// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/together.h"

#include <memory>
#include <utility>

namespace wm::ui {

store::Verb together(const QString& text, std::vector<store::Verb> verbs) {
    return [words = text.toStdString(),
            verbs = std::move(verbs)](const verbs::Pen& pen) -> base::Result<picture::Change> {
        picture::Change all{words, {}};
        auto ledger = std::make_shared<const picture::Ledger>(pen.book.ledger());
        for (const auto& verb : verbs) {
            const book::Book book(ledger, pen.book.today());
            auto change = verb(verbs::Pen{book, pen.newId});
            if (!change)
                return change;
            ledger = std::make_shared<const picture::Ledger>(ledger->with(*change));
            all.rows.insert(all.rows.end(), std::make_move_iterator(change->rows.begin()),
                            std::make_move_iterator(change->rows.end()));
        }
        return all;
    };
}

}  // namespace wm::ui
