// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace wm::test {

/// Where `value` breaks `schema`, in words; empty if it keeps to it. Knows the part of JSON Schema 2020-12
/// that our schemas use, and says so (as a finding) of any other keyword, so that none is passed over.
std::vector<std::string> breaches(const nlohmann::json& schema, const nlohmann::json& value);

/// The text of a file of the repository, by its path from the top ("resources/exchange.schema.json").
std::string repositoryText(const std::string& path);

}  // namespace wm::test
