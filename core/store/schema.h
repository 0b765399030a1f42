// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace wm::store {

/// The mark in the file's header that says it is ours: "WMRK".
inline constexpr std::int32_t kApplicationId = 0x574D524B;

/// One step from version - 1 to version, run as one transaction. A step that was released is never edited:
/// a change to the schema is a new step at the end.
struct SchemaStep {
    int version = 0;
    std::string description;  ///< what it does, for the report of a migration
    int oldestReader = 0;     ///< the oldest version whose program can still read the result
    std::string program;      ///< the first program that has this version
    std::vector<std::string> statements;
};

/// All steps, in order, the first from nothing to version 1.
using Schema = std::vector<SchemaStep>;

Schema currentSchema();

namespace schema1 {
// The parts of version 1, each a list of statements.
std::vector<std::string> bookkeeping();
std::vector<std::string> cards();
std::vector<std::string> definitions();
std::vector<std::string> use();
std::vector<std::string> upkeep();
std::vector<std::string> shelf();
std::vector<std::string> search();
std::vector<std::string> guards();
}  // namespace schema1

namespace schema2 {
std::vector<std::string> hourWeights();
}  // namespace schema2

namespace schema3 {
std::vector<std::string> drawer();
}  // namespace schema3

namespace schema4 {
std::vector<std::string> manualPages();
}  // namespace schema4

namespace schema5 {
std::vector<std::string> seals();
}  // namespace schema5

namespace schema6 {
std::vector<std::string> stated();
std::vector<std::string> moves();
std::vector<std::string> values();
}  // namespace schema6

namespace schema7 {
std::vector<std::string> inside();
}  // namespace schema7

namespace schema8 {
std::vector<std::string> total();
}  // namespace schema8

namespace schema9 {
std::vector<std::string> order();
}  // namespace schema9

}  // namespace wm::store
