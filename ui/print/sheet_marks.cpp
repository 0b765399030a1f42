// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_marks.h"

#include <QPainter>

#include "ui/drawing/glyph.h"
#include "ui/drawing/wedge.h"

namespace wm::ui {

namespace {

template <class... Fs>
struct Each : Fs... {
    using Fs::operator()...;
};
template <class... Fs>
Each(Fs...) -> Each<Fs...>;

double weightOf(const RuleMark& rule) {
    return rule.heavy ? kHeavyWeight : kLineWeight;
}

}  // namespace

QRectF boundsOf(const Mark& mark) {
    const auto ofRule = [](const RuleMark& rule) {
        const double half = weightOf(rule) / 2.0;  // flat ends: no longer than drawn
        const QRectF line = QRectF(rule.line.p1(), rule.line.p2()).normalized();
        return line.height() > line.width() ? line.adjusted(-half, 0, half, 0)
                                            : line.adjusted(0, -half, 0, half);
    };
    return std::visit(Each{ofRule, [](const auto& other) { return other.rect; }}, mark);
}

Mark movedBy(Mark mark, double dx, double dy) {
    std::visit(Each{[&](RuleMark& rule) { rule.line.translate(dx, dy); },
                    [&](auto& other) { other.rect.translate(dx, dy); }},
               mark);
    return mark;
}

void paintMarks(QPainter& painter, const std::vector<Mark>& marks) {
    const auto pen = [&](double weight) {
        painter.setPen(QPen(Qt::black, weight, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter.setBrush(Qt::NoBrush);
    };
    for (const Mark& mark : marks) {
        std::visit(Each{[&](const TextMark& text) {
                            pen(kLineWeight);
                            painter.setFont(text.font);
                            painter.drawText(text.rect.topLeft() + QPointF(0, text.baseline), text.text);
                        },
                        [&](const RuleMark& rule) {
                            pen(weightOf(rule));
                            painter.drawLine(rule.line);
                        },
                        [&](const BoxMark& box) {
                            pen(kLineWeight);
                            painter.drawRect(box.rect);
                        },
                        [&](const WedgeMark& wedge) { paintWedgeOnPaper(painter, wedge.rect); },
                        [&](const WitnessMark& witness) {
                            paintMarkOnPaper(painter, witness.rect, {MarkState::Kind::InHand});
                        },
                        [&](const PictureMark& picture) {
                            painter.save();
                            picture.paint(painter, picture.rect);
                            painter.restore();
                        }},
                   mark);
    }
}

}  // namespace wm::ui
