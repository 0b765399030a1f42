// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The schemas and the texts that keep to them, checked by a library (valijson) beside our own small reader of
// JSON Schema: each might have its faults, both hardly the same.
#include <gtest/gtest.h>

#include <functional>
#include <memory>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include "core/exchange/json.h"
#include "tests/core/exchange/generated_rows.h"
#include "tests/core/exchange/schema_check.h"
#include "tests/core/exchange/shipped.h"

namespace wm::exchange {
namespace {

using nlohmann::json;
using valijson::adapters::NlohmannJsonAdapter;

// A schema as the library has read it.
class LibrarySchema {
  public:
    explicit LibrarySchema(const json& text) {
        valijson::SchemaParser parser(valijson::SchemaParser::kDraft7);
        parser.populateSchema(NlohmannJsonAdapter(text), *schema_);
    }
    // Where `value` breaks it, the first place; empty if it keeps to it.
    [[nodiscard]] std::string breach(const json& value) const {
        valijson::Validator validator;
        valijson::ValidationResults results;
        if (validator.validate(*schema_, NlohmannJsonAdapter(value), &results))
            return {};
        valijson::ValidationResults::Error error;
        if (!results.popError(error))
            return "broken";
        std::string place;
        for (const std::string& step : error.context)
            place += step;
        return place + ": " + error.description;
    }

  private:
    std::unique_ptr<valijson::Schema> schema_ = std::make_unique<valijson::Schema>();
};

json schemaOf(const std::string& name) {
    return json::parse(test::repositoryText("resources/" + name + ".schema.json"));
}

TEST(LongSchemaLibraryTest, EveryTextThatIsWrittenKeepsToItsSchema) {
    const LibrarySchema schema(schemaOf("exchange"));
    EXPECT_TRUE(rc::check("by the library as well", [&schema] {
        const std::string breach = schema.breach(json::parse(toJson(picture::Ledger(test::drawRows()))));
        if (!breach.empty())
            RC_FAIL(breach);
    }));
}

TEST(SchemaLibraryTest, EveryShippedStarterKeepsToItsSchema) {
    const LibrarySchema schema(schemaOf("starter"));
    for (const char* file : test::kShippedStarters)
        EXPECT_EQ(schema.breach(json::parse(test::shippedText(file))), "") << file;
}

// Every place of a text, by its pointer.
void collect(const json& value, const json::json_pointer& at, std::vector<json::json_pointer>& places) {
    places.push_back(at);
    if (value.is_object())
        for (const auto& [key, inner] : value.items())
            collect(inner, at / key, places);
    else if (value.is_array())
        for (std::size_t i = 0; i < value.size(); ++i)
            collect(value[i], at / i, places);
}

// One thing put out of order: another type, too much, too little, a key that is gone or one too many.
json broken(const json& text, const json::json_pointer& at, std::size_t how) {
    static const std::vector<json> kInstead{
        nullptr, true, -1, "x", "", 9'000'000'000'000, json::array(), json::object(), "15 h", "no such word"};
    json changed = text;
    json& value = changed.at(at);
    if (how < kInstead.size())
        value = kInstead[how];
    else if (value.is_object() && how == kInstead.size())
        value["one too many"] = 1;
    else if (value.is_object() && !value.empty())
        value.erase(value.begin());
    else if (value.is_array() && !value.empty())
        value.push_back(value.front());
    return changed;
}
constexpr std::size_t kWays = 12;

// Our reader must call broken just what the library calls broken; `sound` gives the text to be broken.
void expectAgreement(const std::string& name, const std::function<json()>& sound) {
    const json schema = schemaOf(name);
    const LibrarySchema library(schema);
    int all = 0;
    int breaches = 0;
    EXPECT_TRUE(rc::check(name + ": ours agrees with the library", [&] {
        const json text = sound();
        std::vector<json::json_pointer> places;
        collect(text, json::json_pointer(), places);
        const auto at = *rc::gen::inRange<std::size_t>(0, places.size());
        const json changed = broken(text, places[at], *rc::gen::inRange<std::size_t>(0, kWays));
        const std::string byLibrary = library.breach(changed);
        const auto byOurs = test::breaches(schema, changed);
        RC_LOG() << places[at].to_string() << ": library \"" << byLibrary << "\", ours \""
                 << (byOurs.empty() ? "" : byOurs.front()) << "\"\n";
        RC_ASSERT(byLibrary.empty() == byOurs.empty());
        ++all;
        breaches += byLibrary.empty() ? 0 : 1;
    }));
    EXPECT_GT(breaches, all / 2) << "most of what is done to a text breaks it";
}

TEST(LongSchemaLibraryTest, OursAgreesWithItOnBrokenTexts) {
    const json starter = json::parse(test::shippedText("small-wheel-youth.json"));
    expectAgreement("starter", [&starter] { return starter; });
    expectAgreement("exchange", [] { return json::parse(toJson(picture::Ledger(test::drawRows()))); });
}

}  // namespace
}  // namespace wm::exchange
