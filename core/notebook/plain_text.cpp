// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/plain_text.h"

#include <algorithm>
#include <array>

#include "core/base/text.h"

namespace wm::notebook {

using base::Fault;
using base::refuse;
using base::Result;

namespace {

void append(std::string& out, std::uint32_t point) {
    if (point < 0x80) {
        out += static_cast<char>(point);
    } else if (point < 0x800) {
        out += static_cast<char>(0xC0U | (point >> 6U));
        out += static_cast<char>(0x80U | (point & 0x3FU));
    } else if (point < 0x10000) {
        out += static_cast<char>(0xE0U | (point >> 12U));
        out += static_cast<char>(0x80U | ((point >> 6U) & 0x3FU));
        out += static_cast<char>(0x80U | (point & 0x3FU));
    } else {
        out += static_cast<char>(0xF0U | (point >> 18U));
        out += static_cast<char>(0x80U | ((point >> 12U) & 0x3FU));
        out += static_cast<char>(0x80U | ((point >> 6U) & 0x3FU));
        out += static_cast<char>(0x80U | (point & 0x3FU));
    }
}

std::uint32_t byteAt(std::string_view bytes, std::size_t at) {
    return static_cast<unsigned char>(bytes[at]);
}

// A half of a pair without its other half becomes the sign for what can't be read.
std::string fromUtf16(std::string_view bytes, bool little) {
    constexpr std::uint32_t kUnreadable = 0xFFFD;
    const auto unit = [&](std::size_t at) {
        const std::uint32_t first = byteAt(bytes, at);
        const std::uint32_t second = byteAt(bytes, at + 1);
        return little ? second << 8U | first : first << 8U | second;
    };
    std::string out;
    out.reserve(bytes.size());
    for (std::size_t at = 0; at + 1 < bytes.size(); at += 2) {
        const std::uint32_t here = unit(at);
        if (here < 0xD800 || here > 0xDFFF) {
            append(out, here);
            continue;
        }
        const std::uint32_t low = here < 0xDC00 && at + 3 < bytes.size() ? unit(at + 2) : 0;
        if (low >= 0xDC00 && low <= 0xDFFF) {
            append(out, 0x10000 + ((here - 0xD800) << 10U) + (low - 0xDC00));
            at += 2;
        } else {
            append(out, kUnreadable);
        }
    }
    return out;
}

// Windows code page 1252, 0x80 to 0x9F, from the mapping table that unicode.org publishes for it (from
// memory); the five places without a letter stay what they are in Latin-1.
constexpr std::array<std::uint32_t, 32> kWindows{
    0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};

std::string fromWindows1252(std::string_view bytes) {
    std::string out;
    out.reserve(bytes.size() + bytes.size() / 8);
    for (std::size_t at = 0; at < bytes.size(); ++at) {
        const std::uint32_t byte = byteAt(bytes, at);
        append(out, byte >= 0x80 && byte < 0xA0 ? kWindows[byte - 0x80] : byte);
    }
    return out;
}

// Without a mark, plain letters in UTF-16 show by every other byte being nothing.
int bareUtf16(std::string_view bytes) {
    const std::size_t seen = std::min<std::size_t>(bytes.size(), 4096) & ~std::size_t{1};
    std::size_t even = 0;
    std::size_t odd = 0;
    for (std::size_t at = 0; at < seen; at += 2) {
        even += bytes[at] == '\0' ? 1U : 0U;
        odd += bytes[at + 1] == '\0' ? 1U : 0U;
    }
    const std::size_t most = seen / 2;
    if (most < 2)
        return 0;
    if (odd * 10 > most * 7 && even * 10 < most)
        return 1;
    return even * 10 > most * 7 && odd * 10 < most ? 2 : 0;
}

bool looksLikeNoText(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return (byte < 0x20 && c != '\n' && c != '\r' && c != '\t' && c != '\f') || byte == 0x7F;
    });
}

PlainText decoded(std::string_view bytes) {
    if (bytes.starts_with("\xEF\xBB\xBF") && base::isUtf8(bytes.substr(3)))
        return {Encoding::Utf8WithMark, std::string(bytes.substr(3))};
    if (bytes.starts_with("\xFF\xFE"))
        return {Encoding::Utf16Little, fromUtf16(bytes.substr(2), true)};
    if (bytes.starts_with("\xFE\xFF"))
        return {Encoding::Utf16Big, fromUtf16(bytes.substr(2), false)};
    if (const int bare = bareUtf16(bytes); bare != 0)
        return {bare == 1 ? Encoding::Utf16Little : Encoding::Utf16Big, fromUtf16(bytes, bare == 1)};
    if (base::isUtf8(bytes))
        return {Encoding::Utf8, std::string(bytes)};
    return {Encoding::Windows1252, fromWindows1252(bytes)};
}

}  // namespace

Result<PlainText> plainText(std::string_view bytes) {
    if (bytes.size() > kMostBytes)
        return refuse(Fault::TooLarge, "bytes", std::to_string(bytes.size()), std::to_string(kMostBytes));
    if (base::trimmed(bytes).empty())
        return refuse(Fault::Empty, "notebook");
    PlainText plain = decoded(bytes);
    if (looksLikeNoText(plain.text) || !base::isUtf8(plain.text))
        return refuse(Fault::NotText, "notebook");
    if (base::trimmed(plain.text).empty())
        return refuse(Fault::Empty, "notebook");
    return plain;
}

}  // namespace wm::notebook
