// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "core/notebook/judging.h"

namespace wm::notebook {

namespace {

using calendar::Date;

constexpr int kFarDays = 300;     ///< from both neighbours: another year was written
constexpr int kOpenEndDays = 60;  ///< how far after the last line but one the last may lie
constexpr int kYearsTried = 3;

// Rising, falling, or kept in no order.
enum class Order : std::uint8_t { Rising, Falling, None };

Order orderOf(const std::vector<std::size_t>& dated, const std::vector<Line>& lines) {
    std::size_t up = 0;
    std::size_t down = 0;
    for (std::size_t at = 1; at < dated.size(); ++at) {
        const Date before = lines[dated[at - 1]].facts.date;
        const Date here = lines[dated[at]].facts.date;
        up += here > before ? 1U : 0U;
        down += here < before ? 1U : 0U;
    }
    if (up >= 4 && up > down * 5)
        return Order::Rising;
    if (down >= 4 && down > up * 5)
        return Order::Falling;
    return Order::None;
}

// Other days that the hand may have meant.
std::vector<Date> likelyDays(Date date, Date from, Date to) {
    std::vector<Date> days;
    const auto add = [&](int year, int month, int day) {
        if (const auto made = calendar::makeDate(year, month, day); made && *made >= from && *made <= to)
            if (*made != date && std::find(days.begin(), days.end(), *made) == days.end())
                days.push_back(*made);
    };
    for (int year = from.year(); year <= to.year() && year < from.year() + kYearsTried; ++year)
        add(year, date.month(), date.day());
    add(date.year(), date.day(), date.month());
    for (int year = from.year(); year <= to.year() && year < from.year() + kYearsTried; ++year)
        add(year, date.day(), date.month());
    add(date.year(), date.month() + 1, date.day());
    add(date.year(), date.month() - 1, date.day());
    add(date.year(), date.month(), date.day() % 10 * 10 + date.day() / 10);
    return days;
}

struct Window {
    Date from;
    Date to;
};

class DateJudge {
  public:
    DateJudge(std::vector<Line>& lines, const Layout& layout, Date today)
        : lines_(lines), layout_(layout), today_(today) {
        for (std::size_t at = 0; at < lines.size(); ++at)
            if (lines[at].readable())
                dated_.push_back(at);
        order_ = orderOf(dated_, lines);
        next_.resize(dated_.size());
        std::optional<Date> next;
        for (std::size_t at = dated_.size(); at-- > 0;) {
            next_[at] = next;
            if (dateAt(at) <= today_)
                next = dateAt(at);
        }
    }

    void judge() {
        for (std::size_t at = 0; at < dated_.size(); ++at) {
            judge(at);
            if (dateAt(at) <= today_)
                last_ = dateAt(at);
        }
    }

  private:
    [[nodiscard]] Date dateAt(std::size_t at) const { return lines_[dated_[at]].facts.date; }

    // Days that would keep the order: from the last line that did to the next lines that agree.
    [[nodiscard]] Window windowAt(std::size_t at) const {
        const bool rising = order_ != Order::Falling;
        Date low{0};
        Date high = today_;
        bool lowKnown = false;
        bool highKnown = false;
        if (last_) {
            (rising ? low : high) = *last_;
            (rising ? lowKnown : highKnown) = true;
        }
        if (next_[at]) {
            (rising ? high : low) = *next_[at];
            (rising ? highKnown : lowKnown) = true;
        }
        if (!lowKnown)
            low = high.plusDays(-kOpenEndDays);
        if (!highKnown)
            high = std::min(today_, low.plusDays(kOpenEndDays));
        return {std::min(low, high), std::max(low, high)};
    }

    void judge(std::size_t at) {
        Line& line = lines_[dated_[at]];
        const Date date = line.facts.date;
        const Window window = windowAt(at);
        if (date > today_) {
            cure(line, Defect::DateFar, window, true);
            return;
        }
        const int off = date < window.from ? window.from - date : date > window.to ? date - window.to : 0;
        if (off == 0 || dated_.size() < 4)
            return;
        if (order_ == Order::None) {
            if (off > kFarDays * 2)
                cure(line, Defect::DateFar, window, false);
            return;
        }
        // The neighbours must agree with each other, else it may be one of them that is off.
        const bool edge = at == 0 || at + 1 == dated_.size();
        const bool agree = edge || (order_ == Order::Falling ? dateAt(at - 1) >= dateAt(at + 1)
                                                             : dateAt(at - 1) <= dateAt(at + 1));
        if (agree)
            cure(line, off > kFarDays ? Defect::DateFar : Defect::DateOrder, window, false);
    }

    void cure(Line& line, Defect defect, const Window& window, bool impossible) {
        const std::string given = dateText(line.facts.date, layout_.dates);
        const auto days = likelyDays(line.facts.date, window.from, window.to);
        if (!days.empty()) {
            line.facts.date = days.front();
            line.remark(defect, given, dateText(days.front(), layout_.dates));
        } else if (impossible) {
            line.remark(Defect::DateImpossible, given);
        } else if (defect == Defect::DateFar) {
            line.remark(defect, given);
        }
    }

    std::vector<Line>& lines_;
    const Layout& layout_;
    Date today_;
    std::vector<std::size_t> dated_{};
    // The nearest lines on either side that are not after today themselves; those above as they were cured.
    std::optional<Date> last_{};
    std::vector<std::optional<Date>> next_{};
    Order order_ = Order::None;
};

}  // namespace

void judgeDates(std::vector<Line>& lines, const Layout& layout, calendar::Date today) {
    DateJudge(lines, layout, today).judge();
}

}  // namespace wm::notebook
