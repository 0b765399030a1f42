// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/ids.h"
#include "core/upkeep/task.h"

namespace wm::notebook {

/// A machine that the notebook speaks of; without an id the file does not know it yet.
struct NamedMachine {
    std::string name{};
    std::optional<MachineId> id{};
};

/// How sure it is which machine a text means.
enum class NameFit : std::uint8_t {
    Same,       ///< as it is written elsewhere
    Otherwise,  ///< the same in another case or spelling, or a part of it
    Near,       ///< one or two letters off
    Two,        ///< two machines in one cell
    New,        ///< a name that the notebook uses often and the file does not know
    Rare,       ///< the same, but it stands there once or twice
    Unknown     ///< nothing
};

struct NameReading {
    NameFit fit = NameFit::Unknown;
    std::vector<std::size_t> machines{};  ///< into Names::machines
};

/// What the mechanic says that a cell of the machine column means: a machine of the file, or nothing for a
/// new one of that name. A machine that the file does not know says nothing.
using MeantNames = std::map<std::string, std::optional<MachineId>>;

/// One way in which machines are written in a notebook.
struct NameSpelling {
    std::string text{};
    std::size_t lines = 0;
    NameReading reading{};
};

/// The machines of one notebook: those of the file, and new ones under the names it uses.
class Names {
  public:
    /// `texts` is the machine column as it stands, one cell a line.
    Names(std::vector<NamedMachine> known, const std::vector<std::string_view>& texts,
          const MeantNames& meant = {});

    [[nodiscard]] const std::vector<NamedMachine>& machines() const { return machines_; }
    [[nodiscard]] std::vector<NameSpelling> spellings() const;  ///< the commonest first
    [[nodiscard]] NameReading reading(std::string_view text) const;

  private:
    struct Spelling;
    struct Guess {
        NameFit fit = NameFit::Unknown;
        std::size_t machine = 0;
    };
    /// In how many lines a machine stands, and in how many in its commonest spelling.
    struct LinesOf {
        std::size_t all = 0;
        std::size_t most = 0;
    };
    const LinesOf& count(std::size_t machine, const Spelling& spelling);
    [[nodiscard]] Guess nearest(const std::string& plain) const;
    [[nodiscard]] std::vector<std::size_t> severalIn(std::string_view text) const;
    [[nodiscard]] NameReading readingOf(const Spelling& spelling, const MeantNames& meant);
    [[nodiscard]] std::optional<std::size_t> meantPlace(const std::string& text, const MeantNames& meant);
    [[nodiscard]] Guess guessOf(const Spelling& spelling);

    std::vector<NamedMachine> machines_{};
    std::vector<NameSpelling> read_{};  ///< sorted by the text as written
    std::map<std::size_t, LinesOf> linesOf_{};
};

using TaskList = std::vector<const upkeep::TaskVersion*>;

/// The tasks that a job in the mechanic's own words was; several if the words leave front and rear open, or
/// name two ("oil and filter"). `used` helps to tell which oil. Empty: none alone fits.
TaskList tasksMeant(std::string_view job, std::string_view used, const TaskList& tasks);

}  // namespace wm::notebook
