// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/picture/rows.h"

namespace wm::ui {

/// Calls `act(std::string&)` on every text of the rows that is a person's own words: all but the codes by
/// which rows name each other.
template <class Act>
class OwnWords {
  public:
    explicit OwnWords(const Act& act) : act_(act) {}
    template <class T>
    void fields(T& row) const {
        T::fields(row, [this](std::string_view name, auto& member) {
            if (!name.ends_with("code") && name != "nth_of" && name != "job")
                this->visit(member);
        });
    }

  private:
    void visit(std::string& words) const { act_(words); }
    void visit(std::optional<std::string>& words) const {
        if (words)
            act_(*words);
    }
    template <class T>
    void visit(std::vector<T>& children) const {
        for (T& child : children)
            fields(child);
    }
    template <class T>
    void visit(T& /*no text*/) const {}

    const Act& act_;
};

template <class Act>
void eachOwnText(std::vector<picture::Row>& rows, const Act& act) {
    const OwnWords<Act> words(act);
    for (picture::Row& row : rows)
        std::visit([&words](auto& each) { words.fields(each); }, row);
}

}  // namespace wm::ui
