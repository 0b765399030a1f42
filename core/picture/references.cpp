// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/references.h"

#include <algorithm>

namespace wm::picture {

using base::Fault;

void detail::Ids::sort() {
    if (!std::is_sorted(ids_.begin(), ids_.end()))
        std::sort(ids_.begin(), ids_.end());
}

bool detail::Ids::has(std::int64_t id) const {
    return std::binary_search(ids_.begin(), ids_.end(), id);
}

void References::define(Checks& check, const Row& row) {
    std::visit(
        [&]<class R>(const R& r) {
            const std::int64_t id = r.id.value();
            check.that(id >= 1, Fault::NotPositive, "id", std::to_string(id));
            check.that(rows_.insert(id).second || std::is_same_v<R, Garage>, Fault::Duplicate, "id",
                       std::to_string(id));
            add(r);
        },
        row);
}

void References::close() {
    for (detail::Ids& ids : known_)
        ids.sort();
    facts_.sort();
}

}  // namespace wm::picture
