// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/row_json.h"

#include <algorithm>

namespace wm::exchange {

using base::Fault;
using base::refuse;
using nlohmann::json;

namespace {

std::string shortly(const json& value) {
    return value.is_structured() ? std::string(value.type_name()) : excerpt(value.dump());
}

}  // namespace

Read refuseType(const json& value, std::string_view wanted) {
    return refuse(Fault::Malformed, {}, shortly(value), std::string(wanted));
}

Read readJson(const json& value, bool& into) {
    if (!value.is_boolean())
        return refuseType(value, "true or false");
    into = value.get<bool>();
    return {};
}

Read readWhole(const json& value, std::int64_t most, std::int64_t& into) {
    if (!value.is_number_integer())
        return refuseType(value, "whole number");
    const bool tooLarge = value.is_number_unsigned()
                              ? value.get<std::uint64_t>() > static_cast<std::uint64_t>(most)
                              : value.get<std::int64_t>() < -most;
    if (tooLarge)
        return refuse(Fault::TooLarge, {}, excerpt(value.dump()), std::to_string(most));
    into = value.get<std::int64_t>();
    return {};
}

Read readJson(const json& value, std::int64_t& into) {
    return readWhole(value, kMostCount, into);
}

Read readJson(const json& value, std::string& into) {
    if (!value.is_string())
        return refuseType(value, "text");
    into = base::withPlainBlanks(value.get_ref<const std::string&>());
    if (!base::isPlain(into))
        return refuse(Fault::NotText, {});
    if (into.size() > base::kLongestNote)
        return refuse(Fault::TooLong, {}, {}, std::to_string(base::kLongestNote));
    return {};
}

Read readJson(const json& value, calendar::Date& into) {
    std::string text;
    if (auto read = readJson(value, text); !read)
        return read;
    const auto date = calendar::parseDate({}, text);
    if (!date || date->iso() != text)
        return refuse(Fault::NotADate, {}, excerpt(text), "2026-05-16");
    into = *date;
    return {};
}

Read readJson(const json& value, units::Decimal& into) {
    std::string text;
    if (auto read = readJson(value, text); !read)
        return read;
    const auto number = units::parseDecimal({}, text);
    if (!number)
        return refuse(number.error().fault, {}, excerpt(text), number.error().wanted);
    if (number->text() != text)
        return refuse(Fault::NotANumber, {}, excerpt(text), number->text());
    into = *number;
    return {};
}

Read refuseOtherKeys(const json& object, const std::vector<std::string_view>& taken) {
    if (object.size() == taken.size())
        return {};
    for (const auto& [key, value] : object.items())
        if (std::find(taken.begin(), taken.end(), key) == taken.end())
            return refuse(Fault::Malformed, excerpt(key), excerpt(key), "no such key");
    return {};
}

}  // namespace wm::exchange
