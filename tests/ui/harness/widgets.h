// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractScrollArea>
#include <QString>

namespace wm::ui {

/// "BenchPage", whatever namespace it is in: the same in every language.
QString classOf(const QObject& object);
/// Made by Qt inside a widget of its own.
bool isQtsOwn(const QWidget& widget);
/// Something that answers hands: takes keys or clicks, and is no part of another control that speaks for it.
bool isControl(const QWidget& widget);
/// In this direction what does not fit can be rolled into view.
bool rolls(const QAbstractScrollArea& area, Qt::Orientation way);
/// The widgets of a window that are seen under `root`, and `root` itself.
QWidgetList seenUnder(QWidget* root);

}  // namespace wm::ui
