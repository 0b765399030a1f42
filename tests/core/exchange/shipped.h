// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <set>
#include <string>
#include <vector>

#include "core/exchange/starter.h"

namespace wm::test {

/// The starter schedules that come with the program, by file. A test holds that there are no others.
inline constexpr std::array<const char*, 4> kShippedStarters{
    "four-stroke-enduro.json", "four-stroke-motocross.json", "small-wheel-youth.json",
    "two-stroke-motocross.json"};

std::string shippedText(const std::string& file);
/// A file that can't be read fails the test and comes back empty.
exchange::Starter shippedStarter(const std::string& file);

template <class T>
std::set<std::string> codesOf(const std::vector<T>& definitions) {
    std::set<std::string> codes;
    for (const T& definition : definitions)
        codes.insert(definition.code);
    return codes;
}

/// The definition of that code, or nullptr.
template <class T>
const T* withCode(const std::vector<T>& definitions, std::string_view code) {
    for (const T& definition : definitions)
        if (definition.code == code)
            return &definition;
    return nullptr;
}

}  // namespace wm::test
