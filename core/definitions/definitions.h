// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "core/book/book_checks.h"
#include "core/picture/entry.h"

namespace wm::definitions {

/// The id that a definition keeps through all its versions.
constexpr TaskId& stableId(upkeep::TaskVersion& version) {
    return version.task;
}
constexpr StepId& stableId(weekend::StepVersion& version) {
    return version.step;
}
constexpr JointId& stableId(fastening::JointVersion& version) {
    return version.joint;
}

/// Whether two versions say the same, whenever and by whomever.
template <class V>
bool sameWords(V a, const V& b) {
    a.id = b.id;
    a.entered = b.entered;
    a.validFrom = b.validFrom;
    a.fromStarter = b.fromStarter;
    return a == b;
}

/// The tasks, access steps and joints of one machine by their last versions, while new versions are put among
/// them: codes are unique, and what a version names must be there.
class Definitions {
  public:
    enum class Words : std::uint8_t { Own, OfStarter };

    Definitions(book::BookChecks& check, const book::Book& book, picture::Entry& entry, MachineId machine);

    /// Fills machine, stable id, code and first day (`from` if the version names none) and checks the version
    /// by itself; faults are named under `prefix`.
    template <class V>
    void add(V version, calendar::Date from, base::Place prefix, Words words = Words::Own);
    /// Checks what the new versions name and writes them: steps, joints, tasks.
    void write();

    /// What undo says of a single new version: `added the task "fork oil" on Heron 250`.
    [[nodiscard]] base::Phrase taskText() const;
    [[nodiscard]] base::Phrase stepText() const;
    [[nodiscard]] base::Phrase jointText() const;

  private:
    template <class V>
    struct New {
        V version;
        base::Place prefix;
    };
    struct Gone {
        upkeep::Doing doing;
        base::Place prefix;
    };
    template <class V>
    struct Kind {
        std::vector<V> last;
        std::vector<New<V>> added;
        [[nodiscard]] const V* find(std::string_view code) const {
            const auto at =
                std::find_if(last.begin(), last.end(), [code](const V& v) { return v.code == code; });
            return at == last.end() ? nullptr : &*at;
        }
        [[nodiscard]] bool has(std::string_view code) const { return find(code) != nullptr; }
        [[nodiscard]] bool hasActive(std::string_view code) const {
            const V* found = find(code);
            return found != nullptr && found->active;
        }
    };
    template <class V>
    Kind<V>& kindOf();
    template <class V>
    void gather();
    template <class V>
    const V* settleId(V& version);
    template <class V>
    void writeKind();
    void checkNames(upkeep::TaskVersion& version);
    void checkNames(weekend::StepVersion& version);
    void checkNames(fastening::JointVersion&) {}
    void checkKit(const upkeep::TaskVersion& version);
    void checkSteps(std::string_view field, const std::vector<base::Code>& codes);
    void checkJoints(const std::vector<base::Code>& codes);
    void checkFollowUps(const std::vector<upkeep::FollowUpRule>& rules);

    // What steps and tasks say of the order of work: definitions_order.cpp.
    void checkTyped(const base::Place& field, const upkeep::ActRef& ref);
    template <class V>
    void checkTyped(const V& version);
    void checkStep(const base::Place& field, const std::string& code);
    void checkEdges(const std::vector<upkeep::Edge>& edges);
    void checkNeeds();
    void checkOrder();
    void checkUnused(const weekend::StepVersion& step);
    void checkGone();
    [[nodiscard]] bool knows(const upkeep::ActRef& ref) const;
    [[nodiscard]] std::string nearest(const upkeep::ActRef& ref) const;
    [[nodiscard]] std::string nameOf(const upkeep::ActRef& ref) const;
    [[nodiscard]] std::vector<const upkeep::Doing*> doings() const;
    [[nodiscard]] std::vector<const weekend::StepVersion*> steps() const;
    [[nodiscard]] base::Place placeOf(const upkeep::ActRef& earlier, const upkeep::ActRef& later) const;

    book::BookChecks& check_;
    const book::Book& book_;
    picture::Entry& entry_;
    const items::Machine* machine_;
    Kind<upkeep::TaskVersion> tasks_;
    Kind<weekend::StepVersion> steps_;
    Kind<fastening::JointVersion> joints_;
    std::vector<Gone> gone_;  ///< doings that a version before had
    enum class Became : std::uint8_t { Added, Changed, Retired };
    Became became_ = Became::Changed;
    std::string name_;
};

}  // namespace wm::definitions
