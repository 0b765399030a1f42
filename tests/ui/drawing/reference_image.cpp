// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/drawing/reference_image.h"
#include "tests/repository.h"

#include <fmt/format.h>

#include <QCoreApplication>
#include <QDir>
#include <algorithm>
#include <cstdlib>

namespace wm::ui {

namespace {

int channelDifference(const QColor& one, const QColor& other) {
    return std::max({std::abs(one.red() - other.red()), std::abs(one.green() - other.green()),
                     std::abs(one.blue() - other.blue()), std::abs(one.alpha() - other.alpha())});
}

}  // namespace

std::string differenceFromReference(const QImage& image, const QString& name) {
    const QString path = QString::fromStdString(test::repositoryPath("tests/ui/drawing/reference/")) + name +
                         QStringLiteral(".png");
    if (qEnvironmentVariableIsSet("WM_WRITE_REFERENCES")) {
        return image.save(path) ? std::string() : "can't write " + path.toStdString();
    }
    const QImage reference(path);
    if (reference.size() != image.size()) {
        return fmt::format("{} is {} x {}, drawn is {} x {}", path.toStdString(), reference.width(),
                           reference.height(), image.width(), image.height());
    }
    int far = 0;
    double sum = 0.0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const int difference = channelDifference(image.pixelColor(x, y), reference.pixelColor(x, y));
            far += difference > 24 ? 1 : 0;
            sum += difference;
        }
    }
    const int pixels = image.width() * image.height();
    if (far * 200 <= pixels && sum <= pixels) {
        return {};
    }
    const QString drawn = pictureFolder() + name + QStringLiteral("-drawn.png");
    image.save(drawn);
    return fmt::format("{}: {} of {} pixels are far off, mean difference {:.2f}; drawn is {}",
                       path.toStdString(), far, pixels, sum / pixels, drawn.toStdString());
}

QString pictureFolder() {
    const QDir folder(QCoreApplication::applicationDirPath());
    folder.mkpath(QStringLiteral("pictures"));
    return folder.filePath(QStringLiteral("pictures/"));
}

}  // namespace wm::ui
