// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/application_icon.h"

// The resources sit in a static library: without this the linker leaves them out. It works at the global
// scope alone.
static void takeResourcesAlong() {
    Q_INIT_RESOURCE(witnessmark);
}

namespace wm::ui {

QIcon applicationIcon() {
    takeResourcesAlong();
    return QIcon(QStringLiteral(":/icons/witnessmark.svg"));
}

}  // namespace wm::ui
