// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/shell.h"

#include <QFile>
#include <QProcess>

#include "app/headless.h"
#include "tests/core/exchange/schema_check.h"

namespace wm::test {

nlohmann::json Said::json() const {
    return nlohmann::json::parse(out.toStdString(), nullptr, false);
}

Said say(const QStringList& arguments) {
    Said said;
    QTextStream out(&said.out);
    QTextStream err(&said.err);
    app::Console console{out, err, [] { return *calendar::makeDate(2026, 5, 7); }};
    said.exit = app::runHeadless(arguments, console);
    out.flush();
    err.flush();
    return said;
}

Said runProgram(const QStringList& arguments, const QString& outTo) {
    QProcess process;
    if (!outTo.isEmpty())
        process.setStandardOutputFile(outTo);
    process.start(WM_PROGRAM, arguments);
    if (!process.waitForFinished(60'000))
        return {};
    return {process.exitCode(), QString::fromUtf8(process.readAllStandardOutput()),
            QString::fromUtf8(process.readAllStandardError())};
}

void expectRefusal(const Said& said, app::Exit exit, const QString& words) {
    EXPECT_EQ(said.exit, static_cast<int>(exit)) << said.err.toStdString();
    EXPECT_EQ(said.out.toStdString(), "");
    EXPECT_TRUE(said.err.startsWith("witnessmark: ")) << said.err.toStdString();
    EXPECT_TRUE(said.err.endsWith(".\n")) << said.err.toStdString();
    EXPECT_EQ(said.err.count('\n'), 1) << said.err.toStdString();
    EXPECT_TRUE(said.err.contains(words)) << said.err.toStdString() << " lacks " << words.toStdString();
}

void expectKeepsTo(const char* definition, const nlohmann::json& answer) {
    nlohmann::json schema = nlohmann::json::parse(repositoryText("resources/headless.schema.json"));
    schema["$ref"] = std::string("#/$defs/") + definition;
    EXPECT_EQ(breaches(schema, answer), std::vector<std::string>{});
}

void GarageTest::SetUp() {
    ASSERT_TRUE(folder_.isValid());
    file_ = path("garage.witnessmark");
    // Made once a process, then copied.
    static QByteArray made;
    if (!made.isEmpty()) {
        write(QStringLiteral("garage.witnessmark"), made);
        return;
    }
    const Said said = say({"new", file_, "--starter", "four-stroke motocross", "--machine", "Heron 250",
                           "--since", "2026-03-01", "--started-new"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    made = bytes(QStringLiteral("garage.witnessmark"));
}

QByteArray GarageTest::bytes(const QString& name) const {
    QFile file(path(name));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

void GarageTest::write(const QString& name, const QByteArray& content) const {
    QFile file(path(name));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_EQ(file.write(content), content.size());
}

QString GarageTest::exported() const {
    const Said said = say({"export", file_});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    return said.out;
}

nlohmann::json GarageTest::dueLine(const std::string& code) const {
    const nlohmann::json lines = say({"due", file_, "--json"}).json();
    for (const auto& line : lines)
        if (line.at("code") == code)
            return line;
    return nullptr;
}

}  // namespace wm::test
