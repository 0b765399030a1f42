// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_memory.h"

#include <QCryptographicHash>
#include <QSettings>
#include <QStringList>
#include <algorithm>

namespace wm::ui {

namespace {

using notebook::Column;
using notebook::DateForm;

// A header may hold anything, a key of the settings may not.
QString keyFor(const std::string& headerKey) {
    const auto digest =
        QCryptographicHash::hash(QByteArray::fromStdString(headerKey), QCryptographicHash::Sha256);
    return QStringLiteral("notebooks/") + QString::fromLatin1(digest.toHex().left(24));
}

std::vector<Column> columnsIn(const QStringList& names) {
    std::vector<Column> columns;
    for (const QString& name : names) {
        const auto column = base::fromName<Column>(name.toStdString());
        if (!column)
            return {};
        columns.push_back(*column);
    }
    return columns;
}

notebook::MeantNames namesIn(const QStringList& pairs) {
    notebook::MeantNames names;
    for (qsizetype at = 0; at + 1 < pairs.size(); at += 2) {
        const auto id = pairs[at + 1].toLongLong();
        names[pairs[at].toStdString()] = id == 0 ? std::nullopt : std::optional(MachineId{id});
    }
    return names;
}

QStringList pairsOf(const notebook::MeantNames& names) {
    QStringList pairs;
    for (const auto& [text, id] : names)
        pairs << QString::fromStdString(text) << QString::number(id ? id->value() : 0);
    return pairs;
}

}  // namespace

NotebookWays recallNotebook(const QSettings& settings, const std::string& headerKey) {
    NotebookWays ways;
    if (headerKey.empty())
        return ways;
    const QString key = keyFor(headerKey);
    ways.columns = columnsIn(settings.value(key + QStringLiteral("/columns")).toStringList());
    const QString decimal = settings.value(key + QStringLiteral("/decimal")).toString();
    if (decimal == QLatin1String(",") || decimal == QLatin1String("."))
        ways.decimal = decimal.front().toLatin1();
    bool isNumber = false;
    const int dates = settings.value(key + QStringLiteral("/dates")).toInt(&isNumber);
    if (isNumber && dates >= 0 && dates <= static_cast<int>(DateForm::Serial))
        ways.dates = static_cast<DateForm>(dates);
    ways.names = namesIn(settings.value(key + QStringLiteral("/names")).toStringList());
    return ways;
}

void rememberNotebook(QSettings& settings, const std::string& headerKey, const NotebookWays& ways) {
    if (headerKey.empty())
        return;
    const QString key = keyFor(headerKey);
    settings.remove(key);
    QStringList columns;
    for (const Column column : ways.columns) {
        const auto name = base::nameOf(column);
        columns << QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
    }
    if (!columns.isEmpty())
        settings.setValue(key + QStringLiteral("/columns"), columns);
    if (ways.decimal)
        settings.setValue(key + QStringLiteral("/decimal"), QString(QLatin1Char(*ways.decimal)));
    if (ways.dates)
        settings.setValue(key + QStringLiteral("/dates"), static_cast<int>(*ways.dates));
    if (!ways.names.empty())
        settings.setValue(key + QStringLiteral("/names"), pairsOf(ways.names));
}

}  // namespace wm::ui
