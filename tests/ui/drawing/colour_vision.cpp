// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/drawing/colour_vision.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "ui/theme/contrast.h"

namespace wm::ui {

namespace {

using Triple = std::array<double, 3>;
using Matrix = std::array<Triple, 3>;

constexpr Matrix kProtanopia = {
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix kDeuteranopia = {
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix kTritanopia = {
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};
// sRGB to XYZ, IEC 61966-2-1.
constexpr Matrix kToXyz = {{{0.4124564, 0.3575761, 0.1804375},
                            {0.2126729, 0.7151522, 0.0721750},
                            {0.0193339, 0.1191920, 0.9503041}}};

double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

float encoded(double value) {
    const double held = std::clamp(value, 0.0, 1.0);
    return static_cast<float>(held <= 0.0031308 ? 12.92 * held : 1.055 * std::pow(held, 1.0 / 2.4) - 0.055);
}

Triple times(const Matrix& matrix, const Triple& vector) {
    Triple result{};
    for (std::size_t row = 0; row < 3; ++row) {
        result[row] = matrix[row][0] * vector[0] + matrix[row][1] * vector[1] + matrix[row][2] * vector[2];
    }
    return result;
}

Triple linearOf(const QColor& color) {
    return {linear(color.redF()), linear(color.greenF()), linear(color.blueF())};
}

QColor through(const Matrix& matrix, const QColor& color) {
    const Triple seen = times(matrix, linearOf(color));
    return QColor::fromRgbF(encoded(seen[0]), encoded(seen[1]), encoded(seen[2]));
}

Triple labOf(const QColor& color) {
    const Triple xyz = times(kToXyz, linearOf(color));
    const auto f = [](double t) {
        return t > 216.0 / 24389.0 ? std::cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
    };
    const double x = f(xyz[0] / 0.95047);
    const double y = f(xyz[1]);
    const double z = f(xyz[2] / 1.08883);
    return {116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)};
}

}  // namespace

QColor seenBy(Vision vision, const QColor& color) {
    switch (vision) {
        case Vision::Full:
            return color;
        case Vision::Protanopia:
            return through(kProtanopia, color);
        case Vision::Deuteranopia:
            return through(kDeuteranopia, color);
        case Vision::Tritanopia:
            return through(kTritanopia, color);
        case Vision::Grey:
            break;
    }
    const float grey = encoded(relativeLuminance(color));
    return QColor::fromRgbF(grey, grey, grey);
}

double colourDistance(const QColor& one, const QColor& other) {
    const Triple a = labOf(one);
    const Triple b = labOf(other);
    return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

double shareApart(const QImage& one, const QImage& other, Vision vision, double distance) {
    int apart = 0;
    for (int y = 0; y < one.height(); ++y) {
        for (int x = 0; x < one.width(); ++x) {
            const QColor a = seenBy(vision, one.pixelColor(x, y));
            const QColor b = seenBy(vision, other.pixelColor(x, y));
            apart += colourDistance(a, b) > distance ? 1 : 0;
        }
    }
    return static_cast<double>(apart) / (one.width() * one.height());
}

}  // namespace wm::ui
