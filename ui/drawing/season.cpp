// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/season.h"

#include <QPainter>
#include <QPainterPath>

#include "ui/drawing/device_space.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr double kMark = 16.0;
constexpr double kTip = 1.5;

class SeasonPainter {
  public:
    SeasonPainter(QPainter& painter, const SeasonLayout& layout, const QFont& font, const Tokens& tokens)
        : painter_(painter), layout_(layout), font_(font), note_(noteFont(font)), tokens_(tokens) {}

    void paintAxis() {
        painter_.setFont(note_);
        const double lineHeight = layout_.weekLine - layout_.monthLine;
        for (const SeasonLayout::Tick& month : layout_.months) {
            painter_.setPen(tokens_.ink);
            write(QPointF(month.x + 3.0, layout_.monthLine), lineHeight, month.text);
            paintVertical(painter_, month.x, layout_.monthLine, layout_.weekLine, tokens_.pencil);
        }
        painter_.setPen(tokens_.pencil);
        for (const SeasonLayout::Tick& week : layout_.weeks) {
            write(QPointF(week.x + 3.0, layout_.weekLine), lineHeight, week.text);
            const double top = layout_.plot.top() - (week.text.isEmpty() ? 4.0 : lineHeight);
            paintVertical(painter_, week.x, top, layout_.plot.top(), tokens_.rule);
        }
        paintHorizontal(painter_, layout_.plot.left(), layout_.plot.right(), layout_.plot.top(),
                        tokens_.pencil);
    }

    void paintGroups() {
        painter_.setFont(font_);
        painter_.setPen(tokens_.pencil);
        for (const SeasonLayout::Group& group : layout_.groups) {
            const double lane = std::max(QFontMetricsF(font_).height(), kMark) + 4.0;
            painter_.drawText(QRectF(group.row.left(), group.row.top(), layout_.plot.left(), lane),
                              Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, group.name);
            paintHorizontal(painter_, group.row.left(), group.row.right(), group.row.bottom() + 2.0,
                            tokens_.rule);
        }
    }

    void paintPosts() {
        painter_.setFont(note_);
        for (const SeasonLayout::Post& post : layout_.posts) {
            const double top = post.label.isNull() ? layout_.monthLine : post.label.top() + 2.0;
            if (post.today) {
                paintVertical(painter_, post.left, top, layout_.plot.bottom(), tokens_.ink, 2.0);
            } else {
                paintPost(post, top);
            }
            painter_.setPen(tokens_.ink);
            write(post.label.topLeft(), post.label.height(), post.text);
        }
    }

    void paintBar(const SeasonLayout::Bar& placed, const SeasonBar& bar, bool current) {
        const QRectF& shape = placed.shape;
        const QColor color = colorOf(bar.mark.kind);
        const double middle = shape.center().y();
        const QPolygonF wedge({{shape.left(), shape.top()},
                               {shape.right(), middle - kTip / 2.0},
                               {shape.right(), middle + kTip / 2.0},
                               {shape.left(), shape.bottom()}});
        QPainterPath path;
        path.addPolygon(wedge);
        path.closeSubpath();
        if (placed.likely > shape.left() + 2.0 && placed.likely < shape.right() - 2.0) {
            QPainterPath cut;
            cut.addRect(QRectF(snappedX(painter_, placed.likely), shape.top(), 1.5, shape.height()));
            path = path.subtracted(cut);
        }
        painter_.fillPath(path, color);
        if (bar.mark.kind == MarkState::Kind::Overdue) {
            paintVertical(painter_, shape.left(), shape.top() - 2.0, shape.bottom() + 2.0, color, 2.0);
        }
        paintLabel(placed, bar);
        if (current) {
            painter_.setPen(QPen(tokens_.ink, 1.5));
            painter_.setBrush(Qt::NoBrush);
            painter_.drawRoundedRect(shape.united(placed.label).adjusted(-3.0, -1.0, 3.0, 1.0), kRadius,
                                     kRadius);
        }
    }

  private:
    void write(const QPointF& corner, double height, const QString& text) {
        painter_.drawText(QRectF(corner, QSizeF(2000.0, height)),
                          Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, text);
    }

    void paintPost(const SeasonLayout::Post& post, double top) {
        const double axis = layout_.plot.top();
        paintVertical(painter_, post.left, top, layout_.plot.bottom(), tokens_.pencil);
        painter_.fillRect(QRectF(post.left, axis, post.right - post.left, layout_.plot.bottom() - axis),
                          tokens_.select);
        // The days of the event, solid on the axis.
        paintHorizontal(painter_, post.left, post.right, axis - 1.0, tokens_.ink, 3.0);
    }

    void paintLabel(const SeasonLayout::Bar& placed, const SeasonBar& bar) {
        // Words are not crossed by posts.
        painter_.fillRect(placed.label.adjusted(-2.0, 1.0, 2.0, -1.0), tokens_.paper);
        const double top = placed.label.center().y() - kMark / 2.0;
        paintMark(painter_, QRectF(placed.label.left(), top, kMark, kMark), bar.mark, tokens_);
        painter_.setFont(font_);
        painter_.setPen(tokens_.ink);
        painter_.drawText(placed.label.adjusted(kMark + 4.0, 0.0, 2.0, 0.0),
                          Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, placed.text);
    }

    [[nodiscard]] QColor colorOf(MarkState::Kind kind) const {
        switch (kind) {
            case MarkState::Kind::BeforeEvent:
            case MarkState::Kind::MayBeOver:
                return tokens_.due;
            case MarkState::Kind::Overdue:
                return tokens_.over;
            case MarkState::Kind::NoRecord:
                return tokens_.unmarked;
            case MarkState::Kind::InHand:
                break;
        }
        return tokens_.pencil;
    }

    QPainter& painter_;
    const SeasonLayout& layout_;
    QFont font_;
    QFont note_;
    const Tokens& tokens_;
};

}  // namespace

void paintSeason(QPainter& painter, const QPointF& corner, const Season& season, const SeasonLayout& layout,
                 const QFont& font, const Tokens& tokens, std::optional<SeasonBarId> current) {
    painter.save();
    painter.translate(corner);
    painter.setRenderHint(QPainter::Antialiasing);
    SeasonPainter part(painter, layout, font, tokens);
    part.paintGroups();
    part.paintPosts();
    part.paintAxis();
    for (const SeasonLayout::Bar& placed : layout.bars) {
        const SeasonBar& bar = season.groups[placed.id.group].bars[placed.id.bar];
        part.paintBar(placed, bar, current == placed.id);
    }
    painter.restore();
}

}  // namespace wm::ui
