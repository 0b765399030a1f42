#!/bin/sh
# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# From a fresh clone to all tests passed: installs what is missing, then builds and tests the pure core without Qt and
# under the sanitizers, the whole program, and the store and a walk through the window under the sanitizers. Safe to
# run again.
set -eu
cd "$(dirname "$0")/.."
sh app/install-packages.sh
export QT_QPA_PLATFORM=offscreen
for preset in core-sanitized dev asan-ubsan; do
    echo "== $preset"
    cmake --preset "$preset" -DCMAKE_CXX_FLAGS_DEBUG=-g1  # lines suffice to find a fault, and build sooner
    cmake --build --preset "$preset"
    ctest --preset "$preset" -j "$(nproc)"
done
