// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that the window shows and prints, in a language that nobody speaks: what is still plain never
// reached a translator. The user's own words are disguised, so that no plain word is left but a text of ours.
#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QLabel>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTextDocument>
#include <QTranslator>
#include <iostream>
#include <map>
#include <set>

#include "core/exchange/json.h"
#include "core/sheet/job_sheet.h"
#include "core/sheet/torque_card.h"
#include "tests/repository.h"
#include "tests/ui/garage.h"
#include "tests/ui/harness/everything.h"
#include "tests/ui/harness/findings.h"
#include "tests/ui/harness/painted_text.h"
#include "tests/ui/own_words.h"
#include "tests/ui/translation/texts.h"
#include "ui/print/paged_output.h"
#include "ui/print/sheet_layout.h"
#include "ui/print/sheet_type.h"
#include "ui/print/torque_card_layout.h"
#include "ui/theme/theme.h"
#include "ui/words/speech.h"

namespace wm::ui {
namespace {

const QRegularExpression& plainWord() {
    static const QRegularExpression kWord(QStringLiteral("[A-Za-z]{2,}"));
    return kWord;
}

// Units, keys and codes of standards are the same in every language; the last are Qt's own buttons.
const std::set<QString>& sameEverywhere() {
    static const std::set<QString> kWords{"km",   "min",    "ml",  "mm",    "lbf",  "ft",    "in",  "kgf",
                                          "cm",   "bar",    "psi", "kPa",   "ISO",  "VDI",   "CSV", "PDF",
                                          "JSON", "Ctrl",   "Alt", "Shift", "Esc",  "Del",   "Ins", "II",
                                          "Nm",   "Cancel", "OK",  "Close", "PgUp", "PgDown"};
    return kWords;
}

// The days and months come from the locale, and what is cut off is no word.
QString withoutLocale(QString text) {
    static const QRegularExpression kDay(
        QStringLiteral("\\b(Mon|Tue|Wed|Thu|Fri|Sat|Sun)(?= \\d|$)|"
                       "(^|(?<=\\d ))(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)\\b|\\w*…"));
    return text.remove(kDay);
}

std::set<QString> wordsIn(const QString& text) {
    std::set<QString> words;
    for (auto each = plainWord().globalMatch(text); each.hasNext();)
        words.insert(each.next().captured());
    return words;
}

// The same words with other letters.
void disguise(std::string& words) {
    QString text = QString::fromStdString(words);
    for (auto each = plainWord().globalMatch(text); each.hasNext();) {
        const auto match = each.next();
        for (qsizetype at = match.capturedStart(); at < match.capturedEnd(); ++at) {
            const ushort letter = text[at].unicode();
            const bool isSmall = letter >= 'a';
            text[at] = QChar(static_cast<ushort>(isSmall ? 0x0430 + letter - 'a' : 0x0410 + letter - 'A'));
        }
    }
    words = text.toStdString();
}

void disguiseAll(std::vector<picture::Row>& rows) {
    eachOwnText(rows, disguise);
}

// A tip is marked up where it holds what somebody typed.
QString shownOf(const QString& tip) {
    if (!Qt::mightBeRichText(tip))
        return tip;
    QTextDocument shown;
    shown.setHtml(tip);
    return shown.toPlainText();
}

// Of a cell or a label all that it says, on however many lines.
QString wholeOf(const PaintedText& painted) {
    if (painted.index.isValid())
        return painted.index.data().toString();
    const auto* label = qobject_cast<const QLabel*>(painted.by);
    return label != nullptr ? label->text() : painted.text;
}

QStringList listed(const QString& name) {
    QFile file(QString::fromStdString(test::repositoryPath("tests/data/translation/")) + name);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    QStringList lines;
    for (const QString& line : QString::fromUtf8(file.readAll()).split(QLatin1Char('\n'), Qt::SkipEmptyParts))
        if (!line.startsWith(QLatin1Char('#')))
            lines << line;
    return lines;
}

// The code of a doing is a schedule's, as a name is.
bool isCode(const Surface& surface, const QString& text) {
    static const QRegularExpression kCode(QStringLiteral("^[a-z0-9]+(-[a-z0-9]+)+$"));
    return surface.name.contains(QLatin1String("StepsPage")) && kCode.match(text.trimmed()).hasMatch();
}

class LongPseudoLanguage : public testing::Test {
  protected:
    void SetUp() override {
        ASSERT_TRUE(folder_.isValid());
        ASSERT_TRUE(pseudo_.load(makePseudoLanguage(folder_.path())));
        ASSERT_TRUE(QCoreApplication::installTranslator(&pseudo_));
        applyTheme(*qApp, ThemeChoice::Light);
    }
    void TearDown() override { QCoreApplication::removeTranslator(&pseudo_); }

    void judge(const QString& where, const QString& said, const std::set<QString>& allowed = {}) {
        const QString text = withoutLocale(said);
        for (const QString& word : wordsIn(text))
            if (!sameEverywhere().contains(word) && !allowed.contains(word)) {
                QString shape = text.simplified();
                static const QRegularExpression kFigure(QStringLiteral("\\d+"));
                plain_.emplace(shape.replace(kFigure, QStringLiteral("0")), where);
                return;
            }
    }
    // The texts that are still plain today stand in a list that may only shrink.
    void compareWithTheList(const QString& name) {
        const QStringList lines = listed(name);
        const std::set<QString> known(lines.begin(), lines.end());
        for (const auto& [text, where] : plain_)
            EXPECT_TRUE(known.contains(text))
                << "plain on " << where.toStdString() << ": " << text.toStdString();
        for (const QString& text : known)
            EXPECT_TRUE(plain_.contains(text))
                << "no longer plain, take it off the list: " << text.toStdString();
        RecordProperty("plain", static_cast<int>(plain_.size()));
    }

    QTemporaryDir folder_;
    QTranslator pseudo_;
    std::map<QString, QString> plain_;
};

TEST_F(LongPseudoLanguage, IsAllThatTheWindowSpeaks) {
    std::set<QString> notebooks;
    for (const char* name : {"outings", "jobs"}) {
        QFile file(QString::fromStdString(
            test::repositoryPath("tests/data/notebook/" + std::string(name) + ".csv")));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        notebooks.merge(wordsIn(QString::fromUtf8(file.readAll())));
    }
    Findings cut;
    std::size_t surfaces = 0;
    seeEverything({.size = {1280, 720}, .retold = disguiseAll}, [&](const Surface& surface) {
        ++surfaces;
        const bool isNotebook = surface.name.startsWith(QLatin1String("NotebookDialog"));
        const auto& allowed = isNotebook ? notebooks : std::set<QString>{};
        for (const PaintedText& painted : paintedTexts(surface.root))
            if (!isCode(surface, wholeOf(painted)))
                judge(surface.name, wholeOf(painted), allowed);
        for (const Tip& tip : tipsOf(surface))
            judge(surface.name + QStringLiteral(", tip"), shownOf(tip.text), allowed);
        for (const auto* widget : surface.root->findChildren<QWidget*>())
            if (widget->isVisible())
                judge(surface.name + QStringLiteral(", spoken"), widget->accessibleName(), allowed);
        cut.merge(cutTexts(surface));
    });
    EXPECT_GT(surfaces, 60U);
    compareWithTheList(QStringLiteral("plain.txt"));
    // Counted and listed, not judged: a longer language needs the room that the pages will give.
    RecordProperty("cut", static_cast<int>(cut.size()));
    std::cout << cut.size() << " texts are cut in a language a third longer:\n";
    for (const auto& [finding, seen] : cut)
        std::cout << "  " << finding.surface.toStdString() << ": " << finding.where.toStdString() << ": "
                  << seen.toStdString() << '\n';
}

TEST_F(LongPseudoLanguage, IsAllThatThePaperSpeaks) {
    Garage demo(Garage::Fill::Demo);
    auto rows = exchange::fromJson(exchange::toJson(demo.book().ledger()));
    ASSERT_TRUE(rows.has_value());
    disguiseAll(*rows);
    Garage garage(Garage::Fill::Empty);
    garage.say([&rows](const verbs::VerbContext& context) { return verbs::adoptAll(context, *rows); });
    const QSizeF area = *printableMm(PaperSize::A4, kPaperMarginMm) * kPointsPerMm;
    const auto judgePages = [this](const QString& name, const auto& pages) {
        ASSERT_TRUE(pages);
        for (const SheetPage& page : *pages)
            for (const Mark& mark : page.marks)
                if (const auto* text = std::get_if<TextMark>(&mark))
                    judge(name, text->text);
    };
    std::size_t sheets = 0;
    std::size_t cards = 0;
    for (const auto* machine : garage.book().machines()) {
        if (const auto sheet = sheet::jobSheet(garage.book(), machine->id, 1, speech())) {
            ++sheets;
            judgePages(QStringLiteral("job sheet"), layOutSheet(*sheet, area));
        }
        if (const auto card = sheet::torqueCard(garage.book(), machine->id, speech())) {
            ++cards;
            judgePages(QStringLiteral("torque card"), layOutTorqueCard(*card, area));
        }
    }
    EXPECT_GT(sheets, 0U);
    EXPECT_GT(cards, 0U);
    compareWithTheList(QStringLiteral("plain_paper.txt"));
}

}  // namespace
}  // namespace wm::ui
