// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/ids.h"
#include "core/base/names.h"
#include "core/base/row.h"
#include "core/calendar/date.h"
#include "core/units/decimal.h"
#include "core/units/torque.h"

namespace wm::fastening {

/// What kind of joint it is: decides where a generic figure would be dangerous and is never offered.
enum class JointKind : std::uint8_t {
    Other,
    Brake,
    Axle,
    Pinch,
    Steering,
    Peg,
    Pivot,
    Linkage,
    Shock,
    Swingarm,
    Wheel,
    Spoke,
    Suspension,
    EngineMount,
    Sprocket,
    Engine,
    Cover
};

enum class Sequence : std::uint8_t { Any, CrissCross, Spiral, EveryNth, Listed };

/// One version of a joint: a fastener or a pattern of them on one machine. Torque stands as the manual prints
/// it (value or range, unit, decimals) or is blank; nothing is ever filled in by the program. A version with
/// `sharedFrom` and `sharedTo` was typed for every machine of this maker and model in those model years: each
/// has the same words under an id of its own. One without them is of this machine alone and overrules them.
struct JointVersion {
    static constexpr std::string_view kTable = "joint_version";
    static constexpr base::RowKind kKind = base::RowKind::Version;
    JointVersionId id{};
    base::Entered entered = 0;
    JointId joint{};
    MachineId machine{};
    calendar::Date validFrom{};
    std::string code{};
    std::string name{};
    JointKind kind = JointKind::Other;
    std::string thread{};  ///< "M20x1.5"
    std::int64_t count = 1;
    std::optional<units::Decimal> torque{};      ///< the value, or the low end of a range
    std::optional<units::Decimal> torqueHigh{};  ///< the high end of a range
    units::TorqueUnit unit = units::TorqueUnit::NewtonMetre;
    std::string stages{};     ///< "snug, 20, 38", "seat 40, loosen, 9", "30 + 90 deg"
    std::string condition{};  ///< "dry", "oiled", "greased" ...
    std::string locking{};    ///< grade of threadlocker, cotter, tab ...
    std::string renew{};      ///< what is replaced each time; empty if nothing
    bool leftHand = false;
    Sequence sequence = Sequence::Any;
    std::int64_t sequenceStep = 0;  ///< n of EveryNth
    std::string sequenceNote{};
    std::string source{};
    std::string page{};
    bool confirmed = false;
    std::string typedBy{};
    std::string checkedBy{};
    bool active = true;
    std::optional<std::int64_t> sharedFrom{};  ///< first model year
    std::optional<std::int64_t> sharedTo{};    ///< last model year
    /// Where it sits: inside what is fitted at that position, with which it goes; empty: it is the machine's
    /// own; nothing: nobody said.
    std::optional<std::string> position{};
    std::string held{};        ///< by what it is held against the wrench: "rear brake", "hub in a holder"
    bool fromStarter = false;  ///< word for word what a starter schedule says

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("joint", self.joint);
        visit("machine", self.machine);
        visit("valid_from", self.validFrom);
        visit("code", self.code);
        visit("name", self.name);
        visit("kind", self.kind);
        visit("thread", self.thread);
        visit("count", self.count);
        visit("torque", self.torque);
        visit("torque_high", self.torqueHigh);
        visit("unit", self.unit);
        visit("stages", self.stages);
        visit("condition", self.condition);
        visit("locking", self.locking);
        visit("renew", self.renew);
        visit("left_hand", self.leftHand);
        visit("sequence", self.sequence);
        visit("sequence_step", self.sequenceStep);
        visit("sequence_note", self.sequenceNote);
        visit("source", self.source);
        visit("page", self.page);
        visit("confirmed", self.confirmed);
        visit("typed_by", self.typedBy);
        visit("checked_by", self.checkedBy);
        visit("active", self.active);
        visit("shared_from", self.sharedFrom);
        visit("shared_to", self.sharedTo);
        visit("position", self.position);
        visit("held", self.held);
        visit("from_starter", self.fromStarter);
    }
    friend bool operator==(const JointVersion&, const JointVersion&) = default;
};

/// Loosened: undone or put together by hand. Confirmed: tightened and checked. FoundFine, FoundMoved: looked
/// at later, with the wrench. MarkBroken: the paint line was found broken, at the track say. A joint that
/// moved or whose mark is broken is open until confirmed. RiddenOpen: the machine was ridden while the joint
/// was open, and the mechanic said that he knew; neither opens nor closes.
enum class MarkKind : std::uint8_t { Loosened, Confirmed, FoundFine, FoundMoved, MarkBroken, RiddenOpen };

struct JointMark {
    static constexpr std::string_view kTable = "joint_mark";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    JointMarkId id{};
    base::Entered entered = 0;
    JointId joint{};
    calendar::Date date{};
    MarkKind kind = MarkKind::Loosened;
    std::optional<RecordId> record{};
    std::optional<PersonId> by{};
    std::optional<units::Decimal> torque{};
    units::TorqueUnit unit = units::TorqueUnit::NewtonMetre;
    std::string note{};
    std::optional<ToolId> tool{};                ///< what it was tightened or checked with
    std::optional<std::int64_t> movedCount{};    ///< how many of the pattern's fasteners moved
    std::optional<std::int64_t> movedDegrees{};  ///< how far, until it clicked or the mark met again
    std::optional<OutingId> outing{};            ///< the outing that it was noted with
    /// In which it sat, where that was not in its place on the joint's own machine.
    std::optional<ItemId> item{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("joint", self.joint);
        visit("date", self.date);
        visit("kind", self.kind);
        visit("record", self.record);
        visit("by_person", self.by);
        visit("torque", self.torque);
        visit("unit", self.unit);
        visit("note", self.note);
        visit("tool", self.tool);
        visit("moved_count", self.movedCount);
        visit("moved_degrees", self.movedDegrees);
        visit("outing", self.outing);
        visit("item", self.item);
    }
    friend bool operator==(const JointMark&, const JointMark&) = default;
};

}  // namespace wm::fastening

namespace wm::base {
template <>
struct Names<fastening::JointKind> {
    static constexpr std::array<std::string_view, 17> names{
        "other",    "brake", "axle",  "pinch",      "steering",     "peg",      "pivot",  "linkage", "shock",
        "swingarm", "wheel", "spoke", "suspension", "engine mount", "sprocket", "engine", "cover"};
};
template <>
struct Names<fastening::Sequence> {
    static constexpr std::array<std::string_view, 5> names{"any", "criss-cross", "spiral", "every n-th",
                                                           "listed"};
};
template <>
struct Names<fastening::MarkKind> {
    static constexpr std::array<std::string_view, 6> names{"loosened",    "confirmed",   "found fine",
                                                           "found moved", "mark broken", "ridden open"};
};
}  // namespace wm::base
