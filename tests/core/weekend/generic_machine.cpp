// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/weekend/generic_machine.h"

#include "core/base/text.h"

namespace wm::weekend {

namespace {

struct Line {
    const char* code;
    std::int64_t off;
    std::int64_t on;
    const char* needs;
    const char* breakLoose = "";
    const char* looseBefore = "";
};

constexpr Line kLines[] = {
    {"STD", 3, 2, ""},
    {"SEA", 1, 2, "STD"},
    {"PNL", 2, 3, "STD"},
    {"FLT", 2, 4, "SEA"},
    {"TNK", 6, 8, "SEA"},
    {"SIL", 4, 5, "PNL"},
    {"HDR", 6, 9, "SIL"},
    {"SUB", 10, 14, "SEA PNL SIL"},
    {"INT", 9, 12, "TNK SUB*"},
    {"FWH", 4, 7, "STD", "pinch bolts and axle nut, wheel on the ground", "STD"},
    {"FCL", 3, 5, "STD"},
    {"FRK", 6, 10, "FWH FCL", "fork caps, held in the lower clamp"},
    {"BAR", 5, 8, "STD"},
    {"STM", 9, 15, "BAR FRK", "stem nut, fork still in", "FRK"},
    {"RWH", 4, 7, "STD", "axle nut, wheel on the ground", "STD"},
    {"CHN", 3, 4, "STD", "front sprocket nut, chain on, brake held", "RWH"},
    {"LNK", 10, 14, "RWH"},
    {"SHK", 8, 12, "LNK SUB*"},
    {"SWA", 12, 18, "RWH CHN LNK", "pivot nut, wheel in", "RWH"},
    {"COO", 4, 10, "STD"},
    {"RAD", 8, 12, "TNK COO"},
    {"OIL", 4, 5, "STD"},
    {"CLC", 4, 6, "STD"},
    {"PRC", 12, 20, "OIL COO CLC"},
    {"IGC", 5, 7, "STD"},
    {"VCV", 9, 12, "TNK"},
    {"CAM", 12, 22, "VCV IGC"},
    {"HD2", 8, 16, "COO TNK*"},
    {"CY2", 10, 22, "HD2 HDR INT*"},
    {"HD4", 14, 28, "CAM COO HDR INT"},
    {"CY4", 8, 24, "HD4"},
    {"ENG", 30, 50, "HDR INT CHN RAD OIL", "rotor, hub and primary nuts, engine in the frame"},
};

}  // namespace

std::vector<StepVersion> genericMachine(bool someModels) {
    std::vector<StepVersion> steps;
    for (const Line& line : kLines) {
        StepVersion step;
        step.code = line.code;
        step.name = base::lowered(line.code);
        step.off = units::Minutes{line.off};
        step.on = units::Minutes{line.on};
        step.breakLoose = line.breakLoose;
        for (std::string code : base::split(line.needs, ' ')) {
            if (code.empty())
                continue;
            const bool some = code.back() == '*';
            if (some)
                code.pop_back();
            step.needs.push_back({code, some, !some || someModels});
        }
        if (*line.looseBefore != '\0')
            step.looseBefore.push_back({line.looseBefore});
        steps.push_back(std::move(step));
    }
    return steps;
}

std::vector<const StepVersion*> pointersTo(const std::vector<StepVersion>& steps) {
    std::vector<const StepVersion*> pointers;
    for (const StepVersion& step : steps)
        pointers.push_back(&step);
    return pointers;
}

Job makeJob(std::string name, std::int64_t minutes, std::vector<std::string> steps, upkeep::BodyState state) {
    Job job;
    job.name = std::move(name);
    job.minutes = units::Minutes{minutes};
    job.steps = std::move(steps);
    job.bodyState = state;
    return job;
}

}  // namespace wm::weekend
