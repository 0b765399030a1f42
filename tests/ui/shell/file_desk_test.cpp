// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/file_desk.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QFile>
#include <QSettings>

#include "core/exchange/json.h"
#include "tests/ui/fake_prompts.h"
#include "tests/ui/garage.h"

namespace wm::ui {
namespace {

class FileDeskTest : public testing::Test {
  protected:
    // The same file with another text in one of its triggers.
    QString changedFile() { return changedFile("a fact is added or struck", "A fact is added or struck"); }
    // The same file with one text for another of the same length.
    QString changedFile(const QByteArray& text, const QByteArray& other) {
        QFile from(garage_.path());
        EXPECT_TRUE(from.open(QIODevice::ReadOnly));
        QByteArray bytes = from.readAll();
        EXPECT_TRUE(bytes.contains(text));
        bytes.replace(text, other);
        QFile to(garage_.in(QStringLiteral("changed.witnessmark")));
        EXPECT_TRUE(to.open(QIODevice::WriteOnly));
        to.write(bytes);
        return to.fileName();
    }

    Garage garage_{Garage::Fill::OneMachine};
    FakePrompts prompts_;
    QSettings settings_{garage_.in(QStringLiteral("settings.ini")), QSettings::IniFormat};
    FileDesk desk_{garage_.workbench(), prompts_, settings_, {}, nullptr};
};

TEST_F(FileDeskTest, TheFactsOfAChangedFileAreTakenOverIfThatIsAgreedTo) {
    const QString changed = changedFile();
    const QString clean = garage_.in(QStringLiteral("clean.witnessmark"));
    const auto rows = garage_.book().ledger().rows();
    desk_.openPath(changed);
    ASSERT_EQ(prompts_.asked.size(), 1);
    EXPECT_TRUE(prompts_.asked[0].contains("did not put there")) << prompts_.asked[0].toStdString();
    EXPECT_EQ(garage_.workbench().path(), garage_.path()) << "the file of before stays open";
    prompts_.agrees = true;
    prompts_.paths = {clean};
    desk_.openPath(changed);
    EXPECT_EQ(prompts_.reported, QStringList());
    EXPECT_EQ(garage_.workbench().path(), clean);
    EXPECT_EQ(garage_.book().ledger().rows(), rows);
    EXPECT_EQ(desk_.recent().value(0), clean);
}

TEST_F(FileDeskTest, RowsThatSomethingElseChangedAreTakenOverAndNamed) {
    const std::string name = garage_.book().ledger().all<items::Machine>().front().name;
    const std::string other = "Z" + name.substr(1);
    const QString changed = changedFile(QByteArray::fromStdString(name), QByteArray::fromStdString(other));
    desk_.openPath(changed);
    ASSERT_EQ(prompts_.asked.size(), 1);
    EXPECT_TRUE(prompts_.asked[0].contains("is not as it was written")) << prompts_.asked[0].toStdString();
    prompts_.agrees = true;
    prompts_.paths = {garage_.in(QStringLiteral("clean.witnessmark"))};
    desk_.openPath(changed);
    ASSERT_EQ(prompts_.reported.size(), 1);
    EXPECT_TRUE(prompts_.reported[0].contains("look at each")) << prompts_.reported[0].toStdString();
    EXPECT_EQ(garage_.book().ledger().all<items::Machine>().front().name, other);
}

TEST_F(FileDeskTest, OfAFileThatIsRefusedNoEmptyOneIsLeft) {
    const QString text = garage_.in(QStringLiteral("none.json"));
    QFile file(text);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(QByteArray::fromStdString(exchange::toJson(picture::Ledger())));
    file.close();
    const QString made = garage_.in(QStringLiteral("made.witnessmark"));
    prompts_.paths = {text, made};
    desk_.importText();
    ASSERT_EQ(prompts_.reported.size(), 1) << prompts_.reported.join('\n').toStdString();
    EXPECT_TRUE(prompts_.reported[0].startsWith("Nothing was taken over, and no file was made."));
    EXPECT_FALSE(QFile::exists(made));
    EXPECT_EQ(garage_.workbench().path(), garage_.path()) << "the file of before stays open";
}

TEST_F(FileDeskTest, ReadingsThatNoVerbWouldTakeAreNamedWhenTheyComeIn) {
    auto rows = garage_.book().ledger().rows();
    for (picture::Row& row : rows)
        if (auto* reading = std::get_if<usage::HourReading>(&row)) {
            usage::HourReading jump = *reading;
            jump.id = ReadingId{77};
            jump.entered = 1'000;
            jump.date = reading->date.plusDays(5);
            jump.shown += units::Hours{698'000};
            rows.emplace_back(jump);
            break;
        }
    QFile file(garage_.in(QStringLiteral("odd.json")));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(QByteArray::fromStdString(exchange::toJson(picture::Ledger(rows))));
    file.close();
    prompts_.paths = {file.fileName(), garage_.in(QStringLiteral("odd.witnessmark"))};
    desk_.importText();
    ASSERT_EQ(prompts_.reported.size(), 1) << prompts_.reported.join('\n').toStdString();
    EXPECT_TRUE(prompts_.reported[0].contains("look at each")) << prompts_.reported[0].toStdString();
    EXPECT_EQ(garage_.book().ledger().rows().size(), rows.size()) << "they are the user's";
}

TEST_F(FileDeskTest, APipeIsNotWaitedFor) {
    const QString pipe = garage_.in(QStringLiteral("pipe"));
    ASSERT_EQ(mkfifo(pipe.toUtf8().constData(), 0600), 0);
    prompts_.paths = {pipe, pipe};
    desk_.importText();
    desk_.importNotebook();
    desk_.openPath(pipe);
    ASSERT_EQ(prompts_.reported.size(), 3);
    for (const QString& words : prompts_.reported)
        EXPECT_TRUE(words.contains("a pipe or a device")) << words.toStdString();
}

TEST_F(FileDeskTest, AnExportIsNotWrittenWhereTheJournalGoes) {
    prompts_.paths = {garage_.path() + "-journal"};
    desk_.exportText();
    ASSERT_EQ(prompts_.reported.size(), 1);
    EXPECT_TRUE(prompts_.reported[0].contains("garage.witnessmark")) << prompts_.reported[0].toStdString();
    EXPECT_EQ(QFile(garage_.path() + "-journal").size(), 0);
}

}  // namespace
}  // namespace wm::ui
