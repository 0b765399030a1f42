// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace wm::base {

/// The identity of one thing of kind `Tag`. Ids of different kinds do not mix; there is no "zero" id:
/// something that may be missing is a std::optional<Id<...>>. Values are random and at least 1, so that two
/// files can be merged without a clash, and an id is never used again. A default-made Id is nothing
/// yet: a place for a reader to fill, or, in a row handed to a verb, something new.
template <class Tag>
class Id {
  public:
    constexpr Id() = default;
    explicit constexpr Id(std::int64_t value) : value_(value) {}
    [[nodiscard]] constexpr std::int64_t value() const { return value_; }
    [[nodiscard]] constexpr bool isNothing() const { return value_ == 0; }
    friend constexpr auto operator<=>(Id, Id) = default;

  private:
    std::int64_t value_ = 0;
};

/// Where new ids come from. The core has no source of chance of its own: the caller brings one.
using IdSource = std::function<std::int64_t()>;

}  // namespace wm::base

template <class Tag>
struct std::hash<wm::base::Id<Tag>> {
    std::size_t operator()(wm::base::Id<Tag> id) const noexcept {
        return std::hash<std::int64_t>{}(id.value());
    }
};
