#!/bin/sh
# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# clang-tidy over core, ui and app as the preset `checked` compiles them: a folder at a time, so that its headers are
# read once (ten minutes of one processor for all there is, where file by file would take hours).
#   sh tests/tidy.sh                        everything
#   sh tests/tidy.sh core/usage ui/pages    these folders
# Needs `checked` to be built, as tests/run.sh leaves it.
set -eu
cd "$(dirname "$0")/.."
commands=build/checked/compile_commands.json
[ -f "$commands" ] || { echo "clang-tidy: build the preset checked first (sh tests/run.sh)"; exit 1; }
wanted=$(for folder in "$@"; do echo "$folder" | sed 's|/$||; s|/|_|g; s|.*|/unity_&_|'; done)
sources=$(sed -n 's/^ *"file": "\(.*\)",*$/\1/p' "$commands" | grep -E "^($PWD|$PWD/build/checked)/(core|ui|app)/" |
    grep -v -E '_autogen/|/qrc_|\.cxx_pch\.' | sort -u)
[ -z "$wanted" ] || sources=$(echo "$sources" | grep -F "$wanted")
# A folder's source includes the others: that is what it is for.
echo "$sources" | xargs -P "$(nproc)" -n 1 clang-tidy-14 --quiet --checks=-bugprone-suspicious-include -p build/checked
echo "clang-tidy: $(echo "$sources" | wc -l) folders and lone sources are clean"
