// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <memory>
#include <string>
#include <vector>

#include "core/picture/ledger.h"
#include "core/store/options.h"
#include "core/store/store.h"

/// An invented garage, and what the store's tests do over and over.
namespace wm::store::sample {

calendar::Date day(int month, int dayOfMonth);
/// The day on which these tests take place.
inline const calendar::Date kToday = *calendar::makeDate(2026, 5, 16);

/// At least one row of every type, every field filled and every child list with two children.
std::vector<picture::Row> everyRow();

/// One machine and one shelf line, for tests that only need something to write to.
std::vector<picture::Row> oneMachine();
inline constexpr std::int64_t kMachine = 1001;

/// A verb that writes exactly `rows`, with its facts numbered on from the book it is checked on.
Verb writing(std::string text, std::vector<picture::Row> rows);
/// A verb that notes a wash with a fresh id.
Verb wash(std::string note);

/// A folder that goes away with the test, and paths in it.
class Folder {
  public:
    [[nodiscard]] QString path(const QString& name) const { return dir_.filePath(name); }

  private:
    QTemporaryDir dir_;
};

/// A new file with `rows` in it; fails the test if that can't be done.
std::unique_ptr<File> fileWith(const QString& path, const std::vector<picture::Row>& rows,
                               const Options& options = {});
std::unique_ptr<File> opened(const QString& path, const Options& options = {});

/// The notes of all washes, in order of entry.
std::vector<std::string> washNotes(const File& file);

/// Runs SQL on a file behind the store's back. The seals stay as they were: see sealing.h.
void execute(const QString& path, const std::string& sql);
std::string answer(const QString& path, const std::string& sql);

}  // namespace wm::store::sample
