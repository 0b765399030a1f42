// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>
#include <cstdint>
#include <optional>

namespace wm::ui {

struct WriteResult {
    enum class Outcome : std::uint8_t { Written, NotAllowed, NotWritten };
    Outcome outcome = Outcome::Written;
    QString detail{};  ///< in the system's words
    [[nodiscard]] bool isWritten() const { return outcome == Outcome::Written; }
};

/// Why nothing is ever written there, whatever the disk says: a garage is in that file, or the name belongs
/// to one. Nothing if it may be written.
std::optional<QString> whyItStays(const QString& path);

/// Writes all of it. A pipe or device is written into; a plain file is replaced once the whole of the new one
/// is on the disk, and stays as it was if that fails. A garage is never replaced, nor is its journal or
/// anything in its folder of backups. A new file gets the rights of `like`, if that is named: whoever may not
/// read a garage may not read its text.
WriteResult writeBytes(const QString& path, const QByteArray& bytes, const QString& like = {});

}  // namespace wm::ui
