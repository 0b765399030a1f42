// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/baseline_asking.h"

#include <algorithm>
#include <utility>

#include "core/book/unrecorded.h"

namespace wm::ui {

namespace {

constexpr int kShown = 10;  // open questions; the rest is folded

}  // namespace

void BaselineAsking::refresh(const book::Book& book, std::optional<MachineId> machine) {
    if (machine != machine_)
        unfolded_ = false;
    machine_ = machine;
    tasks_.clear();
    if (!machine_)
        return;
    for (const book::DueLine* due : book::narrowableOf(book, *machine_))
        tasks_.push_back(due->task->task);
    for (const book::DueLine* due : book::unknownOf(book, *machine_))
        tasks_.push_back(due->task->task);
    std::erase_if(answers_[*machine_], [this](const auto& answer) {
        return std::find(tasks_.begin(), tasks_.end(), answer.first) == tasks_.end();
    });
}

const BaselineAnswers& BaselineAsking::answers() const {
    static const BaselineAnswers kNone;
    const auto at = machine_ ? answers_.find(*machine_) : answers_.end();
    return at == answers_.end() ? kNone : at->second;
}

const BaselineAnswer* BaselineAsking::answerTo(TaskId task) const {
    const auto& all = answers();
    const auto at = all.find(task);
    return at == all.end() ? nullptr : &at->second;
}

BaselineAsking::Shown BaselineAsking::shown(const book::Book& book) const {
    Shown shown;
    int open = 0;
    for (const TaskId task : tasks_) {
        const bool answered = answerTo(task) != nullptr;
        if (book.dueLine(task) == nullptr)
            continue;
        if (!answered && !unfolded_ && open >= kShown) {
            ++shown.folded;
            continue;
        }
        open += answered ? 0 : 1;
        shown.tasks.push_back(task);
    }
    return shown;
}

std::int64_t BaselineAsking::nextOpen(const std::vector<std::int64_t>& shown, TaskId after) const {
    const auto here = std::find(shown.begin(), shown.end(), after.value());
    std::vector<std::int64_t> round(here == shown.end() ? shown.begin() : here + 1, shown.end());
    round.insert(round.end(), shown.begin(), here);
    const auto open = std::find_if(round.begin(), round.end(),
                                   [this](std::int64_t id) { return answerTo(TaskId{id}) == nullptr; });
    return open == round.end() ? after.value() : *open;
}

bool BaselineAsking::begin(Said said, const std::vector<TaskId>& marked) {
    askedOf_ = marked;
    asked_ = said;
    if (marked.empty())
        return false;
    const auto* before = answerTo(marked.front());
    const bool again = marked.size() == 1 && before != nullptr && before->said == said;
    return said == Said::Serviced || (again && (said == Said::New || said == Said::NeverDone));
}

void BaselineAsking::goBackTo(TaskId task) {
    const auto* answer = answerTo(task);
    if (answer == nullptr)
        return;
    asked_ = answer->said;
    askedOf_ = {task};
}

QString BaselineAsking::typedBefore() const {
    const auto* answer = askedOf_.size() == 1 ? answerTo(askedOf_.front()) : nullptr;
    return answer == nullptr ? QString() : answer->when;
}

BaselineAsking::Fault BaselineAsking::faultIn(const book::Book& book, const QString& typed) const {
    using Kind = Fault::Kind;
    const auto when = parseWhen(typed, book.today());
    if (!when)
        return {Kind::Refused, when.error()};
    if (when->date && *when->date > book.today())
        return {Kind::Refused, {base::Fault::InFuture, "date", when->date->iso(), {}}};
    if (asked_ != Said::Serviced)
        return {when->meter || when->isRemembered() ? Kind::HoursNotMeant : Kind::None, {}};
    if (!when->date && !when->meter && !when->isRemembered())
        return {Kind::NothingTyped, {}};
    const auto* due = askedOf_.size() == 1 ? book.dueLine(askedOf_.front()) : nullptr;
    return {due != nullptr && !canSay(*due->task, asked_, *when) ? Kind::NeedsDay : Kind::None, {}};
}

BaselineAsking::Leaving BaselineAsking::leaving(const book::Book& book, const QString& typed) const {
    if (askedOf_.empty() || !machine_)
        return Leaving::Nothing;
    const auto* answer = askedOf_.size() == 1 ? answerTo(askedOf_.front()) : nullptr;
    const bool stands = answer != nullptr && *answer == BaselineAnswer{asked_, typed};
    if (stands || (asked_ == Said::Serviced && typed.isEmpty()))
        return Leaving::Drop;
    return faultIn(book, typed).kind == Fault::Kind::None ? Leaving::Take : Leaving::Refuse;
}

BaselineAsking::Taken BaselineAsking::take(const book::Book& book, const QString& typed) {
    const auto tasks = std::exchange(askedOf_, {});
    if (tasks.empty() || !machine_)
        return {};
    auto& answers = answers_[*machine_];
    const When when = parseWhen(typed, book.today()).value_or(When{});
    Taken taken{asked_, tasks.front(), tasks.back(), tasks.size() == 1, 0};
    for (const TaskId task : tasks) {
        const auto* due = book.dueLine(task);
        if (due == nullptr || (!taken.alone && asked_ != Said::Unknown && answers.contains(task)))
            continue;
        if (canSay(*due->task, asked_, when))
            answers[task] = {asked_, typed};
        else
            ++taken.left;
    }
    return taken;
}

std::size_t BaselineAsking::unsaved(const QString& typed) const {
    std::size_t all = 0;
    for (const auto& [machine, answers] : answers_)
        all += static_cast<std::size_t>(std::count_if(answers.begin(), answers.end(), [](const auto& each) {
            return each.second.said != Said::Unknown;
        }));
    if (machine_ && !typed.trimmed().isEmpty())
        all += static_cast<std::size_t>(std::count_if(
            askedOf_.begin(), askedOf_.end(), [this](TaskId task) { return answerTo(task) == nullptr; }));
    return all;
}

void BaselineAsking::clearWritten() {
    if (machine_)
        std::erase_if(answers_[*machine_],
                      [](const auto& each) { return each.second.said != Said::Unknown; });
    askedOf_.clear();
}

void BaselineAsking::clear() {
    if (machine_)
        answers_[*machine_].clear();
    askedOf_.clear();
}

}  // namespace wm::ui
