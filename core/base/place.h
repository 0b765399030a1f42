// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <iosfwd>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wm::base {

/// Which input an error is about: a field, perhaps of a line in a list ("limits[2].every"), which may itself
/// stand in a line of another. A form asks it for the list, the line and the field; nobody takes text apart.
struct Place {
    struct Line {
        std::string list;
        std::size_t at = 0;  ///< from 0
    };
    std::vector<Line> lines{};  ///< on the way to the field, the outermost first
    std::string field{};        ///< empty: the line itself

    Place() = default;
    Place(std::string name) : field(std::move(name)) {}  // NOLINT: a field alone is a place
    Place(std::string_view name) : field(name) {}        // NOLINT
    Place(const char* name) : field(name) {}             // NOLINT

    /// The same, in a line of a list around it.
    [[nodiscard]] Place within(std::string_view list, std::size_t at) const;
    /// The same, in a place around it.
    [[nodiscard]] Place within(const Place& outer) const;
    /// Of a field that is a list: one of its lines.
    [[nodiscard]] Place line(std::size_t at) const;
    /// Without the outermost line.
    [[nodiscard]] Place inner() const;
    /// "tasks[3].limits[0].every"
    [[nodiscard]] std::string text() const;

    friend bool operator==(const Place& a, const Place& b) { return a.text() == b.text(); }
    template <class Char, class Traits>
    friend std::basic_ostream<Char, Traits>& operator<<(std::basic_ostream<Char, Traits>& out,
                                                        const Place& place) {
        return out << place.text();
    }
};

}  // namespace wm::base
