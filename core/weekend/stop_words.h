// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string>
#include <vector>

#include "core/weekend/plan.h"
#include "core/weekend/step_words.h"

namespace wm::weekend {

/// What a stop must say: what was closed, what is still off, what is already cracked loose.
class StopWords {
  public:
    explicit StopWords(bool isElseWhole) : isElseWhole_(isElseWhole) {}

    void see(ActKind kind, const StepVersion* step) {
        if (kind == ActKind::BreakLoose)
            loose_.push_back(step);
        if (kind == ActKind::Off) {
            std::erase(loose_, step);
            off_.push_back(step);
        }
        if (kind == ActKind::On) {
            std::erase(off_, step);
            closed_.push_back(step);
        }
    }
    /// A joint that is cracked, or in again and not torqued yet.
    void loosened(const std::string& joint) {
        if (std::find(joints_.begin(), joints_.end(), joint) == joints_.end())
            joints_.push_back(joint);
    }
    void torqued(const std::string& joint) { std::erase(joints_, joint); }

    std::string take() {
        // Nobody wheels it about with an axle cracked loose.
        std::string text = isTight() ? "Safe to stop here" : "You can stop here, on the stand only";
        if (off_.empty() && isTight()) {
            text += isElseWhole_ ? ": the machine is whole"
                                 : ": all that this work opened is closed; the machine is not whole";
        } else {
            const std::string parts = partsBackOn();
            text += parts.empty() ? "." : fmt::format(". Back on: {}.", parts);
            for (const StepVersion* step : off_)
                text += stillWords(step->name);
            for (const StepVersion* step : loose_)
                text += fmt::format(" Cracked loose, not to be ridden or wheeled: {}.", step->breakLoose);
            if (!joints_.empty())
                text += fmt::format(" Loose, not to be ridden or wheeled: {}.", fmt::join(joints_, ", "));
        }
        closed_.clear();
        return text;
    }

  private:
    [[nodiscard]] bool isTight() const { return loose_.empty() && joints_.empty(); }

    [[nodiscard]] std::string partsBackOn() const {
        std::vector<std::string> list;
        for (auto step = closed_.rbegin(); step != closed_.rend(); ++step) {
            const std::string& name = (*step)->name;
            if (!standingOf(name).empty())
                continue;
            const std::string parts = partsOf(name);
            list.push_back(parts.empty() ? name : parts);
        }
        return fmt::format("{}", fmt::join(list, ", "));
    }

    // " Still: Seat off."; of a condition where it stands, if that has not been said: " Still on the stand."
    [[nodiscard]] std::string stillWords(const std::string& stepName) const {
        const std::string standing = standingOf(stepName);
        if (standing.empty())
            return fmt::format(" Still: {}.", stepName);
        return isTight() ? fmt::format(" Still on the {}.", standing) : std::string{};
    }

    bool isElseWhole_;
    std::vector<const StepVersion*> loose_;
    std::vector<const StepVersion*> off_;
    std::vector<const StepVersion*> closed_;
    std::vector<std::string> joints_;
};

}  // namespace wm::weekend
