// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/phrase.h"

#include <array>
#include <utility>

namespace wm::base {

namespace {

void replaceAll(std::string& text, std::string_view what, std::string_view by) {
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
        text.replace(at, what.size(), by);
}

}  // namespace

Phrase phrase(const char* context, const char* text) {
    return {context, text};
}

Phrase phrase(const char* context, const char* text, std::nullptr_t /*meaning*/, std::int64_t count) {
    return {context, text, count};
}

std::string english(const Phrase& phrase) {
    std::string text(phrase.text);
    if (!phrase.count)
        return text;
    constexpr std::array<std::pair<std::string_view, std::string_view>, 3> kEndings{
        {{"(s)", "s"}, {"(es)", "es"}, {"has/have", "have"}}};
    for (const auto& [form, many] : kEndings) {
        const std::string_view one = form == "has/have" ? "has" : "";
        replaceAll(text, form, *phrase.count == 1 ? one : many);
    }
    return text;
}

std::string said(const Phrase& phrase, const Words& words) {
    const std::string text = words(phrase);
    std::string result;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char next = at + 1 < text.size() ? text[at + 1] : '\0';
        const auto part = static_cast<std::size_t>(next - '1');
        if (text[at] == '%' && next == 'n' && phrase.count) {
            result += std::to_string(*phrase.count);
            ++at;
        } else if (text[at] == '%' && next >= '1' && next <= '9' && part < phrase.parts.size()) {
            result += phrase.parts[part];
            ++at;
        } else {
            result += text[at];
        }
    }
    return result;
}

}  // namespace wm::base
