// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace wm::app {

/// While it lives, the named loggers of the layers ("app", "store", "ui") write to standard error; if it is
/// not `verbose`, there are none and nothing is logged.
class Logging {
  public:
    explicit Logging(bool verbose);
    ~Logging();
    Logging(const Logging&) = delete;
    Logging& operator=(const Logging&) = delete;
};

}  // namespace wm::app
