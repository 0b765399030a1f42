// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/repository.h"

namespace wm::test {

std::string repositoryPath(std::string_view fromTop) {
    return std::string(WM_SOURCE_DIR "/").append(fromTop);
}

}  // namespace wm::test
