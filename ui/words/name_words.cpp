// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/name_words.h"

#include "ui/words/tr.h"

namespace wm::ui {

namespace {

// Read by lupdate alone: the names are looked up as they stand in core. tests/ui/translation holds it
// complete.
[[maybe_unused]] constexpr const char* kNames[] = {
    // Ground, pace
    QT_TR_NOOP("hard"), QT_TR_NOOP("dust"), QT_TR_NOOP("sand"), QT_TR_NOOP("mud"), QT_TR_NOOP("water"),
    QT_TR_NOOP("race"), QT_TR_NOOP("easy"), QT_TR_NOOP("unstated"),
    // Counter
    QT_TR_NOOP("hours"), QT_TR_NOOP("metres"), QT_TR_NOOP("outings"), QT_TR_NOOP("starts"),
    QT_TR_NOOP("washes"), QT_TR_NOOP("mud days"), QT_TR_NOOP("crashes"), QT_TR_NOOP("days"),
    QT_TR_NOOP("months"),
    // Happening
    QT_TR_NOOP("wash"), QT_TR_NOOP("pressure wash"), QT_TR_NOOP("mud day"), QT_TR_NOOP("crash"),
    QT_TR_NOOP("before race"), QT_TR_NOOP("job"),
    // Unit
    QT_TR_NOOP("piece"), QT_TR_NOOP("ml"), QT_TR_NOOP("g"),
    // When
    QT_TR_NOOP("at once"), QT_TR_NOOP("next outing"), QT_TR_NOOP("after hours"), QT_TR_NOOP("after days"),
    // BodyState
    QT_TR_NOOP("any"), QT_TR_NOOP("cold"), QT_TR_NOOP("warm"),
    // JointKind
    QT_TR_NOOP("other"), QT_TR_NOOP("brake"), QT_TR_NOOP("axle"), QT_TR_NOOP("pinch"), QT_TR_NOOP("steering"),
    QT_TR_NOOP("peg"), QT_TR_NOOP("pivot"), QT_TR_NOOP("linkage"), QT_TR_NOOP("shock"),
    QT_TR_NOOP("swingarm"), QT_TR_NOOP("wheel"), QT_TR_NOOP("spoke"), QT_TR_NOOP("suspension"),
    QT_TR_NOOP("engine mount"), QT_TR_NOOP("sprocket"), QT_TR_NOOP("engine"), QT_TR_NOOP("cover"),
    // MarkKind
    QT_TR_NOOP("loosened"), QT_TR_NOOP("confirmed"), QT_TR_NOOP("found fine"), QT_TR_NOOP("found moved"),
    QT_TR_NOOP("mark broken"), QT_TR_NOOP("ridden open"),
    // ToolType; the others are codes of the standard
    QT_TR_NOOP("unstated"),
    // Hole, thread
    QT_TR_NOOP("steel"), QT_TR_NOOP("aluminium"), QT_TR_NOOP("magnesium"), QT_TR_NOOP("unknown"),
    QT_TR_NOOP("dry"), QT_TR_NOOP("lubricated"), QT_TR_NOOP("anti-seize"),
    // Starter schedules
    QT_TR_NOOP("four-stroke enduro"), QT_TR_NOOP("four-stroke motocross"), QT_TR_NOOP("small-wheel youth"),
    QT_TR_NOOP("two-stroke motocross")};

}  // namespace

QString nameWords(std::string_view name) {
    return name.empty() ? QString() : tr(std::string(name).c_str());
}

}  // namespace wm::ui
