// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/translation/texts.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <QXmlStreamReader>

#include "tests/repository.h"

namespace wm::ui {

namespace {

QString answerOf(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.setWorkingDirectory(QString::fromStdString(test::repositoryPath("")));
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.start(program, arguments);
    const bool ends = process.waitForFinished(120'000);
    const QString said = QString::fromUtf8(process.readAll());
    EXPECT_TRUE(ends && process.exitCode() == 0) << program.toStdString() << ": " << said.toStdString();
    return said;
}

Message messageAt(QXmlStreamReader& xml, const QString& context) {
    Message message{context};
    message.hasForms = xml.attributes().value(QLatin1String("numerus")) == QLatin1String("yes");
    while (xml.readNextStartElement()) {
        if (xml.name() == QLatin1String("source")) {
            message.source = xml.readElementText();
        } else if (xml.name() == QLatin1String("translation") && message.hasForms) {
            while (xml.readNextStartElement())
                message.forms << xml.readElementText();
        } else if (xml.name() == QLatin1String("translation")) {
            message.forms << xml.readElementText();
        } else {
            xml.skipCurrentElement();
        }
    }
    return message;
}

}  // namespace

std::vector<Message> messagesIn(const QString& tsFile) {
    QFile file(tsFile);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << tsFile.toStdString();
    QXmlStreamReader xml(&file);
    std::vector<Message> messages;
    QString context;
    xml.readNextStartElement();
    while (xml.readNextStartElement()) {
        while (xml.readNextStartElement()) {
            if (xml.name() == QLatin1String("name"))
                context = xml.readElementText();
            else if (xml.name() == QLatin1String("message"))
                messages.push_back(messageAt(xml, context));
            else
                xml.skipCurrentElement();
        }
    }
    EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
    return messages;
}

QStringList extractTexts(const QString& tsFile) {
    const QString said = answerOf(
        QStringLiteral(WM_LUPDATE),
        {QStringLiteral("-silent"), QStringLiteral("-tr-function-alias"), QStringLiteral("translate+=phrase"),
         QStringLiteral("-I"), QStringLiteral("."), QStringLiteral("ui"), QStringLiteral("app"),
         QStringLiteral("core"), QStringLiteral("-ts"), tsFile});
    QStringList complaints;
    for (const QString& line : said.split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
        // The namespace is the context of the free functions, see ui/words/tr.h; core has no texts in a
        // class.
        const bool isKnown =
            line.endsWith(QLatin1String("Class 'wm::ui' lacks Q_OBJECT macro")) ||
            line.endsWith(QLatin1String("Ignoring definition of undeclared qualified class"));
        if (!isKnown)
            complaints << line;
    }
    return complaints;
}

QString makePseudoLanguage(const QString& folder) {
    const QString texts = folder + QStringLiteral("/texts.ts");
    const QString pseudo = folder + QStringLiteral("/pseudo.ts");
    const QString compiled = folder + QStringLiteral("/pseudo.qm");
    extractTexts(texts);
    answerOf(QStringLiteral("python3"),
             {QString::fromStdString(test::repositoryPath("tests/ui/translation/pseudo_language.py")), texts,
              pseudo});
    answerOf(QStringLiteral(WM_LRELEASE), {pseudo, QStringLiteral("-qm"), compiled});
    return compiled;
}

}  // namespace wm::ui
