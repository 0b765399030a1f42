// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The pictures of README.md. The target `pictures` writes them anew into resources/pictures/; `screens`
// writes them beside the other screens; in an ordinary run nothing happens.
#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QHash>
#include <QImage>
#include <QLineEdit>
#include <algorithm>

#include "tests/ui/window.h"
#include "ui/shell/page_table.h"
#include "ui/theme/theme.h"

namespace wm::ui {
namespace {

constexpr qint64 kLargest = 80'000;  // bytes: three of them in a clone that stays quick

// The 256 commonest colours, each other one as the nearest of them: a page has few, and a third of the bytes.
QImage withFewColours(const QImage& image) {
    QHash<QRgb, int> counts;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            ++counts[image.pixel(x, y)];
    QList<QRgb> colours = counts.keys();
    std::sort(colours.begin(), colours.end(),
              [&](QRgb a, QRgb b) { return counts[a] != counts[b] ? counts[a] > counts[b] : a < b; });
    colours.resize(std::min<qsizetype>(colours.size(), 64));
    return image.convertToFormat(QImage::Format_Indexed8, colours, Qt::ThresholdDither);
}

class LongPictures : public WindowTest {
  protected:
    void SetUp() override {
        target_ = qEnvironmentVariable("WITNESSMARK_PICTURES");
        if (target_.isEmpty())
            GTEST_SKIP() << "set WITNESSMARK_PICTURES to a folder";
        QDir().mkpath(target_);
        applyTheme(*qApp, ThemeChoice::Light);
        openOn(Garage::Fill::Demo);
        window_->resize(1280, 800);
        QApplication::processEvents();
    }

    void write(const QString& name) {
        QApplication::processEvents();
        const QString file = QStringLiteral("%1/%2.png").arg(target_, name);
        const int asSmallAsCanBe = 0;
        ASSERT_TRUE(withFewColours(window_->grab().toImage()).save(file, "PNG", asSmallAsCanBe));
        EXPECT_LT(QFileInfo(file).size(), kLargest) << file.toStdString();
    }

    QString target_;
};

TEST_F(LongPictures, OfReadme) {
    window_->goTo(PageId::Bench);
    write(QStringLiteral("bench"));
    window_->goTo(PageId::Weekend);
    write(QStringLiteral("weekend"));
    garage_->workbench().choose(garage_->machine("Heron 250"));
    window_->goTo(PageId::Torque);
    type(QStringLiteral("rear axl"));
    write(QStringLiteral("torque"));
}

}  // namespace
}  // namespace wm::ui
