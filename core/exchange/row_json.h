// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <concepts>
#include <cstdint>
#include <limits>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/id.h"
#include "core/base/names.h"
#include "core/base/result.h"
#include "core/base/text.h"
#include "core/calendar/date.h"
#include "core/exchange/json_text.h"
#include "core/units/decimal.h"
#include "core/units/quantity.h"

// Rows to and from JSON by their own list of fields, for the files of core/exchange alone. The same list
// makes the tables of the store, so a field that is added to a row is in all three.
namespace wm::exchange {

/// Beyond any count of ours; an id may be larger.
inline constexpr std::int64_t kMostCount = 1'000'000'000'000;
/// Beyond any hours, metres, minutes or money of ours (see core/units/quantity.h).
inline constexpr std::int64_t kMostQuantity = 1'000'000'000;

template <class T>
concept HasFields = requires(T row) {
    T::fields(row, [](std::string_view, auto&) {});
};

template <HasFields T>
std::size_t fieldCount() {
    std::size_t count = 0;
    const T row{};
    T::fields(row, [&count](std::string_view, const auto&) { ++count; });
    return count;
}

// ---- writing

inline nlohmann::ordered_json jsonOf(bool value) {
    return value;
}
inline nlohmann::ordered_json jsonOf(std::int64_t value) {
    return value;
}
inline nlohmann::ordered_json jsonOf(const std::string& value) {
    return value;
}
inline nlohmann::ordered_json jsonOf(calendar::Date value) {
    return value.iso();
}
inline nlohmann::ordered_json jsonOf(const units::Decimal& value) {
    return value.text();
}
template <class Tag>
nlohmann::ordered_json jsonOf(base::Id<Tag> value) {
    return value.value();
}
template <class Tag>
nlohmann::ordered_json jsonOf(units::Quantity<Tag> value) {
    return value.count();
}
template <base::Named E>
nlohmann::ordered_json jsonOf(E value) {
    return base::nameOf(value);
}
template <HasFields T>
nlohmann::ordered_json jsonOf(const T& row);
template <class T>
nlohmann::ordered_json jsonOf(const std::optional<T>& value) {
    return value ? jsonOf(*value) : nlohmann::ordered_json(nullptr);
}
template <HasFields T>
nlohmann::ordered_json jsonOf(const std::vector<T>& children) {
    auto list = nlohmann::ordered_json::array();
    for (const T& child : children)
        list.push_back(jsonOf(child));
    return list;
}
/// A row or child as an object; a child of one field as that field alone.
template <HasFields T>
nlohmann::ordered_json jsonOf(const T& row) {
    auto object = nlohmann::ordered_json::object();
    T::fields(row, [&object](std::string_view name, const auto& member) {
        object.emplace(std::string(name), jsonOf(member));
    });
    return object.size() == 1 ? object.front() : object;
}

// ---- reading. Errors carry the place below the value that was read; `inside` puts the rest before it.

using Read = base::Result<void>;

Read refuseType(const nlohmann::json& value, std::string_view wanted);

Read readJson(const nlohmann::json& value, bool& into);
/// `most`: the largest amount on either side of zero.
Read readWhole(const nlohmann::json& value, std::int64_t most, std::int64_t& into);
Read readJson(const nlohmann::json& value, std::int64_t& into);
Read readJson(const nlohmann::json& value, std::string& into);
Read readJson(const nlohmann::json& value, calendar::Date& into);
Read readJson(const nlohmann::json& value, units::Decimal& into);

template <class Tag>
Read readJson(const nlohmann::json& value, base::Id<Tag>& into) {
    std::int64_t number = 0;
    if (auto read = readWhole(value, std::numeric_limits<std::int64_t>::max(), number); !read)
        return read;
    if (number < 1)
        return base::refuse(base::Fault::NotPositive, {}, std::to_string(number));
    into = base::Id<Tag>{number};
    return {};
}

template <class Tag>
Read readJson(const nlohmann::json& value, units::Quantity<Tag>& into) {
    std::int64_t count = 0;
    if (auto read = readWhole(value, kMostQuantity, count); !read)
        return read;
    into = units::Quantity<Tag>{count};
    return {};
}

template <base::Named E>
Read readJson(const nlohmann::json& value, E& into) {
    std::string word;
    if (auto read = readJson(value, word); !read)
        return read;
    const auto named = base::fromName<E>(word);
    if (!named) {
        std::string all;
        for (const std::string_view name : base::Names<E>::names)
            all += (all.empty() ? "" : ", ") + std::string(name);
        return base::refuse(base::Fault::Unknown, {}, excerpt(word), all);
    }
    into = *named;
    return {};
}

template <class T>
Read readJson(const nlohmann::json& value, std::optional<T>& into) {
    if (value.is_null()) {
        into.reset();
        return {};
    }
    return readJson(value, into.emplace());
}

/// How strictly the keys of an object are taken. The exchange text must have every key; a starter schedule
/// may leave keys out and must leave some out, and says some things in words.
struct Exactly {
    static constexpr bool kOmittedIsDefault = false;
    static constexpr bool leftOut(std::string_view /*key*/) { return false; }
};

template <class Manner, HasFields T>
Read readObject(const nlohmann::json& value, T& into);

template <class Manner, HasFields T>
Read readChild(const nlohmann::json& value, T& into) {
    if constexpr (requires { Manner::read(value, into); })
        return Manner::read(value, into);
    else
        return readObject<Manner>(value, into);
}

template <class Manner, HasFields T>
Read readList(const nlohmann::json& value, std::vector<T>& into) {
    if (!value.is_array())
        return refuseType(value, "list");
    for (std::size_t i = 0; i < value.size(); ++i)
        if (auto read = readChild<Manner>(value[i], into.emplace_back()); !read)
            return tl::unexpected(inside(i, read.error()));
    return {};
}

/// Ids that a row holds as bare numbers because they may be of any table.
constexpr bool holdsAnyId(std::string_view key) {
    return key == "fact" || key == "origin";
}

template <class Manner, class T>
Read readMember(std::string_view key, const nlohmann::json& value, T& into) {
    if constexpr (std::same_as<T, std::int64_t>)
        return holdsAnyId(key) ? readWhole(value, std::numeric_limits<std::int64_t>::max(), into)
                               : readJson(value, into);
    else if constexpr (requires { into.emplace_back(); } && !std::same_as<T, std::string>)
        return readList<Manner>(value, into);
    else
        return readJson(value, into);
}

/// Malformed if `object` has a key that is not among those `taken` from it.
Read refuseOtherKeys(const nlohmann::json& object, const std::vector<std::string_view>& taken);

template <class Manner, HasFields T>
Read readObject(const nlohmann::json& value, T& into) {
    if (fieldCount<T>() == 1) {
        Read result;
        T::fields(into, [&](std::string_view key, auto& member) {
            result = readMember<Manner>(key, value, member);
        });
        return result;
    }
    if (!value.is_object())
        return refuseType(value, "object");
    Read result;
    std::vector<std::string_view> taken;
    T::fields(into, [&](std::string_view key, auto& member) {
        if (!result || Manner::leftOut(key))
            return;
        const auto at = value.find(key);
        if (at != value.end()) {
            taken.push_back(key);
            result = readMember<Manner>(key, *at, member);
        } else if (!Manner::kOmittedIsDefault) {
            result = base::refuse(base::Fault::Malformed, {}, {}, "this key");
        }
        if (!result)
            result = tl::unexpected(inside(key, result.error()));
    });
    return result ? refuseOtherKeys(value, taken) : result;
}

}  // namespace wm::exchange
