// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <unordered_map>

#include "core/weekend/plan.h"

namespace wm::weekend {

using base::Fault;
using base::refuse;

namespace {

enum class Seen : std::uint8_t { Entered, Done };

class Opener {
  public:
    explicit Opener(std::span<const StepVersion* const> steps) {
        for (const StepVersion* step : steps)
            byCode_.emplace(step->code, step);
    }

    base::Result<void> open(const std::string& code) {
        const auto known = byCode_.find(code);
        if (known == byCode_.end())
            return refuse(Fault::Unknown, "step", code);
        const auto [mark, isNew] = seen_.emplace(known->second, Seen::Entered);
        if (!isNew) {
            if (mark->second == Seen::Entered)
                return refuse(Fault::Cycle, "step", code);
            return {};
        }
        for (const Need& need : known->second->needs)
            if (need.applies)
                if (auto opened = open(need.code); !opened)
                    return opened;
        seen_[known->second] = Seen::Done;
        order_.push_back(known->second);
        return {};
    }

    [[nodiscard]] std::vector<const StepVersion*> take() { return std::move(order_); }

  private:
    std::unordered_map<std::string_view, const StepVersion*> byCode_;
    std::unordered_map<const StepVersion*, Seen> seen_;
    std::vector<const StepVersion*> order_;
};

}  // namespace

base::Result<std::vector<const StepVersion*>> opening(std::span<const StepVersion* const> steps,
                                                      std::span<const std::string> codes) {
    Opener opener(steps);
    for (const std::string& code : codes)
        if (auto opened = opener.open(code); !opened)
            return tl::unexpected(opened.error());
    return opener.take();
}

}  // namespace wm::weekend
