// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/logging.h"

#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include <array>
#include <memory>

namespace wm::app {

namespace {

constexpr std::array<const char*, 3> kLayers{"app", "store", "ui"};

}  // namespace

Logging::Logging(bool verbose) {
    if (!verbose)
        return;
    const auto sink = std::make_shared<spdlog::sinks::stderr_sink_st>();
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
