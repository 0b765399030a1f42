// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/harmless_output.h"

#include <string_view>

#include "core/base/text.h"

namespace wm::app {

HarmlessOutput::HarmlessOutput(QIODevice& to) : to_(to) {
    // Buffered here as little as there: what could not be written must be noticed at once.
    open(QIODevice::WriteOnly | QIODevice::Unbuffered);
}

qint64 HarmlessOutput::readData(char* /*into*/, qint64 /*most*/) {
    return -1;
}

qint64 HarmlessOutput::writeData(const char* bytes, qint64 size) {
    const std::string_view text(bytes, static_cast<std::size_t>(size));
    if (base::isPlain(text))
        return to_.write(bytes, size);
    std::string plain;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t tab = std::min(text.find('\t', from), text.size());
        plain += base::harmless(text.substr(from, tab - from));
        plain += tab < text.size() ? "\t" : "";
        from = tab + 1;
    }
    const auto length = static_cast<qint64>(plain.size());
    return to_.write(plain.data(), length) == length ? size : -1;
}

}  // namespace wm::app
