// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QIconEngine>
#include <QPainter>
#include <QPixmap>

#include "ui/drawing/glyph.h"

namespace wm::ui {

namespace {

class MarkIconEngine : public QIconEngine {
  public:
    MarkIconEngine(const MarkState& state, const Tokens& tokens) : state_(state), tokens_(tokens) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode /*mode*/, QIcon::State /*on*/) override {
        paintMark(*painter, rect, state_, tokens_);
    }
    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State on) override {
        QPixmap pixmap(size);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        paint(&painter, QRect(QPoint(), size), mode, on);
        return pixmap;
    }
    [[nodiscard]] QIconEngine* clone() const override { return new MarkIconEngine(*this); }

  private:
    MarkState state_;
    Tokens tokens_;
};

}  // namespace

QIcon markIcon(const MarkState& state, const Tokens& tokens) {
    return QIcon(new MarkIconEngine(state, tokens));
}

}  // namespace wm::ui
