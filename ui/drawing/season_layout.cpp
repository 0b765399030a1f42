// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFontMetricsF>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "ui/drawing/season.h"
#include "ui/theme/type.h"
#include "ui/words/languages.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using calendar::Date;

constexpr double kMarkRoom = 16.0;
constexpr double kLeastBar = 6.0;
constexpr int kPostRows = 3;

class SeasonPlacer {
  public:
    SeasonPlacer(const Season& season, double width, const QFont& font)
        : season_(season), base_(font), note_(noteFont(font)), width_(width) {
        double names = 0.0;
        for (const SeasonGroup& group : season.groups) {
            names = std::max(names, base_.horizontalAdvance(group.name));
        }
        left_ = std::min(std::ceil(names) + kSpaceGroup, std::max(48.0, width * 0.2));
        days_ = std::max(1, season.last - season.first + 1);
    }

    SeasonLayout place() {
        placePosts();
        placeAxis();
        placeGroups();
        layout_.size = QSizeF(width_, layout_.plot.bottom());
        return std::move(layout_);
    }

  private:
    [[nodiscard]] double xOf(Date date) const {
        return left_ + (width_ - left_) * (date - season_.first) / days_;
    }
    [[nodiscard]] double held(double x) const { return std::clamp(x, left_, width_); }
    [[nodiscard]] bool shown(Date first, Date last) const {
        return last >= season_.first && first <= season_.last;
    }

    void placePosts() {
        if (shown(season_.today, season_.today)) {
            addPost(season_.today, season_.today, ui::tr("today"), true);
        }
        for (const SeasonEvent& event : season_.events) {
            if (shown(event.first, event.last)) {
                addPost(event.first, event.last, event.label, false);
            }
        }
        std::stable_sort(layout_.posts.begin(), layout_.posts.end(),
                         [](const auto& a, const auto& b) { return a.left < b.left; });
        const double line = note_.height() + 2.0;
        std::vector<double> ends(kPostRows, 0.0);
        int rows = 1;
        for (SeasonLayout::Post& post : layout_.posts) {
            const double needed = note_.horizontalAdvance(post.text);
            const double at = std::min(post.left + 5.0, width_ - needed);
            for (int row = 0; row < kPostRows; ++row) {
                double& end = ends[static_cast<std::size_t>(row)];
                if (end <= at - 3.0) {
                    post.label = QRectF(at, row * line, needed, line);
                    end = at + needed + 4.0;
                    rows = std::max(rows, row + 1);
                    break;
                }
            }
        }
        layout_.monthLine = rows * line + kSpaceHair;
    }

    void addPost(Date first, Date last, const QString& text, bool today) {
        layout_.posts.push_back({held(xOf(first)), held(xOf(last.plusDays(1))), QRectF(), text, today});
    }

    void placeAxis() {
        const double line = note_.height() + 2.0;
        layout_.weekLine = layout_.monthLine + line;
        placeMonths();
        const double week = (width_ - left_) * 7.0 / days_;
        const int every =
            static_cast<int>(std::ceil((note_.horizontalAdvance(QStringLiteral("00")) + 8.0) / week));
        const Date monday = season_.first.plusDays((8 - season_.first.isoWeekday()) % 7);
        for (Date day = monday; day <= season_.last; day = day.plusDays(7)) {
            const int number = calendar::isoWeek(day).week;
            const bool named = number % std::max(1, every) == 0 && xOf(day) + week <= width_ + 0.5;
            layout_.weeks.push_back({xOf(day), named ? QString::number(number) : QString()});
        }
        const double top = layout_.weekLine + line + kSpaceHair;
        layout_.plot = QRectF(left_, top, width_ - left_, 0.0);
    }

    // From the last month to the first: of the one that is cut off at the left the name goes first.
    void placeMonths() {
        double free = width_;
        for (Date day = season_.last; day >= season_.first; day = day.plusDays(-1)) {
            if (day.day() != 1 && day != season_.first)
                continue;
            const QString name = spokenLocale().standaloneMonthName(day.month(), QLocale::ShortFormat);
            const bool room = xOf(day) + note_.horizontalAdvance(name) + 8.0 <= free;
            if (room || day.day() == 1)
                layout_.months.insert(layout_.months.begin(), {xOf(day), room ? name : QString()});
            if (room)
                free = xOf(day);
        }
    }

    void placeGroups() {
        const double lane = std::max(base_.height(), kMarkRoom) + 4.0;
        double y = layout_.plot.top() + kSpaceHair;
        for (std::size_t i = 0; i < season_.groups.size(); ++i) {
            const std::size_t lanes = placeBars(i, y, lane);
            const double height = lane * static_cast<double>(std::max<std::size_t>(1, lanes)) + kSpaceHair;
            const SeasonGroup& group = season_.groups[i];
            layout_.groups.push_back({QRectF(0.0, y, width_, height),
                                      base_.elidedText(group.name, Qt::ElideRight, left_ - kSpaceClose)});
            y += height + kSpaceHair;
        }
        layout_.plot.setBottom(y);
    }

    std::size_t placeBars(std::size_t group, double top, double lane) {
        const std::vector<SeasonBar>& bars = season_.groups[group].bars;
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < bars.size(); ++i) {
            if (bars[i].early <= season_.last) {
                order.push_back(i);
            }
        }
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return bars[a].early < bars[b].early; });
        std::vector<double> ends;
        for (const std::size_t i : order) {
            SeasonLayout::Bar placed = placeBar({group, i}, bars[i]);
            const double from = std::min(placed.shape.left(), placed.label.left());
            const double to = std::max(placed.shape.right(), placed.label.right());
            const auto free = std::find_if(ends.begin(), ends.end(), [&](double end) { return end <= from; });
            const auto row = static_cast<std::size_t>(free - ends.begin());
            free == ends.end() ? ends.push_back(to + kSpaceLine) : void(*free = to + kSpaceLine);
            const double middle = top + lane * (static_cast<double>(row) + 0.5);
            placed.shape.moveCenter({placed.shape.center().x(), middle});
            placed.label.moveCenter({placed.label.center().x(), middle});
            layout_.bars.push_back(std::move(placed));
        }
        return ends.size();
    }

    [[nodiscard]] SeasonLayout::Bar placeBar(SeasonBarId id, const SeasonBar& bar) const {
        const double from = std::min(held(xOf(bar.early)), width_ - kLeastBar);
        const double to = std::max(held(xOf(bar.late.plusDays(1))), from + kLeastBar);
        SeasonLayout::Bar placed{id, QRectF(from, 0.0, to - from, 10.0),
                                 std::clamp(xOf(bar.likely), from, to), QRectF(), bar.label};
        const double needed = kMarkRoom + 4.0 + base_.horizontalAdvance(bar.label);
        const double height = std::max(base_.height(), kMarkRoom);
        if (to + kSpaceHair + needed <= width_) {
            placed.label = QRectF(to + kSpaceHair, 0.0, needed, height);
        } else if (from - kSpaceHair - needed >= left_) {
            placed.label = QRectF(from - kSpaceHair - needed, 0.0, needed, height);
        } else {
            const bool after = width_ - to > from - left_;
            const double room = std::max(kMarkRoom, (after ? width_ - to : from - left_) - kSpaceHair);
            placed.text = base_.elidedText(bar.label, Qt::ElideRight, std::max(0.0, room - kMarkRoom - 4.0));
            placed.label = QRectF(after ? to + kSpaceHair : from - kSpaceHair - room, 0.0, room, height);
        }
        return placed;
    }

    const Season& season_;
    QFontMetricsF base_;
    QFontMetricsF note_;
    double width_;
    double left_ = 0.0;
    int days_ = 1;
    SeasonLayout layout_{};
};

}  // namespace

SeasonLayout layOutSeason(const Season& season, double width, const QFont& font) {
    return SeasonPlacer(season, width, font).place();
}

std::optional<SeasonBarId> seasonBarAt(const SeasonLayout& layout, const QPointF& point) {
    for (const SeasonLayout::Bar& bar : layout.bars) {
        const QRectF shape = bar.shape.adjusted(-2.0, -2.0, 2.0, 2.0);
        if (shape.contains(point) || bar.label.contains(point)) {
            return bar.id;
        }
    }
    return std::nullopt;
}

}  // namespace wm::ui
