// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/json_text.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>
#include <set>
#include <vector>

#include "core/base/text.h"

namespace wm::exchange {

using base::Error;
using base::Fault;
using base::refuse;
using nlohmann::json;

namespace {

// Looks through a text before a tree is built: finds what the tree would hide (a key given twice) or suffer
// from (nesting without end), and where the text breaks.
class Inspector : public nlohmann::json_sax<json> {
  public:
    explicit Inspector(const std::size_t& line) : line_(line) {}
    bool null() override { return true; }
    bool boolean(bool /*value*/) override { return true; }
    bool number_integer(number_integer_t /*value*/) override { return true; }
    bool number_unsigned(number_unsigned_t /*value*/) override { return true; }
    bool number_float(number_float_t /*value*/, const string_t& /*text*/) override { return true; }
    bool string(string_t& /*value*/) override { return true; }
    bool binary(binary_t& /*value*/) override { return true; }
    bool start_object(std::size_t /*size*/) override { return enter(); }
    bool start_array(std::size_t /*size*/) override { return enter(); }
    bool end_object() override { return leave(); }
    bool end_array() override { return leave(); }
    bool key(string_t& name) override {
        if (keys_.back().insert(name).second)
            return true;
        error = Error{Fault::Duplicate, "line " + std::to_string(line_), excerpt(name), {}};
        return false;
    }
    bool parse_error(std::size_t position, const std::string& token,
                     const nlohmann::detail::exception& /*what*/) override {
        brokenAt = position;
        error = Error{Fault::Malformed, {}, token, {}};
        return false;
    }

    std::optional<Error> error;
    std::size_t brokenAt = 0;

  private:
    bool enter() {
        keys_.emplace_back();
        if (keys_.size() <= static_cast<std::size_t>(kDeepest))
            return true;
        error = Error{Fault::Malformed, {}, "more than " + std::to_string(kDeepest) + " levels", {}};
        return false;
    }
    bool leave() {
        keys_.pop_back();
        return true;
    }
    const std::size_t& line_;
    std::vector<std::set<std::string>> keys_;
};

// Walks through a text and knows on which line it is.
struct LineCounter {
    using iterator_category = std::forward_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    const char* at = nullptr;
    std::size_t* line = nullptr;

    reference operator*() const { return *at; }
    LineCounter& operator++() {
        *line += *at++ == '\n' ? 1U : 0U;
        return *this;
    }
    friend bool operator==(const LineCounter& a, const LineCounter& b) { return a.at == b.at; }
    friend bool operator!=(const LineCounter& a, const LineCounter& b) { return a.at != b.at; }
};

std::string lineOf(std::string_view text, std::size_t position) {
    const auto until = text.substr(0, std::min(position, text.size()));
    return "line " + std::to_string(1 + std::count(until.begin(), until.end(), '\n'));
}

}  // namespace

base::Result<json> parseJson(std::string_view text) {
    if (!base::isUtf8(text))
        return refuse(Fault::NotText, "text");
    if (base::trimmed(text).empty())
        return refuse(Fault::Empty, "text");
    std::size_t line = 1;
    Inspector inspector(line);
    json::sax_parse(LineCounter{text.data(), &line}, LineCounter{text.data() + text.size(), &line},
                    &inspector);
    if (inspector.error) {
        Error error = *inspector.error;
        if (error.fault == Fault::Malformed && inspector.brokenAt > 0) {
            const bool cutShort = inspector.brokenAt > base::trimmed(text).size();
            error.field = lineOf(text, inspector.brokenAt);
            error.given = cutShort ? "end of text" : excerpt(error.given);
        } else if (error.fault == Fault::Malformed) {
            error.field = "text";
        }
        return tl::unexpected(error);
    }
    return json::parse(text, nullptr, false);
}

base::Result<void> checkFormat(const json& root, int newest) {
    if (!root.is_object())
        return refuse(Fault::Malformed, "text", root.type_name(), "object");
    const auto format = root.find("format");
    if (format == root.end())
        return refuse(Fault::Malformed, "format", {}, std::to_string(newest));
    if (!format->is_number_integer() || *format < 1)
        return refuse(Fault::Malformed, "format", excerpt(format->dump()), std::to_string(newest));
    if (*format > newest)
        return refuse(Fault::NewerFormat, "format", format->dump(), std::to_string(newest));
    return {};
}

std::string excerpt(std::string_view text) {
    constexpr std::size_t kLongestExcerpt = 60;
    if (text.size() <= kLongestExcerpt)
        return std::string(text);
    std::size_t end = kLongestExcerpt;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U)
        --end;
    return std::string(text.substr(0, end)) + "\u2026";
}

Error inside(std::string_view key, Error error) {
    auto& [lines, field] = error.field;
    if (!lines.empty() && lines.front().list.empty())
        lines.front().list = key;
    else if (lines.empty())
        error.field = error.field.within(base::Place(key));
    else
        lines.front().list = std::string(key) + '.' + lines.front().list;
    return error;
}

Error inside(std::size_t at, Error error) {
    error.field = error.field.within("", at);
    return error;
}

}  // namespace wm::exchange
