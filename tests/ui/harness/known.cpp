// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/harness/known.h"

#include <QDir>
#include <QFile>
#include <QLockFile>

#include "tests/repository.h"

namespace wm::ui {

namespace {

const QString kBetween = QStringLiteral(" | ");

QString listPath() {
    return QString::fromStdString(test::repositoryPath("tests/data/window/known.txt"));
}

QStringList linesOfList() {
    QFile file(listPath());
    if (!file.open(QIODevice::ReadOnly))
        return {};
    return QString::fromUtf8(file.readAll()).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
}

QString keyOf(const Finding& finding) {
    return QStringList{finding.check, finding.surface, finding.where}.join(kBetween);
}

}  // namespace

Known Known::read(const QStringList& lines) {
    Known known;
    for (const QString& line : lines) {
        if (line.startsWith(QLatin1Char('#')))
            continue;
        const QStringList parts = line.split(kBetween);
        if (parts.size() != 4)
            qFatal("known.txt: not four parts: %s", qPrintable(line));
        auto& in = known.known_[{parts[0], parts[1], parts[2]}];
        for (const QString& setting : parts[3].split(QLatin1Char(' '), Qt::SkipEmptyParts))
            in.insert(setting);
    }
    return known;
}

QStringList Known::lines() const {
    QStringList lines;
    for (const auto& [finding, in] : known_)
        lines << keyOf(finding) + kBetween + QStringList(in.begin(), in.end()).join(QLatin1Char(' '));
    return lines;
}

QStringList Known::against(const QString& setting, const Findings& found) const {
    QStringList words;
    for (const auto& [finding, seen] : found) {
        const auto at = known_.find(finding);
        if (at == known_.end() || !at->second.contains(setting))
            words << QStringLiteral("new at %1: %2: %3").arg(setting, keyOf(finding), seen);
    }
    for (const auto& [finding, in] : known_)
        if (in.contains(setting) && !found.contains(finding))
            words << QStringLiteral("gone at %1, remove it from the list: %2").arg(setting, keyOf(finding));
    return words;
}

void Known::follow(const QString& setting, const Findings& found, bool grow) {
    for (auto& [finding, in] : known_)
        if (!found.contains(finding))
            in.erase(setting);
    std::erase_if(known_, [](const auto& line) { return line.second.empty(); });
    if (grow)
        for (const auto& [finding, seen] : found)
            known_[finding].insert(setting);
}

QStringList againstTheList(const QString& setting, const Findings& found) {
    const QString how = qEnvironmentVariable("WITNESSMARK_WINDOW_LIST");
    if (how == QStringLiteral("shrink") || how == QStringLiteral("grow")) {
        // The settings are seen by processes of their own, perhaps at once.
        QLockFile lock(QDir::temp().filePath(QStringLiteral("witnessmark-window-list.lock")));
        lock.lock();
        QStringList lines = linesOfList();
        Known known = Known::read(lines);
        known.follow(setting, found, how == QStringLiteral("grow"));
        lines.erase(std::remove_if(lines.begin(), lines.end(),
                                   [](const QString& line) { return !line.startsWith(QLatin1Char('#')); }),
                    lines.end());
        QFile file(listPath());
        if (file.open(QIODevice::WriteOnly))
            file.write((lines + known.lines()).join(QLatin1Char('\n')).toUtf8() + '\n');
    }
    return Known::read(linesOfList()).against(setting, found);
}

}  // namespace wm::ui
