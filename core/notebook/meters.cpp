// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/notebook/course.h"
#include "core/notebook/judging.h"
#include "core/notebook/likely_figure.h"

namespace wm::notebook {

namespace {

constexpr Hundredths kMostADay = 24 * 100;
constexpr Hundredths kSlack = 800;         ///< so much may go unnoted before it is a jump
constexpr Hundredths kSlackADay = 120;     ///< and so much more for each day between
constexpr Hundredths kUnloggedFrom = 30;   ///< less than that is how people round
constexpr Hundredths kLongDay = 12 * 100;  ///< more riding than a day's hardest enduro
constexpr Hundredths kOtherMeter = 40;

// Without a meter to measure it by: minutes, or a mark left out.
Hundredths shortenLongDay(Line& line, char decimal) {
    constexpr Hundredths kRatherMinutes = 40 * 100;
    const Hundredths noted = line.facts.hours->count();
    const Hundredths meant = noted >= kRatherMinutes ? (noted + 30) / 60 : noted / 10;
    const std::string given = hoursIn(*line.facts.hours, decimal);
    if (meant > kLongDay) {
        line.facts.hours.reset();
        line.remark(Defect::HoursTooMany, given);
        return 0;
    }
    line.facts.hours = units::Hours{meant};
    line.remark(Defect::HoursUnit, given, hoursIn(units::Hours{meant}, decimal));
    return meant;
}

class MeterJudge {
  public:
    MeterJudge(Notebook& notebook, std::vector<Course>& courses, std::size_t machine, bool onlyStrangers)
        : notebook_(notebook),
          courses_(courses),
          course_(courses[machine]),
          machine_(machine),
          onlyStrangers_(onlyStrangers) {}

    void judge() {
        for (std::size_t at = 0; at < course_.points().size(); ++at) {
            if (!course_.points()[at].shown)
                continue;
            if (course_.points()[at].startsAnew)
                startAnew(at);
            else if (!last_)
                judgeFirst(at);
            else
                judgeNext(at);
        }
    }

  private:
    [[nodiscard]] const Point& point(std::size_t at) const { return course_.points()[at]; }
    [[nodiscard]] char decimal() const { return notebook_.layout.decimal; }
    [[nodiscard]] std::string text(Hundredths hours) const { return hoursIn(units::Hours{hours}, decimal()); }
    [[nodiscard]] std::string cellOf(std::size_t at, Column column) const {
        const auto where = notebook_.layout.at(column);
        const Line* line = point(at).line;
        return line == nullptr || !where || *where >= line->cells.size() ? std::string{}
                                                                         : line->cells[*where];
    }

    // The reading after this one on the same count, if there is one.
    [[nodiscard]] std::optional<std::size_t> nextOf(std::size_t at) const {
        const auto next = course_.nextReading(at);
        return next && !point(*next).startsAnew ? next : std::nullopt;
    }
    [[nodiscard]] Hundredths slack(std::size_t from, std::size_t to) const {
        return kSlack + kSlackADay * (point(to).date - point(from).date);
    }
    // Can the meter have gone from one figure to the other in that time, with what was noted?
    [[nodiscard]] bool plausible(Hundredths from, Hundredths to, std::size_t a, std::size_t b) const {
        const Hundredths ran = to - from;
        return ran >= 0 && ran <= course_.between(a, b).noted + slack(a, b);
    }

    void accept(std::size_t at, Hundredths shown) {
        last_ = at;
        shown_ = shown;
    }

    void startAnew(std::size_t at) {
        Line* line = point(at).line;
        if (line != nullptr && last_ && point(at).before && *point(at).before < shown_ && !onlyStrangers_) {
            line->facts.before.reset();
            line->remark(Defect::MeterRunsBack, text(*point(at).before), {});
        }
        accept(at, *point(at).shown);
    }

    void judgeFirst(std::size_t at) {
        const Hundredths shown = *point(at).shown;
        const auto next = nextOf(at);
        const auto after = next ? nextOf(*next) : std::nullopt;
        const bool nextGoesOn = after && *point(*after).shown >= *point(*next).shown;
        if (point(at).line != nullptr && nextGoesOn && shown > *point(*next).shown) {
            const Between between = course_.between(at, *next);
            const Hundredths ends = *point(*next).shown;
            Fit fit{.least = 0, .most = ends, .tolerance = between.tolerance()};
            if (between.known())
                fit.near = ends - between.noted;
            cureReading(at, fit, Defect::MeterJumps);
            return;
        }
        accept(at, shown);
    }

    void judgeNext(std::size_t at) {
        const Hundredths shown = *point(at).shown;
        const Hundredths ran = shown - shown_;
        cureLongRides(at, ran);
        const Between between = course_.between(last_, at);
        const auto next = nextOf(at);
        const bool nextFits = next && plausible(shown_, *point(*next).shown, *last_, *next);
        const bool asExpected = between.known() && std::abs(ran - between.noted) <= between.tolerance();
        const bool nextIsLower = next && *point(*next).shown < shown && nextFits && !asExpected;
        const bool tooMuch = ran > kMostADay * std::max(point(at).date - point(*last_).date + 1, 1) ||
                             (ran - between.noted > slack(*last_, at) && !(next && followsOn(at, *next)));
        const auto lastIsWrong = [&] {
            return !next && between.known() && ran - between.noted > 3 * between.tolerance() &&
                   isPlainError(at);
        };
        if (ran < 0) {
            judgeLower(at, next, nextFits);
        } else if (nextIsLower || tooMuch || lastIsWrong()) {
            judgeWrong(at, next, Defect::MeterJumps);
        } else {
            if (!onlyStrangers_)
                judgeHours(at, ran, between);
            accept(at, shown);
        }
    }

    [[nodiscard]] bool followsOn(std::size_t at, std::size_t next) const {
        return plausible(*point(at).shown, *point(next).shown, at, next);
    }

    [[nodiscard]] Fit fitAt(std::size_t at, std::optional<std::size_t> next) const {
        const Between between = course_.between(last_, at);
        Fit fit{.least = shown_, .tolerance = between.tolerance() + 20};
        if (next && *point(*next).shown >= shown_)
            fit.most = *point(*next).shown;
        if (between.known())
            fit.near = shown_ + between.noted;
        return fit;
    }
    [[nodiscard]] bool isPlainError(std::size_t at) const {
        Fit fit = fitAt(at, std::nullopt);
        fit.plainOnly = true;
        return bestLikely(cellOf(at, Column::Meter), decimal(), fit).has_value();
    }

    void judgeLower(std::size_t at, std::optional<std::size_t> next, bool nextFits) {
        const Hundredths shown = *point(at).shown;
        const bool goesOn = next && !nextFits && followsOn(at, *next);
        const bool fresh = !next && shown <= course_.between(last_, at).noted + 500 && !isPlainError(at);
        if (!goesOn && !fresh) {
            judgeWrong(at, next, Defect::MeterRunsBack);
            return;
        }
        Line* line = point(at).line;
        if (line != nullptr && !onlyStrangers_) {
            line->facts.event = usage::MeterEvent::Replaced;
            line->remark(Defect::MeterReplaced, text(shown), text(shown_));
        }
        accept(at, shown);
    }

    void judgeWrong(std::size_t at, std::optional<std::size_t> next, Defect defect) {
        if (point(at).line == nullptr) {
            accept(at, *point(at).shown);
            return;
        }
        if (const auto other = otherMachine(at)) {
            if (onlyStrangers_) {
                point(at).line->facts.machines = {*other};
                point(at).line->remark(Defect::WrongMachine, notebook_.machines[machine_].name,
                                       notebook_.machines[*other].name);
            }
            return;
        }
        const auto before = last_;
        cureReading(at, fitAt(at, next), defect);
        // A jump that the next lines go on from is asked about once, not on each of them.
        if (last_ == before && *point(at).shown > shown_ && next && followsOn(at, *next))
            accept(at, *point(at).shown);
    }

    // Whose meter it was, if it goes on there where this machine's does not.
    [[nodiscard]] std::optional<std::size_t> otherMachine(std::size_t at) const {
        if (point(at).line->has(Defect::WrongMachine))
            return std::nullopt;
        const Hundredths shown = *point(at).shown;
        for (std::size_t other = 0; other < courses_.size(); ++other) {
            const Course& course = courses_[other];
            const auto from = other == machine_ ? std::nullopt : course.lastReadingUpTo(point(at).date);
            if (!from)
                continue;
            const auto to = course.nextReading(*from);
            const Hundredths had = *course.points()[*from].shown;
            const Hundredths noted = point(at).hours.value_or(0);
            const bool inside = shown >= had && (!to || course.points()[*to].startsAnew ||
                                                 shown <= *course.points()[*to].shown);
            const Hundredths ran = shown - had;
            if (inside && ran > 0 && noted > 0 && ran >= noted - kOtherMeter &&
                ran <= noted + 3 * kOtherMeter)
                return other;
        }
        return std::nullopt;
    }

    void cureReading(std::size_t at, const Fit& fit, Defect defect) {
        Line* line = point(at).line;
        const auto likely = bestLikely(cellOf(at, Column::Meter), decimal(), fit);
        if (!onlyStrangers_ && line != nullptr) {
            line->remark(defect, cellOf(at, Column::Meter), likely ? text(*likely) : std::string{});
            line->facts.meter = likely ? std::optional(units::Hours{*likely}) : std::nullopt;
        }
        if (likely)
            accept(at, *likely);
    }

    // Do the noted hours fit what the meter ran since it was last read?
    void judgeHours(std::size_t at, Hundredths ran, const Between& between) {
        if (!between.known())
            return;
        const Hundredths over = ran - between.noted;
        const bool tooMany = -over > std::max<Hundredths>(60, ran * 2 / 5);
        if ((tooMany || over > 60) && cureHours(at, ran, between, tooMany))
            return;
        if (tooMany && -over > 200)
            tooManyHours(at, ran, between);
        else if (over >= kUnloggedFrom && over > between.tolerance() - 15 && point(at).line != nullptr)
            point(at).line->remark(Defect::Unlogged, text(over));
    }

    // Hours that no day holds first, so that what they are measured with is not led astray by them.
    void cureLongRides(std::size_t at, Hundredths ran) {
        if (onlyStrangers_)
            return;
        for (std::size_t ride = last_ ? *last_ + 1 : 0; ride <= at; ++ride) {
            Line* line = point(ride).line;
            if (line == nullptr || point(ride).hours.value_or(0) <= kLongDay)
                continue;
            const Between between = course_.between(last_, at);
            if (!(last_ && ran >= 0 && cureHours(at, ran, between, true)))
                course_.setHours(ride, shortenLongDay(*line, decimal()));
        }
    }

    // One ride whose hours, with the mark moved or minutes read as such, make it agree.
    bool cureHours(std::size_t at, Hundredths ran, const Between& between, bool tooMany) {
        std::optional<std::pair<std::size_t, Hundredths>> found;
        const Hundredths tolerance = between.tolerance() - 5;
        for (std::size_t ride = *last_ + 1; ride <= at; ++ride) {
            if (point(ride).line == nullptr || !point(ride).hours || point(ride).line->has(Defect::HoursForm))
                continue;
            const Hundredths noted = *point(ride).hours;
            const std::array<Hundredths, 4> others =
                tooMany ? std::array<Hundredths, 4>{noted / 10, noted / 60, noted / 100, noted / 600}
                        : std::array<Hundredths, 4>{noted * 10, noted * 100, -1, -1};
            for (const Hundredths other : others)
                if (other > 0 && std::abs(between.noted - noted + other - ran) <= tolerance) {
                    if (found && found->first != ride)
                        return false;
                    found = found ? found : std::pair(ride, other);
                }
        }
        if (!found || (!tooMany && *point(found->first).hours > 90))
            return false;
        const auto [ride, hours] = *found;
        Line* line = point(ride).line;
        line->remark(Defect::HoursUnit, cellOf(ride, Column::Hours), text(hours));
        line->facts.hours = units::Hours{hours};
        course_.setHours(ride, hours);
        return true;
    }

    void tooManyHours(std::size_t at, Hundredths ran, const Between& between) {
        for (std::size_t ride = *last_ + 1; ride <= at; ++ride) {
            const auto noted = point(ride).hours;
            Line* line = point(ride).line;
            const Hundredths rest = ran - (between.noted - noted.value_or(0));
            if (line == nullptr || !noted || *noted <= ran || line->has(Defect::HoursTooMany))
                continue;
            line->remark(Defect::HoursTooMany, cellOf(ride, Column::Hours),
                         rest >= 0 ? text(rest) : std::string{});
            line->facts.hours = rest >= 0 ? std::optional(units::Hours{rest}) : std::nullopt;
            return;
        }
    }

    Notebook& notebook_;
    std::vector<Course>& courses_;
    Course& course_;
    std::size_t machine_;
    bool onlyStrangers_;
    std::optional<std::size_t> last_{};
    Hundredths shown_ = 0;
};

// What lies after the last reading, or has none at all.
void judgeLongDays(Notebook& notebook) {
    for (Line& line : notebook.lines)
        if (line.readable() && !line.inFile && line.facts.sort == FactSort::Outing && line.facts.hours &&
            line.facts.hours->count() > kLongDay)
            shortenLongDay(line, notebook.layout.decimal);
}

}  // namespace

void judgeMeters(Notebook& notebook, const picture::Ledger& ledger) {
    for (const bool onlyStrangers : {true, false}) {
        std::vector<Course> courses = coursesOf(notebook, ledger);
        for (std::size_t machine = 0; machine < courses.size(); ++machine)
            MeterJudge(notebook, courses, machine, onlyStrangers).judge();
    }
    judgeLongDays(notebook);
}

}  // namespace wm::notebook
