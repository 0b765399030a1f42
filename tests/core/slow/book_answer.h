// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/book/book.h"
#include "tests/core/slow/answer.h"

namespace wm::tale {

/// The questions of a tale, answered by the program itself (core/book) on one day.
class BookAnswers {
  public:
    BookAnswers(const Tale& tale, calendar::Date on);  ///< the tale must outlive it

    [[nodiscard]] Answer answer(const std::string& machine, const std::string& task) const;
    /// By the verb: of which item the record would be.
    [[nodiscard]] std::string mayRecord(const std::string& machine, const std::string& task) const;
    [[nodiscard]] std::vector<Demand> followUps(const std::string& machine) const;

  private:
    const Tale& tale_;
    book::Book book_;
};

}  // namespace wm::tale
