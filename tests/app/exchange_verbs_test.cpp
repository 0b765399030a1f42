// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFile>

#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class ExchangeVerbs : public GarageTest {
  protected:
    void SetUp() override {
        GarageTest::SetUp();
        ASSERT_EQ(say({"log", file_, "--outing", "1.3", "--wash", "hand"}).exit, 0);
        ASSERT_EQ(say({"record", file_, "--task", "chain-kit", "--note", "“quoted” <b>"}).exit, 0);
        write("whole.json", exported().toUtf8());
    }
    void expectNoImport(const QByteArray& text, Exit exit, const QString& words) {
        write("bad.json", text);
        expectRefusal(say({"import", path("copy.witnessmark"), path("bad.json")}), exit, words);
        EXPECT_FALSE(QFile::exists(path("copy.witnessmark")));
    }
};

TEST_F(ExchangeVerbs, AFileComesBackByteForByte) {
    const Said said = say({"import", path("copy.witnessmark"), path("whole.json"), "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("import", said.json());
    EXPECT_EQ(say({"export", path("copy.witnessmark")}).out, exported());
    EXPECT_EQ(say({"due", path("copy.witnessmark"), "--json"}).out, say({"due", file_, "--json"}).out);
}

TEST_F(ExchangeVerbs, ImportFillsAnEmptyFileOnly) {
    ASSERT_EQ(say({"new", path("empty.witnessmark")}).exit, 0);
    EXPECT_EQ(say({"import", path("empty.witnessmark"), path("whole.json")}).exit, 0);
    const QString before = exported();
    expectRefusal(say({"import", file_, path("whole.json")}), Exit::Refused, "new file");
    EXPECT_EQ(exported(), before);
}

TEST_F(ExchangeVerbs, ExportWritesToAFileIfAsked) {
    EXPECT_EQ(say({"export", file_, "--to", path("out.json")}).out, "");
    EXPECT_EQ(bytes("out.json"), exported().toUtf8());
    expectRefusal(say({"export", file_, "--to", folder_.path()}), Exit::CannotWrite, "can't be written");
    expectRefusal(say({"export", file_, "--to", path("nowhere/x.json")}), Exit::CannotWrite,
                  "can't be written");
}

TEST_F(ExchangeVerbs, NothingIsImportedFromABadText) {
    const QByteArray whole = bytes("whole.json");
    expectNoImport("", Exit::Refused, "blank");
    expectNoImport("{", Exit::Refused, "end of text");
    expectNoImport(whole.left(whole.size() / 2), Exit::Refused, "end of text");
    expectNoImport("\xFF\xFE{}", Exit::Refused, "no text");
    expectNoImport("{\"format\": 99}", Exit::Refused, "newer");
    expectNoImport(QByteArray(whole).replace("\"hours\": 130", "\"hours\": -130"), Exit::Refused, "hours");
    expectNoImport(QByteArray(whole).replace("\"hours\": 130", "\"hours\": 1e300"), Exit::Refused, "hours");
    expectNoImport(QByteArray(whole).replace("\"pressure\": false", "\"pressure\": \"no\""), Exit::Refused,
                   "pressure");
    expectNoImport(QByteArray(whole).replace("\"outing\": [", "\"outing\": [{}, "), Exit::Refused,
                   "outing[0]");
}

TEST_F(ExchangeVerbs, AReferenceToNothingIsRefused) {
    nlohmann::json broken = nlohmann::json::parse(bytes("whole.json").toStdString());
    broken["outing"][0]["machine"] = 12345;
    expectNoImport(QByteArray::fromStdString(broken.dump()), Exit::Refused, "outing[0]");
}

TEST_F(ExchangeVerbs, ATextThatCanNotBeReadIsNamed) {
    const QString copy = path("copy.witnessmark");
    expectRefusal(say({"import", copy, path("nowhere.json")}), Exit::CannotOpen, "nowhere.json");
    expectRefusal(say({"import", copy, folder_.path()}), Exit::CannotOpen, "is a folder");
    EXPECT_FALSE(QFile::exists(copy));
}

TEST_F(ExchangeVerbs, CheckFindsASoundFileSound) {
    const Said said = say({"check", file_, "--json"});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("check", said.json());
    EXPECT_EQ(said.json().at("sound"), true);
    EXPECT_TRUE(say({"check", file_}).out.startsWith("The file is sound: "));
}

TEST_F(ExchangeVerbs, CheckNeverCallsADamagedFileSound) {
    const QByteArray whole = bytes("garage.witnessmark");
    for (const qsizetype page : {2, 5, 9}) {
        QByteArray damaged = whole;
        damaged.replace(page * 4096, 2048, QByteArray(2048, '\x5A'));
        write("damaged.witnessmark", damaged);
        const Said said = say({"check", path("damaged.witnessmark")});
        EXPECT_TRUE(said.exit == static_cast<int>(Exit::Found) ||
                    said.exit == static_cast<int>(Exit::CannotOpen))
            << said.exit << said.out.toStdString();
        EXPECT_EQ(said.err.count('\n'), 1) << said.err.toStdString();
    }
}

}  // namespace
}  // namespace wm::test
