// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/base/names.h"
#include "core/units/quantity.h"

// What access steps and tasks say of the order of work, beyond what must be off: deeds that belong to them,
// and which act comes before which. core/weekend makes a plan of it.
namespace wm::upkeep {

/// Kinds of acts: of a joint (crack, torque), an access step (off, on), a doing (do), a task (job).
enum class Deed : std::uint8_t { Crack, Off, Do, Job, On, Torque };

/// `crack rear-axle-nut`: an act by its kind and the code of what it is done to.
struct ActRef {
    Deed deed = Deed::Off;
    std::string code{};
    friend bool operator==(const ActRef&, const ActRef&) = default;
};

/// `earlier` is done before `later` in every plan that holds both. A joint that no edge speaks of is loosened
/// as its step comes off and torqued as it goes back; one that an edge speaks of has an act of its own.
struct Edge {
    ActRef earlier{};
    ActRef later{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("earlier", self.earlier.deed);
        visit("earlier_code", self.earlier.code);
        visit("later", self.later.deed);
        visit("later_code", self.later.code);
    }
    friend bool operator==(const Edge&, const Edge&) = default;
};

/// Before the step comes off (the job is begun), while it is off, after it is back on (the job is done).
enum class Comes : std::uint8_t { Before, Between, After };

/// What is done besides, because of a step or a task: the brake pumped, the slack set, the marks seen. In a
/// plan each code stands once: what several steps ask for comes when all of them allow it.
struct Doing {
    std::string code{};
    std::string what{};  ///< "Pump the rear brake until the pedal is hard"
    units::Minutes minutes{};
    Comes comes = Comes::After;
    bool runs = false;  ///< the engine is run for it: outside, and only when all is closed

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("code", self.code);
        visit("what", self.what);
        visit("minutes", self.minutes);
        visit("comes", self.comes);
        visit("runs", self.runs);
    }
    friend bool operator==(const Doing&, const Doing&) = default;
};

}  // namespace wm::upkeep

namespace wm::base {
template <>
struct Names<upkeep::Deed> {
    static constexpr std::array<std::string_view, 6> names{"crack", "off", "do", "job", "on", "torque"};
};
template <>
struct Names<upkeep::Comes> {
    static constexpr std::array<std::string_view, 3> names{"before", "between", "after"};
};
}  // namespace wm::base
