// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/generic.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/fastening/kind_words.h"

namespace wm::fastening {

namespace {

constexpr double kSmallest = 4;  // mm; beneath it a hand feels more than a wrench shows
constexpr double kLargest = 16;  // mm; above it everything on a bike is an axle, a pivot or a bearing nut
constexpr double kLowEnd = 2.0 / 3.0;

// Cast aluminium as cases and hubs are made of: at least 150 MPa tensile (EN 1706 sand castings, from
// memory), 0.6 of it in shear, and half of that used.
constexpr double kAluminiumShear = 0.6 * 150;
constexpr double kOfTheHole = 0.5;

struct Range {
    Friction least;
    Friction most;
};

Range frictionOf(Lubrication lubrication) {
    switch (lubrication) {
        case Lubrication::Dry:
            return {{0.14, 0.14}, {0.24, 0.24}};
        case Lubrication::Lubricated:
            return {{0.08, 0.08}, {0.16, 0.16}};
        case Lubrication::AntiSeize:
            return {{0.04, 0.04}, {0.12, 0.12}};
        case Lubrication::Unknown:
            break;
    }
    return {{0.08, 0.08}, {0.24, 0.24}};
}

// The thread in the hole shears at the bolt's outer diameter, where the basic profile (ISO 68-1) leaves 7/8
// of the pitch.
double holeBears(const Thread& thread, double engagement) {
    const double length = std::min(engagement, kMostEngagement) * thread.diameter;
    return std::numbers::pi * thread.diameter * length * 7 / 8 * kAluminiumShear * kOfTheHole;
}

tl::unexpected<GenericRefusal> refused(GenericWhy why, const GenericAsk& ask, std::string given = {}) {
    return tl::unexpected<GenericRefusal>({why, ask.kind, std::move(given)});
}

}  // namespace

tl::expected<GenericBand, GenericRefusal> genericBand(const GenericAsk& ask) {
    const JointKind kind = ask.kind == JointKind::Other ? kindByName(ask.name) : ask.kind;
    if (dangerousKind(kind))
        return tl::unexpected<GenericRefusal>({GenericWhy::DangerousKind, kind, {}});
    if (ask.hole == Hole::Magnesium)
        return refused(GenericWhy::Magnesium, ask);
    if (ask.byAngle || isStretchedByName(ask.name))
        return refused(GenericWhy::ByAngle, ask);
    if (ask.hasFigure)
        return refused(GenericWhy::HasFigure, ask);
    const auto thread = parseThread("thread", ask.thread);
    if (!thread)
        return refused(GenericWhy::NoSuchThread, ask, ask.thread);
    if (thread->diameter < kSmallest || thread->diameter > kLargest)
        return refused(GenericWhy::TooSmallOrLarge, ask, threadText(*thread));
    const auto proof = proofLoad(ask.propertyClass, *thread);
    if (!proof)
        return refused(GenericWhy::NoSuchClass, ask, ask.propertyClass);
    if (!std::isfinite(ask.engagement) || ask.engagement <= 0)
        return refused(GenericWhy::NotANumber, ask);
    if (ask.engagement < kLeastEngagement)
        return refused(GenericWhy::ShortEngagement, ask);
    const Range friction = frictionOf(ask.lubrication);
    const double ofBolt = kMostOfProof * *proof;
    const double ofHole = ask.hole == Hole::Aluminium ? holeBears(*thread, ask.engagement) : ofBolt;
    GenericBand band{.thread = *thread,
                     .propertyClass = ask.propertyClass,
                     .hole = ask.hole,
                     .engagement = ask.engagement,
                     .slippery = friction.least,
                     .rough = friction.most,
                     .proof = *proof,
                     .most = std::min(ofBolt, ofHole),
                     .holeDecides = ofHole < ofBolt};
    const double bearing = bearingDiameter(*thread);
    band.high = torqueFor(band.most, *thread, friction.least, bearing);
    band.low = kLowEnd * band.high;
    band.leastShare = band.low / torqueFor(*proof, *thread, friction.most, bearing);
    return band;
}

}  // namespace wm::fastening
