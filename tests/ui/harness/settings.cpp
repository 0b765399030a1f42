// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/harness/settings.h"

#include <QCoreApplication>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>

namespace wm::ui {

namespace {

const char* const kIn = "WITNESSMARK_TEST_SETTING";
constexpr int kMostMinutes = 10;

}  // namespace

const std::vector<Setting>& settings() {
    static const std::vector<Setting> all{{QStringLiteral("100"), {1280, 720}, 1.0, false, 0},
                                          {QStringLiteral("125"), {1366, 768}, 1.25, false, 0},
                                          {QStringLiteral("150"), {1600, 900}, 1.5, true, 0},
                                          {QStringLiteral("200"), {2560, 1440}, 2.0, true, 0},
                                          {QStringLiteral("14pt"), {1280, 720}, 1.0, false, 14}};
    return all;
}

QProcessEnvironment environmentOf(const Setting& setting, const QString& folder) {
    const QJsonObject screen{{QStringLiteral("name"), setting.name},
                             {QStringLiteral("x"), 0},
                             {QStringLiteral("y"), 0},
                             {QStringLiteral("width"), setting.pixels.width()},
                             {QStringLiteral("height"), setting.pixels.height()},
                             {QStringLiteral("logicalDpi"), 96},
                             {QStringLiteral("logicalBaseDpi"), 96},
                             {QStringLiteral("dpr"), 1}};
    const QJsonObject all{{QStringLiteral("synchronousWindowSystemEvents"), false},
                          {QStringLiteral("windowFrameMargins"), false},
                          {QStringLiteral("screens"), QJsonArray{screen}}};
    QFile file(folder + QStringLiteral("/screen.json"));
    if (file.open(QIODevice::WriteOnly))
        file.write(QJsonDocument(all).toJson());
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* name : {"GTEST_SHARD_INDEX", "GTEST_TOTAL_SHARDS", "GTEST_SHARD_STATUS_FILE",
                             "GTEST_OUTPUT", "GTEST_FILTER", "TEST_PREMATURE_EXIT_FILE"})
        environment.remove(QLatin1String(name));
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"),
                       QStringLiteral("offscreen:configfile=") + file.fileName());
    environment.insert(QStringLiteral("QT_SCALE_FACTOR"), QString::number(setting.scale));
    environment.insert(QLatin1String(kIn), setting.name);
    return environment;
}

QString runIn(const Setting& setting, const QString& test) {
    const QTemporaryDir folder;
    QProcess process;
    process.setProcessEnvironment(environmentOf(setting, folder.path()));
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.start(QCoreApplication::applicationFilePath(), {QStringLiteral("--gtest_filter=") + test});
    const bool ended = process.waitForFinished(kMostMinutes * 60 * 1000);
    const QString printed = QString::fromUtf8(process.readAll());
    if (!ended)
        return QStringLiteral("did not end\n") + printed;
    const bool ran = printed.contains(QStringLiteral("[  PASSED  ] 1 test"));
    if (process.exitStatus() == QProcess::NormalExit && process.exitCode() == 0 && ran)
        return {};
    return printed.isEmpty() ? QStringLiteral("ended without a word") : printed;
}

bool isIn(const Setting& setting) {
    return qEnvironmentVariable(kIn) == setting.name;
}

}  // namespace wm::ui
