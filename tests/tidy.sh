#!/bin/sh
# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# clang-tidy over sources of core, ui and app, with the compile commands of the preset that tests/run.sh builds.
#   sh tests/tidy.sh                what changed since main was left, or since the commit before the last
#   sh tests/tidy.sh COMMIT         what changed since that commit
#   sh tests/tidy.sh --all core/x   everything under these folders
set -eu
cd "$(dirname "$0")/.."
if [ "${1:-}" = --all ]; then
    shift
    sources=$(git ls-files "$@" | grep '\.cpp$' | grep -E '^(core|ui|app)/')
else
    since=${1:-$(git merge-base HEAD origin/main 2>/dev/null || true)}
    [ -n "$since" ] && [ "$(git rev-parse "$since")" != "$(git rev-parse HEAD)" ] || since=HEAD~1
    git rev-parse --quiet --verify "$since" > /dev/null || { echo "clang-tidy: no commit before this one here"; exit 0; }
    sources=$(git diff --name-only --diff-filter=d "$since" -- 'core/*.cpp' 'ui/*.cpp' 'app/*.cpp')
fi
[ -n "$sources" ] || { echo "clang-tidy: nothing changed"; exit 0; }
commands=build/checked
[ -f "$commands/compile_commands.json" ] || cmake --preset checked > /dev/null
# Folders are compiled as one source there: clang-tidy takes the flags of the nearest one for each file.
echo "$sources" | xargs -P "${WM_TIDY_JOBS:-$(nproc)}" -n 4 clang-tidy-14 --quiet -p "$commands"
echo "clang-tidy: $(echo "$sources" | wc -l) sources are clean"
