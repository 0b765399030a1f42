// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/random_garage.h"

#include <algorithm>
#include <array>

namespace wm::slow {

using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using usage::MeterEvent;

namespace {

class Chance {
  public:
    explicit Chance(std::uint64_t seed) : engine_(seed) {}
    std::int64_t upTo(std::int64_t most) {
        return static_cast<std::int64_t>(engine_() % static_cast<std::uint64_t>(most + 1));
    }
    bool oneIn(std::int64_t n) { return upTo(n - 1) == 0; }
    DayPart part() { return static_cast<DayPart>(upTo(2)); }

  private:
    std::mt19937_64 engine_;
};

class Writer {
  public:
    Writer(std::uint64_t seed, int days) : chance_(seed) {
        garage_.first = Date{20'000};
        if (seed % 3 == 1)
            garage_.countVan.insert(MachineId{101});
        garage_.last = garage_.first.plusDays(days);
        for (std::int64_t id = 1; id <= 7; ++id) {
            items::Item item;
            item.id = ItemId{id};
            item.since = garage_.first;
            item.startedNew = true;
            garage_.items.push_back(item);
        }
    }
    Garage write() {
        const bool careful = chance_.oneIn(4);
        weigh();
        for (Date day = garage_.first; day <= garage_.last; day = day.plusDays(1)) {
            for (const MachineId machine : {MachineId{101}, MachineId{102}}) {
                ride(machine, day, careful);
                read(machine, day);
            }
            while (chance_.oneIn(2))
                move(day);
        }
        return std::move(garage_);
    }

  private:
    // What a task may say of hours: none to four weights, for any or one ground and pace.
    void weigh() {
        for (std::int64_t i = chance_.upTo(4); i > 0; --i) {
            usage::HourWeight weight{.permille = 1 + chance_.upTo(3000)};
            if (!chance_.oneIn(3))
                weight.ground = static_cast<usage::Ground>(chance_.upTo(5));
            if (!chance_.oneIn(3))
                weight.pace = static_cast<usage::Pace>(chance_.upTo(3));
            garage_.weights.push_back(weight);
        }
    }
    struct Meter {
        std::int64_t shown = 0;
        bool dead = false;
    };
    template <class Fact>
    Fact fact(MachineId machine, Date day) {
        Fact made;
        made.id = decltype(made.id){1000 + ++last_};
        made.entered = last_;
        made.machine = machine;
        made.date = day;
        return made;
    }
    void ride(MachineId machine, Date day, bool careful) {
        auto& use = garage_.use[machine];
        const std::int64_t outings = chance_.oneIn(3) ? 1 + (chance_.oneIn(5) ? 1 : 0) : 0;
        for (std::int64_t i = 0; i < outings; ++i) {
            const std::int64_t ran = chance_.upTo(400);
            if (!meters_[machine].dead)
                meters_[machine].shown += ran;
            if (chance_.oneIn(4))
                continue;  // nobody wrote it down
            auto outing = fact<usage::Outing>(machine, day);
            if (careful)
                outing.hours = units::Hours{ran};
            else if (!chance_.oneIn(4))
                outing.hours = units::Hours{std::max<std::int64_t>(ran + chance_.upTo(40) - 20, 0)};
            outing.starts = chance_.upTo(3);
            outing.ground = static_cast<usage::Ground>(chance_.upTo(5));
            outing.pace = static_cast<usage::Pace>(chance_.upTo(3));
            use.outings.push_back(outing);
        }
        for (const bool pressure : {false, true}) {
            if (!chance_.oneIn(6))
                continue;
            use.washes.push_back(fact<usage::Wash>(machine, day));
            use.washes.back().pressure = pressure;
        }
        if (chance_.oneIn(12))
            use.crashes.push_back(fact<usage::Crash>(machine, day));
    }
    void read(MachineId machine, Date day) {
        if (!chance_.oneIn(5))
            return;
        Meter& meter = meters_[machine];
        auto reading = fact<usage::HourReading>(machine, day);
        reading.part = chance_.part();
        const std::int64_t what = chance_.upTo(19);
        if (meter.dead && what < 10) {
            reading.event = what < 5 ? MeterEvent::Resumed : MeterEvent::Replaced;
            meter = {what < 3 ? meter.shown : 0, false};
        } else if (what == 10) {
            reading.event = MeterEvent::Stopped;
            meter.dead = true;
        } else if (what == 11 || what == 12) {
            reading.event = what == 11 ? MeterEvent::Replaced : MeterEvent::Reset;
            if (chance_.oneIn(2))
                reading.before = units::Hours{meter.shown};
            meter.shown = 0;
        } else if (what == 13) {
            reading.event = MeterEvent::RolledOver;
            if (!chance_.oneIn(4))
                reading.rollsAt = units::Hours{meter.shown + chance_.upTo(100)};
            meter.shown = chance_.upTo(50);
        } else if (what == 14) {
            meter.shown = std::max<std::int64_t>(meter.shown - chance_.upTo(100), 0);  // misread
        }
        reading.shown = units::Hours{meter.shown};
        garage_.use[machine].hourReadings.push_back(reading);
    }
    // Tries something; what cannot be is not done.
    void move(Date day) {
        static constexpr std::array<const char*, 2> wheels{"front wheel", "rear wheel"};
        items::Move move;
        move.id = MoveId{1000 + ++last_};
        move.entered = last_;
        move.item = ItemId{1 + chance_.upTo(6)};
        const auto back = static_cast<std::int32_t>(chance_.upTo(day - garage_.first));
        move.date = chance_.oneIn(8) ? garage_.first.plusDays(back) : day;
        move.part = chance_.part();
        move.kind =
            chance_.oneIn(2) ? items::MoveKind::Fitted : static_cast<items::MoveKind>(1 + chance_.upTo(1));
        if (move.kind == items::MoveKind::Fitted) {
            const bool isPiston = move.item >= ItemId{6};
            const bool isEngine = move.item <= ItemId{2};
            if (isPiston)
                move.parent = ItemId{1 + chance_.upTo(1)};
            else
                move.machine = MachineId{101 + chance_.upTo(1)};
            move.position = isPiston   ? "piston"
                            : isEngine ? "engine"
                                       : wheels.at(static_cast<std::size_t>(chance_.upTo(1)));
        }
        if (items::Fittings(garage_.moves).check(move))
            garage_.moves.push_back(move);
    }

    Chance chance_;
    Garage garage_;
    std::map<MachineId, Meter> meters_;
    std::int64_t last_ = 0;
};

}  // namespace

Garage randomGarage(std::uint64_t seed, int days) {
    return Writer(seed, days).write();
}

Moment randomMoment(const Garage& garage, std::mt19937_64& chance) {
    const auto days = static_cast<std::uint64_t>(garage.last - garage.first) + 5;
    const auto day = static_cast<std::int32_t>(chance() % days) - 2;
    return {garage.first.plusDays(day), static_cast<DayPart>(chance() % 3)};
}

}  // namespace wm::slow
