#!/bin/sh
# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# From a fresh clone to all tests passed: installs what is missing, then builds and tests the pure core without Qt and
# under the sanitizers, the window and the program, and the store and a walk through the window under the sanitizers.
# Safe to run again.
set -eu
cd "$(dirname "$0")/.."
sh app/install-packages.sh
export QT_QPA_PLATFORM=offscreen
check() { # PRESET and what it is configured with; lines of code suffice to find a fault, and build sooner
    echo "== $1"
    cmake --preset "$@" -DCMAKE_CXX_FLAGS_DEBUG=-g1
    cmake --build --preset "$1"
    ctest --preset "$1" -j "$(nproc)"
}
check core-sanitized
check dev -DWM_WINDOW_TESTS=ON
check asan-ubsan
