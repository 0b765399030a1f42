// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "core/notebook/judging.h"
#include "core/words/folding.h"

namespace wm::notebook {

namespace {

constexpr std::int64_t kThousand = 1000;
constexpr std::size_t kEnoughToTell = 3;

// What the notebook usually says of one part, against which a thousand times as much shows.
class UsualAmounts {
  public:
    explicit UsualAmounts(const std::vector<Line>& lines) {
        for (const Line& line : lines)
            for (const UsedPart& part : line.facts.used)
                amounts_[words::folded(part.name)].push_back(part);
        for (auto& [name, parts] : amounts_)
            std::sort(parts.begin(), parts.end(),
                      [](const UsedPart& a, const UsedPart& b) { return a.amount < b.amount; });
    }

    /// The part as it was likely meant, if it is a thousand times off.
    [[nodiscard]] std::optional<UsedPart> likely(const UsedPart& part) const {
        const auto& parts = amounts_.at(words::folded(part.name));
        if (parts.size() < kEnoughToTell || part.unitGuessed)
            return std::nullopt;
        const UsedPart& usual = parts[parts.size() / 2];
        UsedPart meant = part;
        meant.unit = usual.unit;
        for (const std::int64_t amount : {part.amount * kThousand, part.amount / kThousand})
            if (amount > 0 && amount * 3 >= usual.amount && amount <= usual.amount * 3) {
                meant.amount = amount;
                const bool off = part.amount * 50 < usual.amount || part.amount > usual.amount * 50;
                return off ? std::optional(meant) : std::nullopt;
            }
        return std::nullopt;
    }

  private:
    std::map<std::string, std::vector<UsedPart>> amounts_{};
};

std::string amountText(const UsedPart& part) {
    switch (part.unit) {
        case upkeep::Unit::Millilitre:
            return part.name + " " + std::to_string(part.amount) + " ml";
        case upkeep::Unit::Gram:
            return part.name + " " + std::to_string(part.amount) + " g";
        case upkeep::Unit::Piece:
            break;
    }
    return part.name + " " + std::to_string(part.amount);
}

std::string usedText(const std::vector<UsedPart>& used) {
    std::string text;
    for (const UsedPart& part : used)
        text += part.name + " ";
    return text;
}

}  // namespace

void judgeJobs(Notebook& notebook, const book::Book& book) {
    const UsualAmounts usual(notebook.lines);
    std::vector<TaskList> tasks;
    for (const NamedMachine& machine : notebook.machines)
        tasks.push_back(machine.id ? book.tasks(*machine.id) : TaskList{});
    std::map<std::tuple<std::size_t, std::string, std::string>, std::vector<TaskId>> met;
    for (Line& line : notebook.lines) {
        Facts& facts = line.facts;
        if (!line.readable() || line.inFile || facts.sort != FactSort::Job)
            continue;
        for (UsedPart& part : facts.used)
            if (const auto likely = usual.likely(part)) {
                line.remark(Defect::UsedUnit, amountText(part), amountText(*likely));
                part = *likely;
            }
        const std::size_t machine = facts.machines.front();
        if (tasks[machine].empty())
            continue;
        const std::string used = usedText(facts.used);
        const auto [at, isNew] = met.try_emplace({machine, facts.job, used});
        if (isNew)
            for (const upkeep::TaskVersion* task : tasksMeant(facts.job, used, tasks[machine]))
                at->second.push_back(task->task);
        facts.tasks = at->second;
        if (facts.tasks.empty())
            line.remark(Defect::NoTask, facts.job);
    }
}

}  // namespace wm::notebook
