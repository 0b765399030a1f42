// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <optional>

namespace wm::ui {

/// Questions that stop the hands: asked through here alone, so that a test can answer them.
class Prompts {
  public:
    enum class FileUse : std::uint8_t { Open, Save };

    virtual ~Prompts() = default;
    /// True if the mechanic agrees; `yes` is the word on the button ("Close without saving").
    virtual bool confirm(const QString& question, const QString& yes) = 0;
    /// A path, or nothing if he thought better of it. `filter` as Qt has it: "Witnessmark (*.wmk)".
    /// `suggested` is a name to save under, or empty.
    virtual std::optional<QString> chooseFile(FileUse use, const QString& title, const QString& filter,
                                              const QString& suggested) = 0;
    std::optional<QString> chooseFile(FileUse use, const QString& title, const QString& filter) {
        return chooseFile(use, title, filter, {});
    }
    /// Where a paper goes, with its ending; `suggested` without it, in words.
    std::optional<QString> choosePdf(const QString& title, const QString& suggested);
    /// Something that has to be read: `words` in a sentence, `detail` below it, may be empty.
    virtual void report(const QString& words, const QString& detail) = 0;
};

}  // namespace wm::ui
