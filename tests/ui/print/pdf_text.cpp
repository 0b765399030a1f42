// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/print/pdf_text.h"

#include <gtest/gtest.h>

#include <QProcess>
#include <QRegularExpression>

namespace wm::ui {

namespace {

QString outputOf(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished()) << program.toStdString() << " (package poppler-utils) did not run";
    EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
    return QString::fromUtf8(process.readAllStandardOutput());
}

}  // namespace

PdfSeen pdfInfo(const QString& path) {
    PdfSeen seen;
    const QStringList lines = outputOf(QStringLiteral("pdfinfo"), {path}).split(QLatin1Char('\n'));
    static const QRegularExpression size(QStringLiteral("([\\d.]+) x ([\\d.]+) pts"));
    for (const QString& line : lines) {
        const QString value = line.section(QLatin1Char(':'), 1).trimmed();
        if (line.startsWith(QLatin1String("Title:")))
            seen.title = value;
        if (line.startsWith(QLatin1String("Pages:")))
            seen.pages = value.toInt();
        if (line.startsWith(QLatin1String("Page size:"))) {
            const auto match = size.match(value);
            seen.paper = {match.captured(1).toDouble(), match.captured(2).toDouble()};
        }
    }
    return seen;
}

QStringList pdfLines(const QString& path, int page) {
    const QString number = QString::number(page);
    QString text =
        outputOf(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), QStringLiteral("-f"), number,
                                               QStringLiteral("-l"), number, path, QStringLiteral("-")});
    return text.replace(QChar::Nbsp, QLatin1Char(' ')).split(QLatin1Char('\n'));
}

}  // namespace wm::ui
