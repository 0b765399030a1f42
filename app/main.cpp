// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdio>
#include <exception>

#include "app/console.h"
#include "app/run.h"

namespace {

int end(const char* what) {
    std::fprintf(stderr, "witnessmark: %s\n", wm::app::unforeseenWords(what).toUtf8().constData());
    return static_cast<int>(wm::app::Exit::Unforeseen);
}

}  // namespace

int main(int argc, char* argv[]) {
    try {
        return wm::app::run(argc, argv);
    } catch (const std::exception& unforeseen) {
        return end(unforeseen.what());
    } catch (...) {
        return end("unknown");
    }
}
