// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/hand_tight.h"

#include <algorithm>
#include <tuple>

namespace wm::fastening {

using calendar::DayPart;

namespace {

auto orderOf(const Touch& touch) {
    return std::tuple(touch.when, touch.entered);
}

/// A joint while its touches are gone through.
struct Walked {
    JointNow now{};
    std::optional<calendar::Moment> opened{};  ///< the last time that it was loosened, whatever by
};

// Part of an opening that was already closed that day.
bool isSameOpening(const Walked& joint, const Touch& touch,
                   const std::function<bool(calendar::Date)>& rodeOn) {
    if (joint.now.isLoose || !joint.now.tightened || !joint.opened || joint.opened->date != touch.when.date)
        return false;
    const bool ridingBetween =
        joint.opened->part == DayPart::BeforeRiding && touch.when.part != DayPart::BeforeRiding;
    return !ridingBetween || !rodeOn(touch.when.date);
}

void take(Walked& joint, const Touch& touch) {
    JointNow& now = joint.now;
    now.last = touch;
    if (touch.how == Touching::Tightened) {
        now.isLoose = false;
        if (touch.isAnew && now.tightened && now.tightened->when.date != touch.when.date)
            now.tightenings.clear();
        now.tightened = touch;
        now.tightenings.push_back(touch);
        return;
    }
    // A second loosening makes it no younger.
    if (!now.isLoose)
        now.since = touch;
    now.isLoose = true;
    now.tightenings.clear();
    joint.opened = touch.when;
}

}  // namespace

bool comesBefore(const Touch& a, const Touch& b) {
    return orderOf(a) < orderOf(b);
}

std::map<JointId, JointNow> jointsNow(std::vector<Touch> touches,
                                      const std::function<bool(calendar::Date)>& rodeOn) {
    std::stable_sort(touches.begin(), touches.end(), comesBefore);
    std::map<JointId, Walked> walked;
    for (const Touch& touch : touches) {
        Walked& joint = walked[touch.joint];
        if (touch.how != Touching::Opened || !isSameOpening(joint, touch, rodeOn))
            take(joint, touch);
    }
    std::map<JointId, JointNow> joints;
    for (const auto& [id, joint] : walked)
        joints.emplace(id, joint.now);
    return joints;
}

std::vector<HandTight> handTight(const std::map<JointId, JointNow>& joints) {
    std::vector<const JointNow*> loose;
    for (const auto& [id, now] : joints)
        if (now.isLoose)
            loose.push_back(&now);
    std::stable_sort(loose.begin(), loose.end(),
                     [](const JointNow* a, const JointNow* b) { return comesBefore(a->since, b->since); });
    std::vector<HandTight> result;
    for (const JointNow* now : loose) {
        const Touch& since = now->since;
        result.push_back(
            {since.joint, since.when.date, since.when.part, since.entered, since.why, since.record});
    }
    return result;
}

}  // namespace wm::fastening
