// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <cstdint>
#include <map>
#include <utility>

#include "ui/fields/draft.h"

namespace wm::ui {

/// What was begun on the definitions of a page (tasks, access steps) and not saved, kept by the definition.
/// One that is not in the file yet stands under a number below zero.
template <class V>
class Drafts {
  public:
    struct Begun {
        V base{};  ///< the version that it began from; without an id for a new definition
        Draft draft{};
    };

    /// The number under which a new one begins. `like` gives it its fields.
    std::int64_t addNew(V like) {
        Draft draft = draftOf(like);
        begun_[--lastNew_] = {std::move(like), std::move(draft)};
        return lastNew_;
    }
    /// Keeps what stands in the fields; forgets it once it says the same as the version.
    void keep(std::int64_t id, const V& base, Draft draft) {
        if (id > 0 && draft == draftOf(base))
            begun_.erase(id);
        else
            begun_[id] = {base, std::move(draft)};
    }
    void drop(std::int64_t id) { begun_.erase(id); }
    void dropAll() { begun_.clear(); }
    [[nodiscard]] const Begun* find(std::int64_t id) const {
        const auto at = begun_.find(id);
        return at == begun_.end() ? nullptr : &at->second;
    }
    [[nodiscard]] const std::map<std::int64_t, Begun>& all() const { return begun_; }
    /// `words` makes of each name as it is typed ("" too) what a question calls it.
    template <class Words>
    [[nodiscard]] QStringList names(Words&& words) const {
        QStringList names;
        for (const auto& [id, begun] : begun_)
            names << words(begun.draft.fields.at("name").trimmed());
        return names;
    }

  private:
    std::map<std::int64_t, Begun> begun_;
    std::int64_t lastNew_ = 0;
};

}  // namespace wm::ui
