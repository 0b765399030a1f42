// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <type_traits>
#include <unordered_set>
#include <vector>

#include "core/picture/checks.h"
#include "core/picture/rows.h"

namespace wm::picture {

namespace detail {

template <class T>
inline constexpr bool kIsId = false;
template <class Tag>
inline constexpr bool kIsId<base::Id<Tag>> = true;

template <class T>
inline constexpr bool kIsOptional = false;
template <class T>
inline constexpr bool kIsOptional<std::optional<T>> = true;

template <class T>
inline constexpr bool kIsList = false;
template <class T>
inline constexpr bool kIsList<std::vector<T>> = true;

template <class IdType>
struct FirstWith {
    template <class... Rows>
    struct Id {
        static constexpr std::size_t find() {
            std::size_t place = 0;
            (void)((std::is_same_v<decltype(Rows::id), IdType> || (++place, false)) || ...);
            return place;
        }
    };
};

/// A number for each kind of thing that can be referred to: a row, or what a definition keeps over its
/// versions.
template <class IdType>
constexpr std::size_t kindOf() {
    if constexpr (std::is_same_v<IdType, TaskId>)
        return kTables;
    else if constexpr (std::is_same_v<IdType, StepId>)
        return kTables + 1;
    else if constexpr (std::is_same_v<IdType, JointId>)
        return kTables + 2;
    else
        return ForEachRow<FirstWith<IdType>::template Id>::find();
}
inline constexpr std::size_t kKinds = kTables + 3;

/// Ids that are put in first and asked for then.
class Ids {
  public:
    void add(std::int64_t id) { ids_.push_back(id); }
    void sort();
    [[nodiscard]] bool has(std::int64_t id) const;

  private:
    std::vector<std::int64_t> ids_;
};

}  // namespace detail

/// The ids of a whole file by their kinds, told from the types of the rows' own members: a reference of type
/// Id<X> must be the id of a row of that kind, or the id that a definition keeps over its versions. First all
/// rows are added, then `close`, then they are checked.
class References {
  public:
    template <class R>
    void add(const R& row);
    /// The same; faults: NotPositive, Duplicate (ids are unique over all tables).
    void define(Checks& check, const Row& row);
    void close();
    /// Is everything that the row names there? Faults: Inconsistent with the place ("uses[1].line");
    /// Malformed for a value that its enumeration does not have.
    template <class R>
    void check(Checks& check, const R& row) const;

  private:
    // Where a member stands; a place is made of it only for a fault.
    struct Spot {
        std::string_view list;
        std::size_t at = 0;
        std::string_view field;
        [[nodiscard]] base::Place place() const {
            return list.empty() ? base::Place(field) : placeIn(list, at, field);
        }
    };

    template <class T>
    void checkMember(Checks& check, const Spot& spot, const T& member) const;
    template <class R>
    void checkUntyped(Checks& check, const R& row) const;
    template <class IdType>
    [[nodiscard]] bool has(std::int64_t id) const {
        static_assert(detail::kindOf<IdType>() < detail::kKinds);
        return known_[detail::kindOf<IdType>()].has(id);
    }

    std::array<detail::Ids, detail::kKinds> known_;
    detail::Ids facts_;
    std::unordered_set<std::int64_t> rows_;
};

template <class R>
void References::add(const R& row) {
    const auto know = [this](auto id) { known_[detail::kindOf<decltype(id)>()].add(id.value()); };
    know(row.id);
    if constexpr (R::kKind == base::RowKind::Fact && !std::is_same_v<R, Strike>)
        facts_.add(row.id.value());
    if constexpr (std::is_same_v<R, upkeep::TaskVersion>)
        know(row.task);
    if constexpr (std::is_same_v<R, weekend::StepVersion>)
        know(row.step);
    if constexpr (std::is_same_v<R, fastening::JointVersion>)
        know(row.joint);
}

template <class T>
void References::checkMember(Checks& check, const Spot& spot, const T& member) const {
    if constexpr (detail::kIsId<T>) {
        if (!has<T>(member.value()))
            check.that(false, base::Fault::Inconsistent, spot.place(), std::to_string(member.value()));
    } else if constexpr (detail::kIsOptional<T>) {
        if (member)
            checkMember(check, spot, *member);
    } else if constexpr (std::is_enum_v<T>) {
        const auto value = static_cast<std::size_t>(member);
        if (value >= base::Names<T>::names.size())
            check.that(false, base::Fault::Malformed, spot.place(), std::to_string(value));
    } else if constexpr (detail::kIsList<T>) {
        for (std::size_t at = 0; at < member.size(); ++at)
            T::value_type::fields(member[at], [&](std::string_view field, const auto& part) {
                checkMember(check, {spot.field, at, field}, part);
            });
    }
}

// The two references whose kind is open.
template <class R>
void References::checkUntyped(Checks& check, const R& row) const {
    if constexpr (std::is_same_v<R, Strike>)
        check.that(facts_.has(row.fact), base::Fault::Inconsistent, "fact", std::to_string(row.fact));
    if constexpr (std::is_same_v<R, upkeep::FollowUpAnswer>)
        check.that(has<RecordId>(row.origin) || has<CrashId>(row.origin) || has<CalibrationId>(row.origin),
                   base::Fault::Inconsistent, "origin", std::to_string(row.origin));
}

template <class R>
void References::check(Checks& check, const R& row) const {
    R::fields(row, [&](std::string_view field, const auto& member) {
        checkMember(check, Spot{{}, 0, field}, member);
    });
    checkUntyped(check, row);
}

}  // namespace wm::picture
