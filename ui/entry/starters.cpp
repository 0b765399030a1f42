// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/starters.h"

#include <QDir>
#include <QFile>
#include <algorithm>
#include <utility>

#include "core/verbs/together.h"

namespace wm::ui {

namespace {

constexpr auto kStarters = ":/starters";

std::string readResource(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

const items::Machine* machineNamed(const book::Book& book, const std::string& name) {
    const auto machines = book.machines();
    const auto at = std::find_if(machines.begin(), machines.end(),
                                 [&](const items::Machine* machine) { return machine->name == name; });
    return at == machines.end() ? nullptr : *at;
}

// Does `act` with the machine of this name.
template <class Act>
store::Verb withMachine(const std::string& name, Act act) {
    return [name, act = std::move(act)](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        const auto* machine = machineNamed(context.book, name);
        if (machine == nullptr)
            return base::refuse(base::Fault::Unknown, "machine", name);
        return act(context, *machine);
    };
}

}  // namespace

std::vector<exchange::Starter> starters() {
    std::vector<exchange::Starter> all;
    for (const QString& file : QDir(QLatin1String(kStarters)).entryList({QStringLiteral("*.json")}))
        if (auto starter =
                exchange::readStarter(readResource(QLatin1String(kStarters) + QLatin1Char('/') + file)))
            all.push_back(*std::move(starter));
    return all;
}

store::Verb adoptStarter(const std::string& machine, exchange::Starter starter) {
    return withMachine(machine, [starter = std::move(starter)](const verbs::VerbContext& context,
                                                               const items::Machine& card) {
        return verbs::adoptSchedule(context, card.id, starter.name, starter.steps, starter.joints,
                                    starter.tasks);
    });
}

store::Verb beginSchedule(const std::string& machine, exchange::Starter starter) {
    std::string words = starter.name;
    std::vector<store::Verb> verbs;
    verbs.push_back(
        withMachine(machine, [name = starter.name](const verbs::VerbContext& context, items::Machine card) {
            card.starter = name;
            return verbs::saveMachine(context, std::move(card));
        }));
    verbs.push_back(adoptStarter(machine, std::move(starter)));
    return verbs::together(std::move(words), std::move(verbs));
}

}  // namespace wm::ui
