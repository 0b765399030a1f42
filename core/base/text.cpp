// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"

#include <algorithm>

namespace wm::base {

namespace {

bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

// How many bytes the sequence at `at` takes, or 0 if it is not well-formed (Unicode 15, table 3-7).
std::size_t sequenceLength(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) -> unsigned {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    };
    const auto tail = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const unsigned lead = byte(at);
    if (lead < 0x80)
        return 1;
    if (lead >= 0xC2 && lead <= 0xDF)
        return tail(at + 1) ? 2 : 0;
    if (lead >= 0xE0 && lead <= 0xEF) {
        const unsigned second = byte(at + 1);
        const bool ok = tail(at + 1) && tail(at + 2) && !(lead == 0xE0 && second < 0xA0) &&
                        !(lead == 0xED && second > 0x9F);
        return ok ? 3 : 0;
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        const unsigned second = byte(at + 1);
        const bool ok = tail(at + 1) && tail(at + 2) && tail(at + 3) && !(lead == 0xF0 && second < 0x90) &&
                        !(lead == 0xF4 && second > 0x8F);
        return ok ? 4 : 0;
    }
    return 0;
}

// How many bytes of a character that breaks the line stand at `at`: the ends of lines of all systems, pages,
// NEL, the separators of lines and paragraphs. 0 if it is another one.
std::size_t lineBreakLength(std::string_view text, std::size_t at) {
    const char c = text[at];
    if (c == '\r')
        return text.substr(at, 2) == "\r\n" ? 2 : 1;
    if (c == '\n' || c == '\v' || c == '\f')
        return 1;
    if (text.substr(at, 2) == "\xC2\x85")
        return 2;
    const std::string_view three = text.substr(at, 3);
    return three == "\xE2\x80\xA8" || three == "\xE2\x80\xA9" ? 3 : 0;
}

// True if the character of `length` bytes at `at` is a control character of either range (but for the line
// feed) or turns the direction of what follows (UAX 9: embeddings, overrides, isolates).
bool disturbs(std::string_view text, std::size_t at, std::size_t length) {
    const auto byte = [&](std::size_t i) -> unsigned { return static_cast<unsigned char>(text[at + i]); };
    if (length == 1)
        return (byte(0) < 0x20 && text[at] != '\n') || byte(0) == 0x7F;
    if (length == 2)
        return byte(0) == 0xC2 && byte(1) <= 0x9F;
    if (length != 3 || byte(0) != 0xE2)
        return false;
    return (byte(1) == 0x80 && byte(2) >= 0xA8 && byte(2) <= 0xAE) ||
           (byte(1) == 0x81 && byte(2) >= 0xA6 && byte(2) <= 0xA9);
}

}  // namespace

bool isUtf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = sequenceLength(text, at);
        if (length == 0)
            return false;
        at += length;
    }
    return true;
}

bool isPlain(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = sequenceLength(text, at);
        if (length == 0 || disturbs(text, at, length))
            return false;
        at += length;
    }
    return true;
}

std::string withPlainBlanks(std::string_view text) {
    std::string plain;
    plain.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        if (const std::size_t length = lineBreakLength(text, at); length > 0) {
            plain += '\n';
            at += length;
        } else {
            plain += text[at] == '\t' ? ' ' : text[at];
            ++at;
        }
    }
    return plain;
}

std::string harmless(std::string_view text) {
    if (isPlain(text))
        return std::string(text);
    const std::string blanks = withPlainBlanks(text);
    std::string plain;
    for (std::size_t at = 0; at < blanks.size();) {
        const std::size_t length = sequenceLength(blanks, at);
        if (length == 0 || disturbs(blanks, at, length))
            plain += "\uFFFD";
        else
            plain += blanks.substr(at, length);
        at += std::max<std::size_t>(length, 1);
    }
    return plain;
}

std::string onOneLine(std::string_view text) {
    std::string line = harmless(text);
    std::replace(line.begin(), line.end(), '\n', ' ');
    return line;
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

Result<std::string> parseName(std::string_view field, std::string_view text) {
    const std::string_view name = trimmed(text);
    if (!isPlain(name) || name.find('\n') != std::string_view::npos)
        return refuse(Fault::NotText, std::string(field));
    if (name.empty())
        return refuse(Fault::Empty, std::string(field));
    if (name.size() > kLongestName)
        return refuse(Fault::TooLong, std::string(field), {}, std::to_string(kLongestName));
    return std::string(name);
}

Result<std::string> parseNote(std::string_view field, std::string_view text) {
    const std::string blanks = withPlainBlanks(text);
    const std::string_view note = trimmed(blanks);
    if (!isPlain(note))
        return refuse(Fault::NotText, std::string(field));
    if (note.size() > kLongestNote)
        return refuse(Fault::TooLong, std::string(field), {}, std::to_string(kLongestNote));
    return std::string(note);
}

std::string lowered(std::string_view text) {
    std::string result(text);
    for (char& c : result)
        if (c >= 'A' && c <= 'Z')
            c = static_cast<char>(c - 'A' + 'a');
    return result;
}

std::string codeFromName(std::string_view name) {
    std::string code;
    for (const char c : lowered(name)) {
        const bool keep =
            (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
        if (keep)
            code += c;
        else if (!code.empty() && code.back() != '-')
            code += '-';
    }
    if (!code.empty() && code.back() == '-')
        code.pop_back();
    return code;
}

std::vector<std::string> split(std::string_view text, char separator) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    while (true) {
        const std::size_t to = text.find(separator, from);
        parts.emplace_back(text.substr(from, to == std::string_view::npos ? to : to - from));
        if (to == std::string_view::npos)
            return parts;
        from = to + 1;
    }
}

}  // namespace wm::base
