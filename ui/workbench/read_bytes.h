// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <QString>
#include <cstdint>
#include <optional>
#include <tl/expected.hpp>

namespace wm::ui {

enum class Unread : std::uint8_t {
    NotReadable,  ///< not there, or no right
    OddName,      ///< its name is no UTF-8 text, and such a name can't be said here
    Folder,
    Endless,   ///< a pipe or a device, which need not come to an end
    TooLarge,  ///< more than any file of ours
    Broken     ///< the disk failed on the way
};

/// All of a plain file, up to the size that anything of ours can have.
tl::expected<QByteArray, Unread> readBytes(const QString& path);

/// What is wrong, in a sentence that says what to do.
QString wordsFor(Unread why, const QString& path);

/// True for the content of a garage's own file, as against a text.
bool isGarage(const QByteArray& bytes);

}  // namespace wm::ui
