// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/step_rows.h"

#include <QStringList>
#include <algorithm>
#include <set>

#include "ui/pages/weekend/weekend_rows.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

std::vector<const weekend::StepVersion*> stepsOff(const book::Book& book, MachineId machine) {
    std::set<StepId> seen;
    std::vector<const weekend::StepVersion*> steps;
    for (const auto& version : book.ledger().all<weekend::StepVersion>()) {
        if (version.machine != machine || !seen.insert(version.step).second)
            continue;
        const auto* now = book::stepOf(book, version.step);
        if (now != nullptr && !now->active)
            steps.push_back(now);
    }
    std::sort(steps.begin(), steps.end(), [](const auto* a, const auto* b) { return a->name < b->name; });
    return steps;
}

TableRow stepRow(const weekend::StepVersion& step, const QString& machine, bool isBegun) {
    QString name = text(step.name);
    if (isBegun)
        name = tr("%1 (not saved)").arg(name);
    else if (!step.active)
        name = tr("%1 (switched off)").arg(name);
    const auto minutes = (step.off + step.on).count();
    return {.id = step.step.value(),
            .cells = {{.text = name, .pencil = !step.active},
                      {.text = machine, .pencil = true},
                      {.text = QString::number(minutes),
                       .sort = static_cast<int>(minutes),
                       .figure = true,
                       .pencil = !step.active}},
            .toolTip = text(step.refit)};
}

TableRow newRow(std::int64_t id, const Draft& draft, const QString& machine) {
    const QString name = draft.fields.at("name").trimmed();
    return {.id = id,
            .cells = {
                {.text = name.isEmpty() ? tr("new access step (not saved)") : tr("%1 (not saved)").arg(name),
                 .pencil = true},
                {.text = machine, .pencil = true},
                {.text = QString(), .sort = 0, .figure = true}}};
}

QString comparedWords(const book::StepEffect::Compared& compared) {
    if (!compared.after)
        return QString();
    const auto after = compared.after->work.count();
    QString words = compared.changesMinutes() ? tr("%1 → %2 min").arg(compared.now->work.count()).arg(after)
                    : compared.now            ? tr("%1 min, as before").arg(after)
                                              : tr("%1 min").arg(after);
    return compared.changesOrder() ? tr("%1, in another order").arg(words) : words;
}

bool isIn(const weekend::Plan& plan, const weekend::Act& act, std::size_t at) {
    if (at >= plan.acts.size())
        return false;
    const weekend::Act& other = plan.acts[at];
    return other.kind == act.kind && other.step == act.step && other.joint == act.joint &&
           other.doing == act.doing && other.text == act.text;
}

}  // namespace

std::vector<QString> stepHeaders() {
    return {tr("Access step"), tr("Machine"), tr("Min")};
}

std::vector<TableRow> stepRows(const book::Book& book, std::optional<MachineId> machine,
                               const StepDrafts& drafts) {
    std::vector<TableRow> rows;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        const QString name = text(card->name);
        for (const auto& [id, begun] : drafts.all())
            if (id < 0 && begun.base.machine == card->id)
                rows.push_back(newRow(id, begun.draft, name));
        for (const auto* step : book.steps(card->id))
            rows.push_back(stepRow(*step, name, drafts.find(step->step.value()) != nullptr));
        for (const auto* step : stepsOff(book, card->id))
            rows.push_back(stepRow(*step, name, drafts.find(step->step.value()) != nullptr));
    }
    return rows;
}

std::vector<TableRow> stepOrderRows(const book::Book& book, MachineId machine, const weekend::Plan& plan,
                                    const weekend::Plan* before) {
    // Lines from the top and from the bottom that are as they were: what lies between is what changed.
    std::size_t top = 0;
    std::size_t bottom = 0;
    const std::size_t count = plan.acts.size();
    if (before != nullptr) {
        while (top < count && isIn(*before, plan.acts[top], top))
            ++top;
        const std::size_t old = before->acts.size();
        while (bottom + top < std::min(count, old) &&
               isIn(*before, plan.acts[count - 1 - bottom], old - 1 - bottom))
            ++bottom;
    }
    std::vector<TableRow> rows;
    for (std::size_t at = 0; at < count; ++at) {
        const weekend::Act& act = plan.acts[at];
        const bool isJob = act.kind == weekend::ActKind::Job;
        const bool isAsBefore = before != nullptr && (at < top || at >= count - bottom);
        const bool isPencil = isJob || act.kind == weekend::ActKind::SafeStop || isAsBefore;
        const QString minutes = act.minutes.count() > 0 ? QString::number(act.minutes.count()) : QString();
        rows.push_back({.id = static_cast<std::int64_t>(at) + 1,
                        .cells = {{.text = isJob ? tr("(what lies under it is done here)")
                                                 : actWords(book, machine, act),
                                   .pencil = isPencil},
                                  {.text = minutes, .figure = true, .pencil = isPencil}}});
    }
    return rows;
}

QString stepStateWords(const book::Book& book, const weekend::StepVersion& step) {
    if (!step.active)
        return tr("switched off");
    const auto names = book::neededBy(book, step.machine, step.code);
    const QString minutes = tr("%1 min off, %2 min on").arg(step.off.count()).arg(step.on.count());
    if (names.empty())
        return tr("%1 · nothing needs it").arg(minutes);
    QString by = text(names.front());
    if (names.size() > 1)
        by = tr("%1 and %2 more").arg(by).arg(names.size() - 1);
    return tr("%1 · needed by %2").arg(minutes, by);
}

QString effectWords(const book::StepEffect& effect) {
    if (!effect.alone.after)
        return effect.alone.now ? tr("It leaves all plans.") : tr("Changes no plan: it is not in use.");
    QStringList words;
    const bool changes = !effect.alone.now || effect.alone.changesMinutes() || effect.alone.changesOrder();
    const auto& picked = effect.picked;
    const bool changesPicked = picked.changesMinutes() || picked.changesOrder();
    for (const std::string& joint : effect.unopened)
        words += tr("No access step and no task opens %1, so no plan keeps to its order: put it among the "
                    "joints first.")
                     .arg(text(joint));
    if (!changes && !changesPicked)
        words += tr("Changes no plan.");
    else
        words += tr("To reach what lies under it and close again: %1.").arg(comparedWords(effect.alone));
    if (changesPicked)
        words += tr("What is in for the next work window: %1.").arg(comparedWords(picked));
    return words.join(QLatin1Char(' '));
}

QStringList namesOf(const StepDrafts& drafts) {
    return drafts.names([](const QString& name) {
        return tr("access step “%1”").arg(name.isEmpty() ? tr("new access step") : name);
    });
}

}  // namespace wm::ui
