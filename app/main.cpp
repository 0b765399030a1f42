// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/run.h"

int main(int argc, char* argv[]) {
    return wm::app::run(argc, argv);
}
