// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/fastening/figure.h"
#include "core/words/edit_distance.h"

namespace wm::fastening {

/// What was found, best first. `unit` is the one that was named in the query ("rear axle ft lb"), as a symbol
/// of units::convert, or empty.
struct Found {
    struct Hit {
        std::size_t figure = 0;  ///< place in figures()
        double score = 0;        ///< 1 = every word is the figure's own
    };
    std::vector<Hit> hits{};
    std::string_view unit{};
};

/// One search line over all figures: by name, by the trade's other words for it, by thread, by job, in any
/// order, with typing errors and words half typed. Made once a book, asked at each key.
class Lookup {
  public:
    explicit Lookup(std::vector<Figure> figures);
    Lookup(Lookup&&) noexcept = default;
    Lookup& operator=(Lookup&&) noexcept = default;

    [[nodiscard]] const std::vector<Figure>& figures() const { return figures_; }
    /// At most `most` figures, of one machine if that is given. Any text is fine: nothing is found for
    /// nothing, and of a very long one only the beginning is read.
    [[nodiscard]] Found find(std::string_view query, std::optional<MachineId> machine,
                             std::size_t most) const;

  private:
    /// That a word leads to a figure, how surely, and which words of its name it stands for, a bit each: the
    /// name's own in the lower half, those of the job or item in the upper.
    struct Lead {
        std::uint32_t figure = 0;
        float weight = 0;
        std::uint32_t covers = 0;
    };
    struct Word {
        std::string text{};
        words::Letters letters{};  ///< of `text`, which no longer moves
        std::size_t least = 0;     ///< letters to be typed before two words run together are meant
        std::vector<Lead> leads{};
    };
    struct Tally;
    class Index;

    void follow(std::string_view typed, double least, std::size_t slot, Tally& tally) const;
    [[nodiscard]] Tally tally(const std::vector<std::string>& words) const;
    [[nodiscard]] double scoreOf(std::size_t figure, const Tally& tally) const;

    std::vector<Figure> figures_;
    std::vector<std::uint32_t> names_;  ///< the bits of a figure's whole name
    std::vector<Word> words_;
};

}  // namespace wm::fastening
