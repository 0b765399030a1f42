// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/logging.h"

#include <spdlog/details/null_mutex.h>
#include <spdlog/sinks/base_sink.h>
#include <spdlog/spdlog.h>

#include <array>
#include <cstdio>
#include <memory>
#include <string_view>

#include "core/base/text.h"

namespace wm::app {

namespace {

constexpr std::array<const char*, 3> kLayers{"app", "store", "ui"};

// Paths and what a damaged file holds stand in the lines; a terminal must not act on them.
class HarmlessSink : public spdlog::sinks::base_sink<spdlog::details::null_mutex> {
  protected:
    void sink_it_(const spdlog::details::log_msg& message) override {
        spdlog::memory_buf_t line;
        formatter_->format(message, line);
        const std::string plain = base::harmless(std::string_view(line.data(), line.size()));
        std::fwrite(plain.data(), 1, plain.size(), stderr);
    }
    void flush_() override { std::fflush(stderr); }
};

}  // namespace

Logging::Logging(bool verbose) {
    if (!verbose)
        return;
    const auto sink = std::make_shared<HarmlessSink>();
    sink->set_pattern("%H:%M:%S %n: %v");
    for (const char* layer : kLayers) {
        auto logger = std::make_shared<spdlog::logger>(layer, sink);
        logger->set_level(spdlog::level::debug);
        spdlog::drop(layer);
        spdlog::register_logger(std::move(logger));
    }
}

Logging::~Logging() {
    for (const char* layer : kLayers)
        spdlog::drop(layer);
}

}  // namespace wm::app
