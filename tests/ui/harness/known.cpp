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
        if (parts.size() != 4 && parts.size() != 5)
            qFatal("known.txt: not four parts and a reason: %s", qPrintable(line));
        auto& [in, reason] = known.known_[{parts[0], parts[1], parts[2]}];
        reason = parts.value(4);
        for (const QString& setting : parts[3].split(QLatin1Char(' '), Qt::SkipEmptyParts))
            in.insert(setting);
    }
    return known;
}

QStringList Known::lines() const {
    QStringList lines;
    for (const auto& [finding, line] : known_) {
        QStringList parts{keyOf(finding), QStringList(line.in.begin(), line.in.end()).join(QLatin1Char(' '))};
        if (!line.reason.isEmpty())
            parts << line.reason;
        lines << parts.join(kBetween);
    }
    return lines;
}

Known Known::ofToday() {
    return read(linesOfList());
}

QStringList Known::withoutReason(const QString& check) const {
    QStringList keys;
    for (const auto& [finding, line] : known_)
        if (finding.check == check && line.reason.isEmpty())
            keys << keyOf(finding);
    return keys;
}

QStringList Known::against(const QString& setting, const Findings& found) const {
    QStringList words;
    for (const auto& [finding, seen] : found) {
        const auto at = known_.find(finding);
        if (at == known_.end() || !at->second.in.contains(setting))
            words << QStringLiteral("new at %1: %2: %3").arg(setting, keyOf(finding), seen);
    }
    for (const auto& [finding, line] : known_)
        if (line.in.contains(setting) && !found.contains(finding))
            words << QStringLiteral("gone at %1, remove it from the list: %2").arg(setting, keyOf(finding));
    return words;
}

void Known::follow(const QString& setting, const Findings& found, bool grow) {
    for (auto& [finding, line] : known_)
        if (!found.contains(finding))
            line.in.erase(setting);
    std::erase_if(known_, [](const auto& each) { return each.second.in.empty(); });
    if (grow)
        for (const auto& [finding, seen] : found)
            known_[finding].in.insert(setting);
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
    return Known::ofToday().against(setting, found);
}

}  // namespace wm::ui
