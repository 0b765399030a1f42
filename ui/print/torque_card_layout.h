// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSizeF>
#include <optional>
#include <vector>

#include "core/sheet/torque_card.h"
#include "ui/print/sheet_layout.h"

namespace wm::ui {

/// The card for the wall, page by page, for a printable area in points: figures to be read from a metre away,
/// one joint a line, a heading with at least one line of its group. A figure that nobody confirmed has the
/// wedge, and the page the footnote. Nothing if the area is smaller than kLeastArea.
std::optional<std::vector<SheetPage>> layOutTorqueCard(const sheet::TorqueCard& card, QSizeF area);

/// "Torque card, Heron 250": what the PDF and the print job are called.
QString torqueCardTitle(const sheet::TorqueCard& card);

}  // namespace wm::ui
