#!/bin/sh
# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# From a fresh clone to a job sheet: installs what is missing, builds, makes the demo file, says what is due, plans
# the weekend, writes the sheet as PDF, and opens the window if there is a display. Safe to run again.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
cd "$top"
sh app/install-packages.sh
cmake --preset release
cmake --build --preset release --target witnessmark
program="$top/build/release/app/witnessmark"
demo="$top/build/demo/garage.witnessmark"
mkdir -p "$top/build/demo"
rm -rf "$demo" "$demo.backups"
"$program" new "$demo" --demo
echo
echo "What is due:"
"$program" due "$demo"
echo
echo "The next work window:"
"$program" plan "$demo" --machine "Heron 250"
sheet="$top/build/demo/job-sheet.pdf"
"$program" sheet "$demo" --machine "Heron 250" --pdf "$sheet"
echo
echo "The demo file is $demo"
echo "The job sheet is $sheet"
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    exec "$program" "$demo"
fi
echo "No display here; to open the window elsewhere: $program $demo"
