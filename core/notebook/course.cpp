// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/course.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace wm::notebook {

Course::Course(std::vector<Point> points) : points_(std::move(points)) {
    std::stable_sort(points_.begin(), points_.end(), [](const Point& a, const Point& b) {
        return std::tie(a.date, a.rank) < std::tie(b.date, b.rank);
    });
    addUp();
    next_.resize(points_.size());
    std::optional<std::size_t> next;
    for (std::size_t at = points_.size(); at-- > 0;) {
        next_[at] = next;
        if (points_[at].shown)
            next = at;
    }
}

void Course::addUp() {
    sums_.clear();
    Between sum;
    for (const Point& point : points_) {
        sum.noted += point.hours.value_or(0);
        sum.rides += point.rode ? 1 : 0;
        sum.unnoted += point.rode && !point.hours ? 1 : 0;
        sums_.push_back(sum);
    }
}

Between Course::between(std::optional<std::size_t> from, std::size_t to) const {
    Between sum = sums_[to];
    if (from) {
        sum.noted -= sums_[*from].noted;
        sum.rides -= sums_[*from].rides;
        sum.unnoted -= sums_[*from].unnoted;
    }
    return sum;
}

std::optional<std::size_t> Course::nextReading(std::size_t at) const {
    return next_[at];
}

std::optional<std::size_t> Course::lastReadingUpTo(calendar::Date date) const {
    auto end = std::upper_bound(points_.begin(), points_.end(), date,
                                [](calendar::Date day, const Point& point) { return day < point.date; });
    while (end != points_.begin())
        if ((--end)->shown)
            return static_cast<std::size_t>(end - points_.begin());
    return std::nullopt;
}

void Course::setHours(std::size_t at, Hundredths hours) {
    const Hundredths more = hours - points_[at].hours.value_or(0);
    points_[at].hours = hours;
    for (std::size_t after = at; after < sums_.size(); ++after)
        sums_[after].noted += more;
}

namespace {

constexpr std::int64_t kLinesRank = std::int64_t{1} << 40;

bool counts(const Line& line) {
    return line.readable() && !line.inFile && line.facts.machines.size() == 1 && !line.has(Defect::Twice) &&
           !line.has(Defect::OtherwiseInFile);
}

// Newest first: the lines of one day then stand in reverse.
bool fallsInTime(const std::vector<Line>& lines) {
    std::int64_t falls = 0;
    const Line* last = nullptr;
    for (const Line& line : lines) {
        if (!line.readable())
            continue;
        if (last != nullptr)
            falls += last->facts.date > line.facts.date ? 1 : last->facts.date < line.facts.date ? -1 : 0;
        last = &line;
    }
    return falls > 0;
}

Point pointOf(Line& line, std::int64_t rank) {
    const Facts& facts = line.facts;
    Point point{.date = facts.date, .rank = rank, .line = &line, .rode = facts.sort == FactSort::Outing};
    if (point.rode && facts.hours)
        point.hours = facts.hours->count();
    if (facts.meter)
        point.shown = facts.meter->count();
    point.startsAnew = facts.event != usage::MeterEvent::Plain;
    if (facts.before)
        point.before = facts.before->count();
    return point;
}

}  // namespace

std::vector<Course> coursesOf(Notebook& notebook, const picture::Ledger& ledger) {
    std::vector<std::vector<Point>> points(notebook.machines.size());
    std::map<MachineId, std::size_t> known;
    for (std::size_t at = 0; at < notebook.machines.size(); ++at)
        if (notebook.machines[at].id)
            known[*notebook.machines[at].id] = at;
    for (const auto& outing : ledger.all<usage::Outing>())
        if (const auto at = known.find(outing.machine); at != known.end()) {
            Point point{.date = outing.date, .rank = 2 * outing.entered, .rode = true};
            if (outing.hours)
                point.hours = outing.hours->count();
            points[at->second].push_back(point);
        }
    for (const auto& reading : ledger.all<usage::HourReading>())
        if (const auto at = known.find(reading.machine); at != known.end())
            points[at->second].push_back({.date = reading.date,
                                          .rank = 2 * reading.entered,
                                          .shown = reading.shown.count(),
                                          .startsAnew = reading.event != usage::MeterEvent::Plain});
    const bool falls = fallsInTime(notebook.lines);
    for (std::size_t at = 0; at < notebook.lines.size(); ++at) {
        Line& line = notebook.lines[at];
        const auto place = static_cast<std::int64_t>(at);
        if (counts(line))
            points[line.facts.machines.front()].push_back(
                pointOf(line, kLinesRank + (falls ? -place : place)));
    }
    std::vector<Course> courses;
    for (auto& of : points)
        courses.emplace_back(std::move(of));
    return courses;
}

}  // namespace wm::notebook
