// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/danger.h"

#include "core/base/text.h"

namespace wm::fastening {

bool dangerousKind(JointKind kind) {
    using enum JointKind;
    switch (kind) {
        case Brake:
        case Axle:
        case Pinch:
        case Steering:
        case Peg:
        case Pivot:
        case Linkage:
        case Shock:
        case Swingarm:
        case Wheel:
        case Spoke:
        case Suspension:
        case EngineMount:
        case Sprocket:
            return true;
        case Other:
        case Engine:
        case Cover:
            break;
    }
    return false;
}

bool cures(const JointVersion& joint) {
    const std::string locking = base::lowered(joint.locking);
    return locking.find("threadlock") != std::string::npos ||
           locking.find("thread-lock") != std::string::npos;
}

}  // namespace wm::fastening
