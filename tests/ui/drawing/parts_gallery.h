// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QPainter>
#include <QString>

#include "ui/theme/tokens.h"

namespace wm::ui {

/// One sheet of the parts, drawn for the eye: the tests check that it is not empty, a person that it is good.
template <typename Draw>
QImage galleryPicture(const QSize& size, const Tokens& tokens, double scale, Draw draw) {
    QImage image(size * scale, QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(scale);
    image.fill(tokens.paper);
    QPainter painter(&image);
    painter.setPen(tokens.ink);
    draw(painter);
    painter.end();
    return image;
}

}  // namespace wm::ui
