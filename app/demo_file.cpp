// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo_file.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QStandardPaths>
#include <utility>

#include "app/resources.h"
#include "core/exchange/demo.h"

namespace wm::app {

Answer<picture::Ledger> demoLedger() {
    exchange::DemoText text;
    for (const Resource& file : resources("/demo", "*.csv"))
        text.files.emplace(file.name, file.text);
    for (const Resource& file : resources("/starters", "*.json"))
        text.starters.push_back(file.text);
    auto ledger = exchange::buildDemo(text);
    if (!ledger)
        return fail(ledger.error());
    return std::move(*ledger);
}

Answer<Garage> createDemo(const QString& path) {
    const auto demo = demoLedger();
    if (!demo)
        return tl::unexpected(demo.error());
    Answer<picture::Change> adopted;
    {
        auto garage = Garage::create(path, demo->garage().pinnedToday.value_or(calendar::Date{}));
        if (!garage)
            return garage;
        adopted = garage->apply(
            [&demo](const verbs::VerbContext& context) { return verbs::adoptAll(context, demo->rows()); });
        if (adopted)
            return garage;
    }
    store::File::discard(path);
    return tl::unexpected(adopted.error());
}

std::optional<QString> demoFile() {
    const QDir folder(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation));
    const QString path = folder.filePath("demo.witnessmark");
    if (QFileInfo::exists(path))
        return path;
    if (!QDir().mkpath(folder.path()) || !createDemo(path))
        return std::nullopt;
    return path;
}

}  // namespace wm::app
