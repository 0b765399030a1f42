// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>
#include <utility>
#include <vector>

#include "core/definitions/confirming.h"
#include "core/store/store.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// The figure as it could be typed again, an interval with its words in the mechanic's language.
QString figureWords(const definitions::Printed& figure);
/// What was typed over it in the words that core reads; those of core are understood as they are.
std::string figureTyped(definitions::PrintedKind kind, const QString& typed);
/// Columns: kind, what, of, as stored, page.
TableRow confirmRow(const definitions::Printed& figure, std::int64_t id, bool passedOver);
/// "intervals 3 of 20 · amounts 0 of 12 · limits 1 of 8 · torques 8 of 47"
QString countByKind(const std::vector<definitions::Printed>& figures);
/// What it is about and what is confirmed with it.
QString aboutWords(const definitions::Printed& figure);
/// "common practice, p. 3"
QString sourceWords(const definitions::Printed& figure);
/// Digits and unit apart, where the figure is a number.
std::pair<QString, QString> splitFigure(const definitions::Printed& figure);
/// What was wrong, and where that is put right.
QString refusalWords(const store::ApplyError& error);

}  // namespace wm::ui
