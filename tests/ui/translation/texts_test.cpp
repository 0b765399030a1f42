// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a translator finds every text, where the code asks for it.
#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTranslator>
#include <map>
#include <set>

#include "core/base/phrase.h"
#include "core/fastening/generic.h"
#include "core/fastening/rows.h"
#include "core/picture/rows.h"
#include "core/sheet/sheet_words.h"
#include "core/upkeep/task.h"
#include "core/usage/rows.h"
#include "tests/ui/translation/texts.h"
#include "ui/entry/day_words.h"
#include "ui/shell/actions.h"
#include "ui/shell/page_table.h"
#include "ui/words/caution_words.h"
#include "ui/words/error_words.h"
#include "ui/words/field_words.h"
#include "ui/words/figures.h"
#include "ui/words/speech.h"
#include "ui/words/tr.h"

#include "tests/repository.h"

namespace wm::ui {
namespace {

std::map<QString, QString> sourcesIn(const QStringList& folders) {
    std::map<QString, QString> sources;
    for (const QString& folder : folders)
        for (QDirIterator at(QString::fromStdString(test::repositoryPath("")) + folder,
                             {QStringLiteral("*.h"), QStringLiteral("*.cpp")}, QDir::Files,
                             QDirIterator::Subdirectories);
             at.hasNext();) {
            QFile file(at.next());
            EXPECT_TRUE(file.open(QIODevice::ReadOnly));
            sources[file.fileName().mid(static_cast<qsizetype>(test::repositoryPath("").size()))] =
                QString::fromUtf8(file.readAll());
        }
    return sources;
}

class TextsTest : public testing::Test {
  protected:
    void SetUp() override {
        ASSERT_TRUE(folder_.isValid());
        complaints_ = extractTexts(folder_.filePath(QStringLiteral("texts.ts")));
        messages_ = messagesIn(folder_.filePath(QStringLiteral("texts.ts")));
        ASSERT_GT(messages_.size(), 1500U);
    }
    [[nodiscard]] std::set<QString> textsOf(const QString& context) const {
        std::set<QString> texts;
        for (const Message& message : messages_)
            if (message.context == context)
                texts.insert(message.source);
        return texts;
    }

    QTemporaryDir folder_;
    QStringList complaints_;
    std::vector<Message> messages_;
};

TEST_F(TextsTest, AreUnderstoodByLupdate) {
    EXPECT_TRUE(complaints_.isEmpty()) << complaints_.join(QLatin1Char('\n')).toStdString();
}

// A class with a meta-object asks under its full name, a free function under its namespace, a phrase under
// what it names.
TEST_F(TextsTest, AreUnderAContextThatTheCodeAsksFor) {
    static const QRegularExpression kClass(QStringLiteral(R"re(class (\w+)[^;{}]*\{\s*Q_OBJECT)re"));
    static const QRegularExpression kPhrase(QStringLiteral(R"re(\bphrase\(\s*"(\w+)")re"));
    std::set<QString> asked{QStringLiteral("wm::ui")};
    for (const auto& [path, source] : sourcesIn({QStringLiteral("ui"), QStringLiteral("core")})) {
        for (auto each = kClass.globalMatch(source); each.hasNext();)
            asked.insert(QStringLiteral("wm::ui::") + each.next().captured(1));
        for (auto each = kPhrase.globalMatch(source); each.hasNext();)
            asked.insert(each.next().captured(1));
    }
    std::set<QString> wrong;
    for (const Message& message : messages_)
        if (!asked.contains(message.context))
            wrong.insert(message.context + QStringLiteral(": ") + message.source);
    for (const QString& each : wrong)
        ADD_FAILURE() << each.toStdString();
}

// "a" "b\n" -> ab and a line break.
QString joinedLiterals(const QString& literals) {
    static const QRegularExpression kLiteral(QStringLiteral(R"re("((?:[^"\\]|\\.)*)")re"));
    static const QRegularExpression kCodePoint(QStringLiteral(R"re(\\u([0-9A-Fa-f]{4}))re"));
    QString text;
    for (auto each = kLiteral.globalMatch(literals); each.hasNext();)
        text += each.next().captured(1);
    for (auto match = kCodePoint.match(text); match.hasMatch(); match = kCodePoint.match(text))
        text.replace(match.captured(0), QChar(match.captured(1).toUShort(nullptr, 16)));
    return text.replace(QLatin1String("\\n"), QLatin1String("\n"))
        .replace(QLatin1String("\\\""), QLatin1String("\""))
        .replace(QLatin1String("\\\\"), QLatin1String("\\"));
}

TEST_F(TextsTest, AreAllExtracted) {
    static const QRegularExpression kText(QStringLiteral(
        R"re((?:(?:\btr|QT_TR_NOOP)\(\s*|\bphrase\(\s*"\w+",\s*)((?:"(?:[^"\\]|\\.)*"\s*)+)[,)])re"));
    std::set<QString> found;
    for (const Message& message : messages_)
        found.insert(message.source);
    std::size_t texts = 0;
    for (const auto& [path, source] : sourcesIn({QStringLiteral("ui"), QStringLiteral("core")}))
        for (auto each = kText.globalMatch(source); each.hasNext();) {
            const QString text = joinedLiterals(each.next().captured(1));
            ++texts;
            EXPECT_TRUE(found.contains(text)) << path.toStdString() << ": " << text.toStdString();
        }
    EXPECT_GT(texts, 1500U);
}

// A text that is no literal is found by nobody; these files mark theirs with QT_TR_NOOP.
TEST_F(TextsTest, AreLiteralsOrMarked) {
    static const QRegularExpression kOther(QStringLiteral(R"re(\btr\(\s*+(?!"|const char))re"));
    for (const auto& [path, source] : sourcesIn({QStringLiteral("ui")}))
        if (kOther.match(source).hasMatch()) {
            EXPECT_TRUE(source.contains(QLatin1String("QT_TR_NOOP("))) << path.toStdString();
        }
}

TEST_F(TextsTest, HaveTheirPluralsInEnglish) {
    std::map<QString, QStringList> english;
    for (const Message& message :
         messagesIn(QString::fromStdString(test::repositoryPath("resources/translations/witnessmark_en.ts"))))
        english[message.context + QLatin1Char('|') + message.source] = message.forms;
    std::set<QString> wanted;
    for (const Message& message : messages_) {
        const QString key = message.context + QLatin1Char('|') + message.source;
        EXPECT_EQ(message.hasForms, message.source.contains(QLatin1String("%n")) ||
                                        message.source.contains(QLatin1String("it/them")) ||
                                        message.source.contains(QLatin1String("is/are")))
            << key.toStdString();
        if (!message.hasForms)
            continue;
        wanted.insert(key);
        ASSERT_TRUE(english.contains(key)) << key.toStdString();
        const QStringList& forms = english.at(key);
        ASSERT_EQ(forms.size(), 2) << key.toStdString();
        EXPECT_FALSE(forms[0].isEmpty() || forms[1].isEmpty() || forms[1].contains(QLatin1String("(s)")))
            << key.toStdString();
    }
    EXPECT_EQ(english.size(), wanted.size()) << "a text of English that is no longer said";
}

// Core speaks English by itself; it must be the English that the window speaks.
TEST_F(TextsTest, SayTheSamePluralsInCore) {
    std::size_t compared = 0;
    for (const Message& message : messagesIn(
             QString::fromStdString(test::repositoryPath("resources/translations/witnessmark_en.ts")))) {
        if (message.context.startsWith(QLatin1String("wm::ui")))
            continue;
        const std::string text = message.source.toStdString();
        EXPECT_EQ(base::english({"", text, 1}), message.forms.at(0).toStdString());
        EXPECT_EQ(base::english({"", text, 2}), message.forms.at(1).toStdString());
        ++compared;
    }
    EXPECT_GT(compared, 3U);
}

template <class... E>
void expectListed(const std::set<QString>& texts) {
    const auto expectAll = [&](const auto& names) {
        for (const std::string_view name : names)
            EXPECT_TRUE(texts.contains(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()))))
                << name;
    };
    (expectAll(base::Names<E>::names), ...);
}

TEST_F(TextsTest, HoldTheNamesThatAreShown) {
    expectListed<usage::Ground, usage::Pace, upkeep::Counter, upkeep::Happening, upkeep::Unit, upkeep::When,
                 upkeep::BodyState, fastening::JointKind, fastening::MarkKind, fastening::Hole,
                 fastening::Lubrication>(textsOf(QStringLiteral("wm::ui")));
}

// The names of all fields of all rows, and of the lists within them.
class FieldNames {
  public:
    template <class T>
    void add() {
        T row{};
        T::fields(row, [this](std::string_view name, auto& member) {
            names_.insert(std::string(name));
            addOf(member);
        });
    }
    [[nodiscard]] const std::set<std::string>& all() const { return names_; }

  private:
    template <class T>
    void addOf(const std::vector<T>& /*list*/) {
        add<T>();
    }
    template <class T>
    void addOf(const T& /*no list*/) {}

    std::set<std::string> names_;
};

template <std::size_t... At>
std::set<std::string> namesOfAllFields(std::index_sequence<At...>) {
    FieldNames names;
    (names.add<std::variant_alternative_t<At, picture::Row>>(), ...);
    return names.all();
}

void expectForeign(const QString& words) {
    static const QRegularExpression kPlain(QStringLiteral("[A-Za-z]{2,}"));
    EXPECT_TRUE(words.contains(QChar(0x27E6)) && !kPlain.match(words).hasMatch()) << words.toStdString();
}

// Found at run time as well: free functions, classes, names, and what core leaves to be said.
TEST_F(TextsTest, AreSaidInAnotherLanguage) {
    QTranslator pseudo;
    ASSERT_TRUE(pseudo.load(makePseudoLanguage(folder_.path())));
    ASSERT_TRUE(QCoreApplication::installTranslator(&pseudo));
    for (const auto& page : pageTable())
        expectForeign(page.name);
    const auto fields = namesOfAllFields(std::make_index_sequence<std::variant_size_v<picture::Row>>());
    EXPECT_GT(fields.size(), 100U);
    for (const std::string& field : fields)
        expectForeign(fieldWords(field));
    for (const auto& action : actionTable()) {
        expectForeign(action.text);
        if (!action.tip.isEmpty())
            expectForeign(action.tip);
    }
    for (const auto fault : {base::Fault::Empty, base::Fault::TooLarge, base::Fault::MeterRunsBack})
        expectForeign(wordsFor(base::Error{fault, "every", "5", "9"}));
    for (const auto counter : {upkeep::Counter::Outings, upkeep::Counter::Washes, upkeep::Counter::Days})
        for (const std::int64_t n : {1, 2})
            expectForeign(countWords(n, counter));
    for (std::size_t at = 0; at < base::Names<upkeep::Hazard>::names.size(); ++at)
        expectForeign(cautionWords(static_cast<upkeep::Hazard>(at)).doThis);
    // What the forms begin with can be read again.
    const auto today = *calendar::makeDate(2026, 5, 16);
    for (const auto& [words, away] : {std::pair(tr("today"), 0), std::pair(tr("yesterday"), -1)})
        EXPECT_EQ(parseDay("date", words, today, Lean::Past), today.plusDays(away)) << words.toStdString();
    expectForeign(dayWords(*calendar::makeDate(2026, 5, 16), *calendar::makeDate(2025, 5, 16))
                      .remove(QStringLiteral("May"))
                      .remove(QStringLiteral("Sat")));
    fastening::JointVersion spokes;
    spokes.sequence = fastening::Sequence::EveryNth;
    spokes.sequenceStep = 3;
    expectForeign(text(sheet::orderText(spokes, speech())));
    expectForeign(wordsOfKept(base::stored(base::phrase("Undo", "took in a whole file"))));
    QCoreApplication::removeTranslator(&pseudo);
    EXPECT_EQ(wordsOfKept(base::stored(base::phrase("Undo", "took in a whole file"))),
              QStringLiteral("took in a whole file"));
}

}  // namespace
}  // namespace wm::ui
