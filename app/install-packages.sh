#!/bin/sh
# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs the packages of app/debian-packages.txt that are missing. As root, or as a user with sudo; does nothing
# if all are there, so that it can be run again without harm and without a network.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
missing=
for package in $(sed 's/#.*//' "$here/debian-packages.txt"); do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q '^install ok installed$' || missing="$missing $package"
done
[ -n "$missing" ] || exit 0
as_root=
if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || { echo "Install these packages as root, then run this again:$missing" >&2; exit 1; }
    as_root=sudo
fi
echo "Installing:$missing"
$as_root apt-get update -q
# shellcheck disable=SC2086
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $missing
