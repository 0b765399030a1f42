#!/bin/sh
# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# clang-tidy over the sources that changed since a commit (default: the one before the last), with the compile
# commands of the preset dev.
set -eu
cd "$(dirname "$0")/.."
since=${1:-HEAD~1}
changed=$(git diff --name-only --diff-filter=d "$since" -- 'core/*.cpp' 'ui/*.cpp' 'app/*.cpp')
[ -n "$changed" ] || { echo "clang-tidy: nothing changed"; exit 0; }
# The precompiled header is g++'s; clang reads the Qt headers themselves.
mkdir -p build/tidy-commands
sed 's/-Winvalid-pch//g; s/-Wno-restrict//g; s/-include [^ ]*cmake_pch\.hxx/-include QtWidgets\/QtWidgets/g' \
    build/dev/compile_commands.json > build/tidy-commands/compile_commands.json
echo "$changed" | xargs -P "$(nproc)" -n 4 clang-tidy-14 --quiet -p build/tidy-commands
