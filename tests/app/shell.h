// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QString>
#include <QStringList>
#include <QTemporaryDir>
#include <nlohmann/json.hpp>
#include <string>

#include "app/console.h"

namespace wm::test {

/// What a verb answered to the shell.
struct Said {
    int exit = -1;
    QString out;
    QString err;
    [[nodiscard]] nlohmann::json json() const;
};

/// Says a headless verb in this process, on Thursday 7 May 2026.
Said say(const QStringList& arguments);
/// Runs the program itself with these arguments, on today's date; `outTo`: standard output goes to this path.
Said runProgram(const QStringList& arguments, const QString& outTo = {});

/// The exit code is `exit`, nothing is on standard output, and standard error has one line from us that holds
/// `words` and ends as a sentence.
void expectRefusal(const Said& said, app::Exit exit, const QString& words);

/// `answer` keeps to the definition of this name in resources/headless.schema.json.
void expectKeepsTo(const char* definition, const nlohmann::json& answer);

/// A folder of its own with a file in it: one machine, "Heron 250", with the four-stroke starter, known since
/// 1 March 2026.
class GarageTest : public testing::Test {
  protected:
    void SetUp() override;
    [[nodiscard]] QString path(const QString& name) const { return folder_.filePath(name); }
    [[nodiscard]] QByteArray bytes(const QString& name) const;
    void write(const QString& name, const QByteArray& content) const;
    /// The whole file as JSON text.
    [[nodiscard]] QString exported() const;
    /// The line of a task in `due --json`.
    [[nodiscard]] nlohmann::json dueLine(const std::string& code) const;

    QTemporaryDir folder_;
    QString file_;
};

}  // namespace wm::test
