// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QString>
#include <string>

namespace wm::ui {

/// Compares with tests/ui/drawing/reference/<name>.png: at most 1 in 200 pixels may differ by more than 24 of
/// 255 in a channel, and the mean difference is at most 1. Empty if it agrees, else what is wrong. With the
/// environment variable WM_WRITE_REFERENCES set, the picture is written instead.
std::string differenceFromReference(const QImage& image, const QString& name);

/// Where pictures for the eye go: beside the test binary, in the build folder.
QString pictureFolder();

}  // namespace wm::ui
