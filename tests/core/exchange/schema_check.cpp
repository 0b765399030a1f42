// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/exchange/schema_check.h"
#include "tests/repository.h"

#include <algorithm>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

namespace wm::test {

using nlohmann::json;

namespace {

using Patterns = std::map<std::string, std::regex>;

class Checker {
  public:
    Checker(const json& root, Patterns& patterns) : root_(root), patterns_(patterns) {}
    std::vector<std::string> findings;

    void check(const json& schema, const json& value, const std::string& place) {
        for (const auto& [keyword, rule] : schema.items())
            checkKeyword(keyword, rule, schema, value, place);
    }

  private:
    void say(const std::string& place, const std::string& what) { findings.push_back(place + ": " + what); }
    void expect(bool kept, const std::string& place, const std::string& what) {
        if (!kept)
            say(place, what);
    }

    static bool isOfType(const json& value, const std::string& type) {
        return (type == "object" && value.is_object()) || (type == "array" && value.is_array()) ||
               (type == "string" && value.is_string()) || (type == "boolean" && value.is_boolean()) ||
               (type == "integer" && value.is_number_integer()) || (type == "number" && value.is_number()) ||
               (type == "null" && value.is_null());
    }

    void checkKeyword(const std::string& keyword, const json& rule, const json& schema, const json& value,
                      const std::string& place) {
        static const std::set<std::string> kSayNothing{"$schema", "$defs",    "title",
                                                       "default", "examples", "description"};
        if (kSayNothing.contains(keyword))
            return;
        if (keyword == "$ref")
            check(root_.at(json::json_pointer(rule.get<std::string>().substr(1))), value, place);
        else if (keyword == "type")
            expect(isOfType(value, rule), place, "is not of type " + rule.get<std::string>());
        else if (keyword == "const")
            expect(value == rule, place, "is not " + rule.dump());
        else if (keyword == "enum")
            expect(std::find(rule.begin(), rule.end(), value) != rule.end(), place,
                   value.dump() + " is none of " + rule.dump());
        else if (keyword == "anyOf")
            checkAnyOf(rule, value, place);
        else if (value.is_object())
            checkObject(keyword, rule, schema, value, place);
        else if (value.is_array())
            checkArray(keyword, rule, value, place);
        else if (value.is_string())
            checkString(keyword, rule, value.get<std::string>(), place);
        else if (value.is_number())
            checkNumber(keyword, rule, value, place);
    }

    void checkAnyOf(const json& rule, const json& value, const std::string& place) {
        const bool kept = std::any_of(rule.begin(), rule.end(), [&](const json& choice) {
            Checker checker(root_, patterns_);
            checker.check(choice, value, place);
            return checker.findings.empty();
        });
        expect(kept, place, value.dump() + " is none of the choices");
    }

    void checkObject(const std::string& keyword, const json& rule, const json& schema, const json& value,
                     const std::string& place) {
        if (keyword == "required") {
            for (const json& key : rule)
                expect(value.contains(key.get<std::string>()), place, "lacks " + key.dump());
        } else if (keyword == "properties") {
            for (const auto& [key, inner] : value.items())
                if (rule.contains(key))
                    check(rule.at(key), inner, place + '/' + key);
        } else if (keyword == "additionalProperties") {
            for (const auto& [key, inner] : value.items())
                if (!schema.contains("properties") || !schema.at("properties").contains(key))
                    expect(rule != false, place, "has the unknown key " + key);
        } else {
            say(place, "keyword not known here: " + keyword);
        }
    }

    void checkArray(const std::string& keyword, const json& rule, const json& value,
                    const std::string& place) {
        if (keyword == "items")
            for (std::size_t i = 0; i < value.size(); ++i)
                check(rule, value[i], place + '/' + std::to_string(i));
        else if (keyword == "maxItems")
            expect(value.size() <= rule.get<std::size_t>(), place, "has too many entries");
        else
            say(place, "keyword not known here: " + keyword);
    }

    void checkString(const std::string& keyword, const json& rule, const std::string& value,
                     const std::string& place) {
        if (keyword == "pattern")
            expect(std::regex_search(value, pattern(rule.get<std::string>())), place,
                   "'" + value + "' does not match " + rule.dump());
        else if (keyword == "minLength")
            expect(value.size() >= rule.get<std::size_t>(), place, "is too short");
        else if (keyword == "maxLength")
            expect(value.size() <= rule.get<std::size_t>(), place, "is too long");
        else
            say(place, "keyword not known here: " + keyword);
    }

    const std::regex& pattern(const std::string& text) {
        return patterns_.try_emplace(text, text).first->second;
    }

    void checkNumber(const std::string& keyword, const json& rule, const json& value,
                     const std::string& place) {
        if (keyword == "minimum")
            expect(value >= rule, place, "is below " + rule.dump());
        else if (keyword == "maximum")
            expect(value <= rule, place, "is above " + rule.dump());
        else
            say(place, "keyword not known here: " + keyword);
    }

    const json& root_;
    Patterns& patterns_;
};

}  // namespace

std::vector<std::string> breaches(const json& schema, const json& value) {
    Patterns patterns;
    Checker checker(schema, patterns);
    checker.check(schema, value, "");
    return checker.findings;
}

std::string repositoryText(const std::string& path) {
    std::ifstream file(test::repositoryPath(path), std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

}  // namespace wm::test
