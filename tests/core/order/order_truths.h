// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <vector>

// The truths of order of tests/data/order/truths.json, held against what is done at the stand, act after act.
// Knows nothing of access steps, of what needs what, or of how a plan is made (tests/data/order/README.md).
namespace wm::order {

using Json = nlohmann::json;

/// Acts in their order: "crack rear axle nut", "off rear wheel", "stand up".
using Acts = std::vector<std::string>;
/// Acts for which a machine has words at all; nothing: for all.
using Sayable = std::optional<std::set<std::string>>;

/// A pattern of acts with at most one '*': "crack *".
class Pattern {
  public:
    explicit Pattern(std::string text);
    /// What stands for the star, empty without one; nothing if the act is another one.
    [[nodiscard]] std::optional<std::string> starIn(const std::string& act) const;
    [[nodiscard]] bool matches(const std::string& act) const { return starIn(act).has_value(); }
    /// With `star` in its place.
    [[nodiscard]] Pattern with(const std::string& star) const;
    [[nodiscard]] const std::string& text() const { return text_; }

  private:
    std::string text_;
    std::size_t star_;
};
using Patterns = std::vector<Pattern>;

enum class When : std::uint8_t { Before, After, Anywhere };

/// One condition; which of the parts are used says its form (README.md there).
struct Truth {
    std::string name{};  ///< "4c"
    std::string says{};
    std::vector<std::string> kinds{};  ///< of machines to which it applies; none: all
    Patterns at{};                     ///< the acts that it is about
    std::vector<std::string> onlyWhile{};
    std::vector<std::string> notWhile{};
    std::vector<std::string> unlessWhile{};
    std::vector<std::string> except{};  ///< places and joints that a starred state passes over
    Patterns needs{};
    Patterns needsNone{};
    When when = When::Anywhere;
    Patterns since{};
    Patterns until{};
    Patterns given{};
    Patterns unless{};
    std::vector<Patterns> inOrder{};
    Patterns from{};
    bool all = false;  ///< all of inOrder must be there
};

enum class Verdict : std::uint8_t { NotConcerned, Held, CannotBeSaid, Broken };

struct Finding {
    Verdict verdict = Verdict::NotConcerned;
    std::string first{};   ///< the act that came too early or is missing ("never: ...")
    std::string second{};  ///< the act at which it shows
};

class Truths {
  public:
    explicit Truths(const Json& file);
    [[nodiscard]] const std::vector<Truth>& all() const { return truths_; }
    [[nodiscard]] const Truth& named(const std::string& name) const;
    /// The worst of what one truth finds in the acts, and the first of that kind.
    [[nodiscard]] Finding judge(const Truth& truth, const Acts& acts, const Sayable& sayable) const;
    /// Whether there are words for any of the acts that the truth is about.
    [[nodiscard]] static bool canConcern(const Truth& truth, const Sayable& sayable);

    struct State {
        Patterns begins{};
        Patterns ends{};
    };
    /// By the file, or by its last word: off, loose, held.
    [[nodiscard]] State state(const std::string& name) const;
    /// Places that a joint holds: what is away with them has no torque to come.
    [[nodiscard]] const std::vector<std::string>& heldBy(const std::string& joint) const;

  private:
    std::map<std::string, State> states_;
    std::map<std::string, std::vector<std::string>> holds_;
    std::vector<Truth> truths_;
};

}  // namespace wm::order
