#!/bin/sh
# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# From a fresh clone to all tests passed: installs what is missing, then
#   core-only  the core alone by g++, with Qt hidden: it is pure, and each of its sources compiles by itself (but for the
#              standard headers that nearly all of them read)
#   checked    all there is and all tests, by clang, under the sanitizers
#   release    the program as it is installed, by g++, from the demo garage to a job sheet
# Warnings are errors in all three. The time of each part is said at the end. Safe to run again.
set -eu
cd "$(dirname "$0")/.."
export QT_QPA_PLATFORM=offscreen
times=
part() { # NAME COMMAND...: runs the command, keeps how long it took
    name=$1
    shift
    echo "== $name"
    begun=$(date +%s)
    "$@"
    times="$times$(printf '%5d s  %s' $(($(date +%s) - begun)) "$name")
"
}
part "packages" sh app/install-packages.sh
part "core-only: configure" cmake --preset core-only
part "core-only: build" cmake --build --preset core-only --target wm_core
part "checked: configure" cmake --preset checked
part "checked: build" cmake --build --preset checked
part "checked: tests" ctest --preset checked -j "$(nproc)"
part "release: build, demo, job sheet" env -u DISPLAY -u WAYLAND_DISPLAY sh app/run-demo.sh
printf '\n%s' "$times"
