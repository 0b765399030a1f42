// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/find_starter.h"

#include <utility>

#include "app/resources.h"

namespace wm::app {

Answer<exchange::Starter> findStarter(const QString& name) {
    const QString wanted = name.simplified().toCaseFolded();
    std::string known;
    for (const Resource& file : resources("/starters", "*.json")) {
        auto starter = exchange::readStarter(file.text);
        if (!starter)
            return fail(starter.error());
        if (fromUtf8(starter->name).toCaseFolded() == wanted ||
            fromUtf8(file.name).toCaseFolded() == wanted + ".json")
            return std::move(*starter);
        known += (known.empty() ? "" : ", ") + starter->name;
    }
    return fail(base::Error{base::Fault::Unknown, "starter", name.toStdString(), known});
}

}  // namespace wm::app
