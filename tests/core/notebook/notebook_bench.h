// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "core/notebook/read_notebook.h"
#include "core/notebook/take.h"
#include "tests/core/verbs/bench.h"

namespace wm::notebook {

/// A file of tests/data/notebook.
std::string notebookFile(const std::string& name);

/// A bench that knows Heron 250 and Sorrel 450 since today, with the common jobs as tasks, and nothing else.
class Garage : public verbs::Bench {
  public:
    Garage();
    MachineId heron;
    MachineId sorrel;

    [[nodiscard]] Notebook read(const std::string& bytes, const ReadingWishes& wishes = {}) const;
    /// Takes what is agreed to over into the file; the number of lines, 0 if there is nothing new.
    std::size_t take(const std::string& bytes, const Agreement& agreement);

  private:
    void adopt(MachineId machine);
};

/// The line of the file with this number.
const Line& lineOf(const Notebook& notebook, std::size_t number);
/// "26 doubtful: twice \"2,0\" -> \"...\"": for messages.
std::string told(const Line& line);
/// Every verdict that is not Taken, and every remark.
std::string told(const Notebook& notebook);

}  // namespace wm::notebook
