// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/place.h"

#include <utility>

namespace wm::base {

Place Place::within(std::string_view list, std::size_t at) const {
    Place place = *this;
    place.lines.insert(place.lines.begin(), Line{std::string(list), at});
    return place;
}

Place Place::within(const Place& outer) const {
    Place place = outer;
    place.lines.insert(place.lines.end(), lines.begin(), lines.end());
    place.field += (outer.field.empty() || field.empty() ? "" : ".") + field;
    return place;
}

Place Place::line(std::size_t at) const {
    Place place = *this;
    place.lines.push_back({std::move(place.field), at});
    place.field.clear();
    return place;
}

Place Place::inner() const {
    Place place = *this;
    if (!place.lines.empty())
        place.lines.erase(place.lines.begin());
    return place;
}

std::string Place::text() const {
    std::string text;
    for (const Line& line : lines)
        text += (text.empty() ? "" : ".") + line.list + '[' + std::to_string(line.at) + ']';
    return text + (text.empty() || field.empty() ? "" : ".") + field;
}

}  // namespace wm::base
