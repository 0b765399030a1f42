// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fastening/stand.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/exchange/starter.h"
#include "tests/repository.h"

namespace wm::fastening {

namespace {

std::string fileText(const std::string& path) {
    std::ifstream in(test::repositoryPath(path));
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

struct Threaded {
    std::string_view code;
    std::string_view thread;
    std::optional<units::Decimal> torque{};
};

// Invented, like the machines.
constexpr std::array kThreads{
    Threaded{"rear-axle-nut", "M20x1.5", units::Decimal{110, 0}},
    Threaded{"chain-adjuster-nuts", "M8x1.25"},
    Threaded{"front-axle-nut", "M18x1.5", units::Decimal{88, 0}},
    Threaded{"front-axle-pinch-fixed", "M8x1.25"},
    Threaded{"front-axle-pinch-free", "M8x1.25"},
    Threaded{"top-clamp-pinch", "M8x1.25"},
    Threaded{"bottom-clamp-pinch", "M8x1.25"},
    Threaded{"stem-nut", "M24x1.0"},
    Threaded{"bar-clamp-bolts", "M8x1.25"},
    Threaded{"bar-mount-nuts", "M10x1.25"},
    Threaded{"front-caliper-bolts", "M8x1.25"},
    Threaded{"front-disc-bolts", "M6x1.0"},
    Threaded{"rear-disc-bolts", "M6x1.0"},
    Threaded{"front-pad-pin", "M10x1.0"},
    Threaded{"rear-sprocket-bolts", "M8x1.25"},
    Threaded{"link-frame-bolt", "M12x1.25"},
    Threaded{"link-swingarm-bolt", "M14x1.5"},
    Threaded{"link-rod-bolt", "M12x1.25"},
    Threaded{"shock-upper-bolt", "M10x1.25"},
    Threaded{"shock-lower-bolt", "M10x1.25"},
    Threaded{"swingarm-pivot-nut", "M16x1.5"},
    Threaded{"oil-drain-bolt", "M12x1.5"},
    Threaded{"oil-filter-bolts", "M6x1.0"},
    Threaded{"spark-plug", "M10x1.0"},
    Threaded{"valve-cover-bolts", "M6x1.0"},
    Threaded{"clutch-spring-bolts", "M6x1.0"},
};

class Stand {
  public:
    void addMachine(const std::string& name, const exchange::Starter& starter) {
        const MachineId machine(++lastId_);
        const calendar::Date since = *calendar::makeDate(2025, 1, 1);
        rows_.emplace_back(items::Machine{.id = machine, .name = name, .since = since, .startedNew = true});
        for (upkeep::TaskVersion task : starter.tasks) {
            task.task = TaskId(++lastId_);
            add(task, machine, since);
        }
        for (weekend::StepVersion step : starter.steps) {
            step.step = StepId(++lastId_);
            add(step, machine, since);
        }
        for (JointVersion joint : starter.joints) {
            joint.joint = JointId(++lastId_);
            const auto threaded = std::find_if(kThreads.begin(), kThreads.end(),
                                               [&](const Threaded& each) { return each.code == joint.code; });
            if (threaded != kThreads.end()) {
                joint.thread = threaded->thread;
                joint.torque = threaded->torque;
            }
            add(joint, machine, since);
        }
        addSettings(machine);
    }

    std::shared_ptr<const picture::Ledger> ledger() && {
        return std::make_shared<const picture::Ledger>(std::move(rows_));
    }

  private:
    template <class Version>
    void add(Version& version, MachineId machine, calendar::Date since) {
        using IdType = decltype(version.id);
        version.id = IdType(++lastId_);
        version.entered = ++entered_;
        version.machine = machine;
        version.validFrom = since;
        rows_.emplace_back(version);
    }

    void addSettings(MachineId machine) {
        const auto note = [&](const char* name, const char* value) {
            rows_.emplace_back(items::Setting{.id = SettingId(++lastId_),
                                              .entered = ++entered_,
                                              .machine = machine,
                                              .date = *calendar::makeDate(2026, 3, 1),
                                              .name = name,
                                              .value = value});
        };
        note("main jet", "410");
        note("needle clip", "third");
        note("fork compression", "12 out");
        note("fork rebound", "11 out");
        note("shock compression, low", "10 out");
        note("shock rebound", "12 out");
        note("preload length", "248 mm");
        note("gearing", "13-50");
        note("front pressure", "0.85 bar");
    }

    std::int64_t lastId_ = 0;
    base::Entered entered_ = 0;
    std::vector<picture::Row> rows_;
};

}  // namespace

std::shared_ptr<const picture::Ledger> standLedger(int machines) {
    const auto four = exchange::readStarter(fileText("resources/starters/four-stroke-motocross.json"));
    const auto two = exchange::readStarter(fileText("resources/starters/two-stroke-motocross.json"));
    static constexpr std::array kNames{"Heron 250",  "Plover 125", "Sorrel 450", "Dunlin 85",
                                       "Curlew 350", "Avocet 250", "Godwit 300", "Whimbrel 65"};
    Stand stand;
    for (int at = 0; at < machines; ++at) {
        const auto number = static_cast<std::size_t>(at);
        std::string name = kNames.at(number % kNames.size());
        if (number >= kNames.size())
            name += " (" + std::to_string(number / kNames.size() + 1) + ')';
        stand.addMachine(name, number % 2 == 0 ? *four : *two);
    }
    return std::move(stand).ledger();
}

book::Book standBook(int machines) {
    return {standLedger(machines), *calendar::makeDate(2026, 5, 7)};
}

std::string pointName(const Figure& figure) {
    static constexpr std::array kKinds{"joint", "quantity", "limit", "setting"};
    return std::string(kKinds.at(static_cast<std::size_t>(figure.kind))) + ':' + figure.code;
}

std::vector<AskedFor> askedFor() {
    const auto file = nlohmann::json::parse(fileText("tests/data/lookup/queries.json"));
    std::vector<AskedFor> asked;
    for (const auto& line : file.at("queries"))
        asked.push_back({line.at("query"), line.at("machine"), line.at("kind"), line.value("unit", ""),
                         line.at("find").get<std::vector<std::string>>()});
    return asked;
}

}  // namespace wm::fastening
