// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "core/exchange/row_json.h"
#include "core/picture/rows.h"

// What the schema must say of a row, worked out from the row's own fields.
namespace wm::test {

template <class T>
struct Shape;

inline nlohmann::json refTo(const std::string& name) {
    return {{"$ref", "#/$defs/" + name}};
}

template <>
struct Shape<bool> {
    static nlohmann::json json() { return {{"type", "boolean"}}; }
};
template <>
struct Shape<std::int64_t> {
    static nlohmann::json json() { return refTo("count"); }
};
template <>
struct Shape<std::string> {
    static nlohmann::json json() { return refTo("text"); }
};
template <>
struct Shape<calendar::Date> {
    static nlohmann::json json() { return refTo("date"); }
};
template <>
struct Shape<units::Decimal> {
    static nlohmann::json json() { return refTo("decimal"); }
};
template <>
struct Shape<units::Hours> {
    static nlohmann::json json() { return refTo("hours"); }
};
template <>
struct Shape<units::Metres> {
    static nlohmann::json json() { return refTo("metres"); }
};
template <>
struct Shape<units::Minutes> {
    static nlohmann::json json() { return refTo("minutes"); }
};
template <>
struct Shape<units::Money> {
    static nlohmann::json json() { return refTo("money"); }
};
template <class Tag>
struct Shape<base::Id<Tag>> {
    static nlohmann::json json() { return refTo("id"); }
};
template <base::Named E>
struct Shape<E> {
    static nlohmann::json json() { return {{"enum", base::Names<E>::names}}; }
};
template <class T>
struct Shape<std::optional<T>> {
    static nlohmann::json json() {
        return {{"anyOf", nlohmann::json::array({Shape<T>::json(), {{"type", "null"}}})}};
    }
};

template <class T>
nlohmann::json shapeOfField(std::string_view name) {
    return exchange::holdsAnyId(name) && std::is_same_v<T, std::int64_t> ? refTo("id") : Shape<T>::json();
}

/// {"type": "object", "required": [...], "properties": {...}, "additionalProperties": false}; a child of one
/// field has the shape of that field.
template <class T>
nlohmann::ordered_json rowShape() {
    auto properties = nlohmann::ordered_json::object();
    auto required = nlohmann::ordered_json::array();
    const T row{};
    T::fields(row, [&]<class Member>(std::string_view name, const Member& /*member*/) {
        required.push_back(name);
        properties.emplace(std::string(name), shapeOfField<Member>(name));
    });
    if (properties.size() == 1)
        return properties.front();
    return {{"type", "object"},
            {"required", required},
            {"additionalProperties", false},
            {"properties", properties}};
}

template <class T>
struct Shape<std::vector<T>> {
    static nlohmann::json json() { return {{"type", "array"}, {"items", rowShape<T>()}}; }
};

template <class... Rows>
struct SchemaOf {
    static nlohmann::ordered_json tables() {
        auto all = nlohmann::ordered_json::object();
        (all.emplace(std::string(Rows::kTable), rowShape<Rows>()), ...);
        return all;
    }
};

/// Every table with the shape of its rows, in order.
inline nlohmann::ordered_json tableShapes() {
    return picture::ForEachRow<SchemaOf>::tables();
}

}  // namespace wm::test
