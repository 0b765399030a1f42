// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/notebook/judging.h"

namespace wm::notebook {

using Hundredths = std::int64_t;

/// Something that happened to one machine, of the notebook or of the file, in order of time.
struct Point {
    calendar::Date date{};
    std::int64_t rank = 0;  ///< in the order of the lines; what the file holds comes before it
    Line* line = nullptr;   ///< nothing: the file's own, and not in question
    bool rode = false;
    std::optional<Hundredths> hours{};
    std::optional<Hundredths> shown{};
    bool startsAnew = false;
    std::optional<Hundredths> before{};
};

/// What happened to one machine between two places of its course.
struct Between {
    Hundredths noted = 0;
    std::int64_t rides = 0;
    std::int64_t unnoted = 0;  ///< rides without hours
    [[nodiscard]] bool known() const { return rides > 0 && unnoted == 0; }
    /// How far notes and meter may lie apart and still mean the same: 0.1 h + 5 % an outing as in
    /// usage::atomsOf, and 0.15 h because both readings were rounded to their last figure.
    [[nodiscard]] Hundredths tolerance() const { return 10 * rides + noted / 20 + 15; }
};

/// The points of one machine with running sums.
class Course {
  public:
    explicit Course(std::vector<Point> points);

    [[nodiscard]] const std::vector<Point>& points() const { return points_; }
    /// After `from` up to and including `to`; from nothing: from the beginning.
    [[nodiscard]] Between between(std::optional<std::size_t> from, std::size_t to) const;
    /// The next place after `at` where the meter was read.
    [[nodiscard]] std::optional<std::size_t> nextReading(std::size_t at) const;
    /// The last place up to a day where the meter was read.
    [[nodiscard]] std::optional<std::size_t> lastReadingUpTo(calendar::Date date) const;
    void setHours(std::size_t at, Hundredths hours);

  private:
    void addUp();

    std::vector<Point> points_;
    std::vector<Between> sums_{};  ///< up to and including each point
    std::vector<std::optional<std::size_t>> next_{};
};

/// The course of every machine of the notebook, from the lines that are not left out and from the file.
std::vector<Course> coursesOf(Notebook& notebook, const picture::Ledger& ledger);

}  // namespace wm::notebook
