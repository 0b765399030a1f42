// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <typeindex>
#include <unordered_map>
#include <unordered_set>

#include "core/picture/checks.h"
#include "core/picture/rows.h"

namespace wm::picture {

/// The ids of a whole file by their kinds, told from the types of the rows' own members: a reference of type
/// Id<X> must be the id of a row of that kind, or the id that a definition keeps over its versions.
class References {
  public:
    /// Takes in a row's own id. Faults: NotPositive, Duplicate (ids are unique over all tables).
    void define(Checks& check, const Row& row);
    /// Is everything that the row names there? Faults: Inconsistent with the place ("uses[1].line");
    /// Malformed for a value that its enumeration does not have.
    void check(Checks& check, const Row& row) const;

  private:
    template <class R>
    void defineStable(const R& row);
    template <class T>
    void checkMember(Checks& check, const base::Place& field, const T& member) const;
    template <class R>
    void checkFields(Checks& check, const base::Place& prefix, const R& row) const;
    template <class R>
    void checkUntyped(Checks& check, const R& row) const;
    [[nodiscard]] bool has(std::type_index kind, std::int64_t id) const;

    std::unordered_map<std::type_index, std::unordered_set<std::int64_t>> known_;
    std::unordered_set<std::int64_t> rows_;
    std::unordered_set<std::int64_t> facts_;
};

}  // namespace wm::picture
