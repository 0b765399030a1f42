// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace wm::base {

/// How rows of a type may change.
/// Fact: added, later perhaps struck, never changed. Version: how a definition reads from a day on; a change
/// adds a version. Editable: a name card or a plan (a person, an event ahead) that a verb may overwrite; undo
/// brings back what stood there.
enum class RowKind : std::uint8_t { Fact, Version, Editable };

// What a row type offers, so that the store and the exchange text need one list of fields and not three:
//
//   struct Wash {
//       static constexpr std::string_view kTable = "wash";      // table name, JSON key
//       static constexpr RowKind kKind = RowKind::Fact;
//       WashId id;                                              // facts and versions also have `entered`
//       ...
//       template <class Self, class Visit>
//       static void fields(Self& self, Visit&& visit) { visit("id", self.id); ... }
//   };
//
// `visit` is called with the column name and a reference to the member, in a fixed order. Members are:
// Id<...>, std::optional of any scalar, bool, std::int64_t, std::string, Date, Quantity, Decimal,
// enumerations with base::Names, and std::vector of a child struct that itself has fields() but no table. A
// child vector becomes the table `<table>_<field>` with the columns owner, position and the child's fields.

/// The place of a fact in the order of entry: grows by one with each row that is written. Two facts of the
/// same day stand in this order.
using Entered = std::int64_t;

/// A child that is one word: the code of a task, joint or access step of the same machine.
struct Code {
    std::string code;
    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("code", self.code);
    }
    friend bool operator==(const Code&, const Code&) = default;
};

}  // namespace wm::base
