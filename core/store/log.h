// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <spdlog/spdlog.h>

namespace wm::store {

/// The logger named "store" gets what happens here, if the program has registered one; else nobody does.
template <class... Args>
void warn(spdlog::format_string_t<Args...> text, Args&&... args) {
    if (const auto logger = spdlog::get("store"))
        logger->warn(text, std::forward<Args>(args)...);
}

template <class... Args>
void note(spdlog::format_string_t<Args...> text, Args&&... args) {
    if (const auto logger = spdlog::get("store"))
        logger->info(text, std::forward<Args>(args)...);
}

}  // namespace wm::store
