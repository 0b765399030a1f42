// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/older_text.h"

#include <array>
#include <initializer_list>
#include <map>
#include <string>
#include <utility>

#include "core/fastening/inside.h"
#include "core/weekend/freed.h"

namespace wm::exchange {

using nlohmann::json;

namespace {

void giveKeys(json& root, const char* table, std::initializer_list<const char*> keys, const json& value) {
    const auto rows = root.find(table);
    if (rows == root.end() || !rows->is_array())
        return;
    for (json& row : *rows)
        if (row.is_object())
            for (const char* key : keys)
                row.emplace(key, value);
}

// The same for what stands in a list of each row.
void giveKeysInside(json& root, const char* table, const char* list,
                    std::initializer_list<std::pair<const char*, json>> keys) {
    const auto rows = root.find(table);
    if (rows == root.end() || !rows->is_array())
        return;
    for (json& row : *rows) {
        const auto parts = row.is_object() ? row.find(list) : row.end();
        if (!row.is_object() || parts == row.end() || !parts->is_array())
            continue;
        for (json& part : *parts)
            if (part.is_object())
                for (const auto& [key, value] : keys)
                    part.emplace(key, value);
    }
}

void giveWeights(json& root) {
    giveKeys(root, "task_version", {"weights"}, json::array());
}

void giveDrawer(json& root) {
    root.emplace("tool", json::array());
    root.emplace("calibration", json::array());
    giveKeys(root, "joint_version", {"shared_from", "shared_to"}, nullptr);
    giveKeys(root, "joint_mark", {"tool", "moved_count", "moved_degrees", "outing"}, nullptr);
}

void giveManualPages(json& root) {
    giveKeysInside(root, "task_version", "kit", {{"source", ""}, {"page", ""}, {"confirmed", false}});
    giveKeysInside(root, "task_version", "measures", {{"page", ""}});
}

void giveStated(json& root) {
    giveKeys(root, "record", {"stated"}, json::array());
}

void giveMoves(json& root) {
    giveKeys(root, "move", {"told"}, "unasked");
    giveKeys(root, "move", {"back_on", "record"}, nullptr);
    giveKeys(root, "task_version", {"sends_out"}, false);
    giveKeys(root, "step_version", {"frees"}, json::array());
    const auto steps = root.find("step_version");
    if (steps == root.end() || !steps->is_array())
        return;
    for (json& step : *steps)
        for (const weekend::FreedByCode& each : weekend::freedByCode())
            if (step.is_object() && step.contains("code") && step.at("code") == each.step &&
                step.at("frees").is_array())
                step.at("frees").push_back(each.position);
}

void givePositionsOfJoints(json& root) {
    giveKeys(root, "joint_mark", {"item"}, nullptr);
    const auto joints = root.find("joint_version");
    if (joints == root.end() || !joints->is_array())
        return;
    for (json& joint : *joints) {
        if (!joint.is_object() || !joint.emplace("position", nullptr).second || !joint.contains("code"))
            continue;
        for (const fastening::SitsIn& each : fastening::sitsInByCode())
            if (joint.at("code") == each.joint)
                joint["position"] = each.position;
    }
}

std::string wordOf(const json& row, const char* key) {
    const auto at = row.find(key);
    return at != row.end() && at->is_string() ? at->get<std::string>() : std::string();
}

std::int64_t numberOf(const json& row, const char* key) {
    const auto at = row.find(key);
    return at != row.end() && at->is_number_integer() ? at->get<std::int64_t>() : 0;
}

// Which words are a starter's: as the store does it with an older file.
void giveFromStarter(json& root, const char* table, const char* id) {
    giveKeys(root, table, {"from_starter"}, false);
    const auto rows = root.find(table);
    const auto machines = root.find("machine");
    if (rows == root.end() || !rows->is_array() || machines == root.end() || !machines->is_array())
        return;
    std::map<std::int64_t, std::string> since;  // of the machines with a schedule
    for (const json& machine : *machines)
        if (machine.is_object() && !wordOf(machine, "starter").empty())
            since.emplace(numberOf(machine, "id"), wordOf(machine, "since"));
    std::map<std::int64_t, json*> first;
    for (json& row : *rows)
        if (row.is_object()) {
            json*& known = first[numberOf(row, id)];
            if (known == nullptr || numberOf(row, "entered") < numberOf(*known, "entered"))
                known = &row;
        }
    for (const auto& [number, row] : first) {
        const auto machine = since.find(numberOf(*row, "machine"));
        const bool isTheirs = machine != since.end() && (wordOf(*row, "valid_from") == machine->second ||
                                                         wordOf(*row, "source") == "common practice");
        if (isTheirs && row->value("confirmed", json(false)) == json(false))
            row->at("from_starter") = true;
    }
}

void giveOrder(json& root) {
    for (const char* table : {"step_version", "task_version"})
        giveKeys(root, table, {"doings", "edges"}, json::array());
    giveKeys(root, "step_version", {"body_state"}, "any");
    giveKeys(root, "task_version", {"comes_last"}, false);
    giveKeys(root, "task_version", {"short_name"}, "");
    giveKeys(root, "garage", {"cool_minutes"}, 240);
    giveKeys(root, "joint_version", {"held"}, "");
    giveFromStarter(root, "task_version", "task");
    giveFromStarter(root, "step_version", "step");
    giveFromStarter(root, "joint_version", "joint");
}

// What each format has beyond the one before.
struct Later {
    int format;
    void (*give)(json& root);
};
constexpr std::array kLater{Later{2, giveWeights}, Later{3, giveDrawer}, Later{4, giveManualPages},
                            Later{5, giveMoves},   Later{5, giveStated}, Later{6, givePositionsOfJoints},
                            Later{7, giveOrder}};

}  // namespace

int newestFormat() {
    return kLater.back().format;
}

void bringUpToDate(json& root) {
    const int format = root.at("format").get<int>();
    for (const Later& later : kLater)
        if (format < later.format)
            later.give(root);
}

}  // namespace wm::exchange
