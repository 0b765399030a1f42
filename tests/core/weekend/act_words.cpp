// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/weekend/act_words.h"

namespace wm::weekend {

std::vector<std::string> actWords(const Plan& plan) {
    std::vector<std::string> words;
    for (const Act& act : plan.acts) {
        switch (act.kind) {
            case ActKind::BreakLoose:
                words.push_back("crack " + act.step);
                break;
            case ActKind::Off:
                words.push_back("-" + act.step);
                break;
            case ActKind::On:
                words.push_back("+" + act.step);
                break;
            case ActKind::Job:
                words.push_back(act.text);
                break;
            case ActKind::SafeStop:
                words.emplace_back("stop");
                break;
            case ActKind::Run:
                words.emplace_back("run");
                break;
            case ActKind::Wait:
                words.emplace_back("wait");
                break;
            case ActKind::Crack:
                words.push_back("crack " + act.joint);
                break;
            case ActKind::Do:
                words.push_back("do " + act.doing);
                break;
            case ActKind::Torque:
                words.push_back("torque " + act.joint);
                break;
        }
    }
    return words;
}

}  // namespace wm::weekend
