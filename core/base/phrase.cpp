// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/phrase.h"

#include <array>
#include <charconv>
#include <utility>

namespace wm::base {

namespace {

// Characters that no text of a person has (RFC 20: start and end of text, unit separator).
constexpr char kBegin = '\x02';
constexpr char kEnd = '\x03';
constexpr char kNext = '\x1f';

std::string takeUntilMark(std::string_view& rest) {
    const std::size_t end = rest.find_first_of(std::string_view("\x02\x03\x1f"));
    std::string text(rest.substr(0, end));
    rest.remove_prefix(end == std::string_view::npos ? rest.size() : end);
    return text;
}

bool take(std::string_view& rest, char mark) {
    const bool isThere = rest.starts_with(mark);
    if (isThere)
        rest.remove_prefix(1);
    return isThere;
}

constexpr int kDeepest = 8;

Phrase takePhrase(std::string_view& rest, int depth) {
    if (depth > kDeepest || !take(rest, kBegin))
        return {{}, takeUntilMark(rest)};
    Phrase phrase{takeUntilMark(rest)};
    if (take(rest, kNext))
        phrase.text = takeUntilMark(rest);
    if (take(rest, kNext)) {
        const std::string count = takeUntilMark(rest);
        std::int64_t value = 0;
        if (std::from_chars(count.data(), count.data() + count.size(), value).ec == std::errc())
            phrase.count = value;
    }
    while (take(rest, kNext))
        phrase.parts.push_back(takePhrase(rest, depth + 1));
    take(rest, kEnd);
    return phrase;
}

void replaceAll(std::string& text, std::string_view what, std::string_view by) {
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
        text.replace(at, what.size(), by);
}

}  // namespace

Phrase phrase(const char* context, const char* text) {
    return {.context = context, .text = text};
}

std::string english(const Phrase& phrase) {
    std::string text = phrase.text;
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
    if (phrase.context.empty())
        return phrase.text;
    const std::string text = words(phrase);
    std::string result;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char next = at + 1 < text.size() ? text[at + 1] : '\0';
        const auto part = static_cast<std::size_t>(next - '1');
        if (text[at] == '%' && next == 'n' && phrase.count) {
            result += std::to_string(*phrase.count);
            ++at;
        } else if (text[at] == '%' && next >= '1' && next <= '9' && part < phrase.parts.size()) {
            result += said(phrase.parts[part], words);
            ++at;
        } else {
            result += text[at];
        }
    }
    return result;
}

std::string stored(const Phrase& phrase) {
    if (phrase.context.empty())
        return phrase.text;
    std::string kept = kBegin + phrase.context + kNext + phrase.text + kNext;
    if (phrase.count)
        kept += std::to_string(*phrase.count);
    for (const Phrase& part : phrase.parts)
        kept += kNext + stored(part);
    return kept + kEnd;
}

Phrase restored(std::string_view kept) {
    if (!kept.starts_with(kBegin))
        return {{}, std::string(kept)};
    return takePhrase(kept, 0);
}

}  // namespace wm::base
