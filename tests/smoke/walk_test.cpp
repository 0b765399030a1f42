// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// One walk through the window on the demo garage: what the sanitizers look at, and where the pictures of the
// pages come from (the target `screens` sets WITNESSMARK_SCREENS to a folder).
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QImage>
#include <QSet>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include "app/demo_file.h"
#include "core/sheet/job_sheet.h"
#include "tests/ui/fake_prompts.h"
#include "ui/print/sheet_painter.h"
#include "ui/shell/main_window.h"
#include "ui/shell/page_table.h"
#include "ui/theme/theme.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {
namespace {

class WalkTest : public testing::Test {
  protected:
    void SetUp() override {
        const QString path = directory_.filePath(QStringLiteral("demo.witnessmark"));
        ASSERT_TRUE(app::createDemo(path));
        workbench_ = std::make_unique<Workbench>([] { return QDateTime(QDate(2026, 5, 7), QTime(19, 0)); });
        settings_ = std::make_unique<QSettings>(directory_.filePath(QStringLiteral("settings.ini")),
                                                QSettings::IniFormat);
        window_ = std::make_unique<MainWindow>(*workbench_, prompts_, *settings_);
        window_->resize(1280, 800);
        window_->show();
        window_->openPath(path);
        ASSERT_TRUE(workbench_->hasFile()) << prompts_.reported.join(' ').toStdString();
    }

    // The machine of the next evening: the first on which jobs were picked.
    [[nodiscard]] MachineId inWork() const {
        const auto book = workbench_->book();
        for (const auto* machine : book->machines())
            if (!book->pickedJobs(machine->id).empty())
                return machine->id;
        ADD_FAILURE() << "nothing is picked";
        return {};
    }

    QImage picture() {
        QApplication::processEvents();
        return window_->grab().toImage();
    }
    // A page that paints shows more than its ground and a few lines.
    static int colours(const QImage& image) {
        QSet<QRgb> found;
        for (int y = 60; y < image.height() - 70; y += 3)
            for (int x = 0; x < image.width(); x += 3)
                found.insert(image.pixel(x, y));
        return static_cast<int>(found.size());
    }
    void walk(const QString& look) {
        const QString target = qEnvironmentVariable("WITNESSMARK_SCREENS");
        const MachineId machine = inWork();
        for (const auto& page : pageTable()) {
            for (const bool one : {false, true}) {
                workbench_->choose(one ? std::optional(machine) : std::nullopt);
                window_->goTo(page.id);
                const QImage image = picture();
                EXPECT_GT(colours(image), 20) << page.name.toStdString();
                const QString name = QString(page.name).remove('&').toLower() + (one ? "-one" : "");
                if (!target.isEmpty()) {
                    EXPECT_TRUE(image.save(QStringLiteral("%1/demo-%2-%3.png").arg(target, name, look)));
                }
            }
        }
    }

    QTemporaryDir directory_;
    FakePrompts prompts_;
    std::unique_ptr<Workbench> workbench_;
    std::unique_ptr<QSettings> settings_;
    std::unique_ptr<MainWindow> window_;
};

TEST_F(WalkTest, ThroughEveryPage) {
    if (qEnvironmentVariableIsSet("WITNESSMARK_SCREENS")) {
        QDir().mkpath(qEnvironmentVariable("WITNESSMARK_SCREENS"));
        for (const auto& [choice, look] :
             {std::pair(ThemeChoice::Light, "light"), std::pair(ThemeChoice::Dark, "dark")}) {
            applyTheme(*qApp, choice);
            for (const QSize size : {QSize(1280, 800), QSize(1920, 1080)}) {
                window_->resize(size);
                walk(QStringLiteral("%1-%2").arg(look).arg(size.width()));
            }
        }
    } else {
        applyTheme(*qApp, ThemeChoice::Light);
        walk(QStringLiteral("light-1280"));
    }
}

TEST_F(WalkTest, FromThePickedJobsToTheSheetOnPaper) {
    const auto book = workbench_->book();
    const auto content = sheet::jobSheet(*book, inWork(), 1);
    ASSERT_TRUE(content);
    const auto pdf = writeSheetPdf(*content, directory_.filePath(QStringLiteral("sheet.pdf")), PaperSize::A4);
    EXPECT_TRUE(pdf.isWritten());
    EXPECT_GE(pdf.pages, 2);
}

}  // namespace
}  // namespace wm::ui
