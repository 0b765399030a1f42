// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/references.h"

#include <type_traits>

namespace wm::picture {

using base::Fault;

namespace {

template <class T>
constexpr bool kIsId = false;
template <class Tag>
constexpr bool kIsId<base::Id<Tag>> = true;

template <class T>
constexpr bool kIsOptional = false;
template <class T>
constexpr bool kIsOptional<std::optional<T>> = true;

template <class T>
constexpr bool kIsList = false;
template <class T>
constexpr bool kIsList<std::vector<T>> = true;

}  // namespace

template <class R>
void References::defineStable(const R& row) {
    const auto add = [this](auto id) { known_[typeid(id)].insert(id.value()); };
    if constexpr (std::is_same_v<R, upkeep::TaskVersion>)
        add(row.task);
    if constexpr (std::is_same_v<R, weekend::StepVersion>)
        add(row.step);
    if constexpr (std::is_same_v<R, fastening::JointVersion>)
        add(row.joint);
}

void References::define(Checks& check, const Row& row) {
    std::visit(
        [&]<class R>(const R& r) {
            const std::int64_t id = r.id.value();
            check.that(id >= 1, Fault::NotPositive, "id", std::to_string(id));
            check.that(rows_.insert(id).second || std::is_same_v<R, Garage>, Fault::Duplicate, "id",
                       std::to_string(id));
            known_[typeid(r.id)].insert(id);
            if constexpr (R::kKind == base::RowKind::Fact && !std::is_same_v<R, Strike>)
                facts_.insert(id);
            defineStable(r);
        },
        row);
}

bool References::has(std::type_index kind, std::int64_t id) const {
    const auto ids = known_.find(kind);
    return ids != known_.end() && ids->second.contains(id);
}

template <class T>
void References::checkMember(Checks& check, const base::Place& field, const T& member) const {
    if constexpr (kIsId<T>) {
        check.that(has(typeid(T), member.value()), Fault::Inconsistent, field,
                   std::to_string(member.value()));
    } else if constexpr (kIsOptional<T>) {
        if (member)
            checkMember(check, field, *member);
    } else if constexpr (std::is_enum_v<T>) {
        const auto value = static_cast<std::size_t>(member);
        check.that(value < base::Names<T>::names.size(), Fault::Malformed, field, std::to_string(value));
    } else if constexpr (kIsList<T>) {
        for (std::size_t at = 0; at < member.size(); ++at)
            checkFields(check, field.line(at), member[at]);
    }
}

template <class R>
void References::checkFields(Checks& check, const base::Place& prefix, const R& row) const {
    R::fields(row, [&](std::string_view field, const auto& member) {
        checkMember(check, base::Place(field).within(prefix), member);
    });
}

// The two references whose kind is open.
template <class R>
void References::checkUntyped(Checks& check, const R& row) const {
    if constexpr (std::is_same_v<R, Strike>)
        check.that(facts_.contains(row.fact), Fault::Inconsistent, "fact", std::to_string(row.fact));
    if constexpr (std::is_same_v<R, upkeep::FollowUpAnswer>)
        check.that(has(typeid(RecordId), row.origin) || has(typeid(CrashId), row.origin) ||
                       has(typeid(CalibrationId), row.origin),
                   Fault::Inconsistent, "origin", std::to_string(row.origin));
}

void References::check(Checks& check, const Row& row) const {
    std::visit(
        [&](const auto& r) {
            checkFields(check, {}, r);
            checkUntyped(check, r);
        },
        row);
}

}  // namespace wm::picture
