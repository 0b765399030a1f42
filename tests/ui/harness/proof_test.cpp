// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The harness can fail: each fault, made on purpose, is reported, and a sound surface is not.
#include <gtest/gtest.h>

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QTableWidget>
#include <QTest>
#include <QToolButton>
#include <QVBoxLayout>

#include "tests/ui/harness/known.h"

namespace wm::ui {
namespace {

const QString kMark = QStringLiteral("<img src=nowhere.png><b>&amp;");

class Elides : public QWidget {
  public:
    using QWidget::QWidget;

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.drawText(
            rect(), Qt::AlignLeft,
            fontMetrics().elidedText(QStringLiteral("a name that is far too long"), Qt::ElideRight, width()));
    }
};

class HarnessProof : public testing::Test {
  protected:
    void SetUp() override {
        QApplication::setActiveWindow(nullptr);
        page_.resize(400, 300);
        page_.setObjectName(QStringLiteral("page"));
    }
    Surface shown() {
        page_.show();
        page_.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&page_));
        return {Surface::Kind::Page, QStringLiteral("Made"), &page_};
    }
    template <class W>
    W* put(const char* name, const QRect& at) {
        auto* widget = new W(&page_);
        widget->setObjectName(QLatin1String(name));
        widget->setGeometry(at);
        return widget;
    }
    static bool has(const Findings& found, const char* check, const char* where) {
        return found.contains({QLatin1String(check), QStringLiteral("Made"), QLatin1String(where)});
    }

    QWidget page_;
};

TEST_F(HarnessProof, FindsNothingOnASoundPage) {
    auto* lines = new QVBoxLayout(&page_);
    auto* label = new QLabel(kMark);
    label->setTextFormat(Qt::PlainText);
    label->setToolTip(kMark.toHtmlEscaped());
    auto* more = new QPushButton(QStringLiteral("Open…"));
    auto* edit = new QLineEdit;
    edit->setAccessibleName(QStringLiteral("name"));
    auto* long_ = new QScrollArea;
    auto* content = new QLabel(QString(60, QLatin1Char('x')).split(QString()).join(QLatin1Char('\n')));
    long_->setWidget(content);
    long_->setFocusPolicy(Qt::NoFocus);
    for (QWidget* each : std::initializer_list<QWidget*>{label, more, edit, long_})
        lines->addWidget(each);
    const Surface surface = shown();
    edit->setFocus();
    Findings all = offTheWindow(surface);
    all.merge(cutTexts(surface));
    all.merge(unspoken(surface));
    all.merge(markup(surface, kMark));
    all.merge(notByMouse(surface));
    all.merge(notByKeys(surface));
    for (const auto& [finding, seen] : all)
        ADD_FAILURE() << finding.check.toStdString() << " " << finding.where.toStdString() << " "
                      << seen.toStdString();
}

TEST_F(HarnessProof, FindsWhatLiesOffTheWindow) {
    put<QPushButton>("beyond", {380, 10, 60, 30})->setText(QStringLiteral("ok"));
    put<QPushButton>("nothing", {10, 10, 0, 0})->setText(QStringLiteral("ok"));
    auto* area = put<QScrollArea>("area", {10, 50, 200, 100});
    auto* inside = new QWidget;
    inside->resize(600, 600);
    auto* rolled = new QPushButton(QStringLiteral("far right"), inside);
    rolled->setObjectName(QStringLiteral("rolled"));
    rolled->setGeometry(500, 500, 80, 30);
    area->setWidget(inside);
    const Surface surface = shown();
    Findings found = offTheWindow(surface);
    EXPECT_TRUE(has(found, "off", "beyond"));
    EXPECT_TRUE(has(found, "off", "nothing"));
    EXPECT_FALSE(has(found, "off", "rolled"));
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    found = offTheWindow(surface);
    EXPECT_TRUE(has(found, "off", "rolled"));
}

TEST_F(HarnessProof, FindsCutTextsWhoeverPaintsThem) {
    put<QLabel>("clipped", {10, 10, 40, 20})->setText(QStringLiteral("far too long for this"));
    put<QLabel>("figure", {10, 40, 20, 20})->setText(QStringLiteral("1234.5 h left"));
    put<Elides>("elided", {10, 70, 60, 20});
    put<QPushButton>("button", {10, 100, 40, 24})->setText(QStringLiteral("Save everything"));
    auto* low = put<QLabel>("low", {10, 130, 60, 18});
    low->setText(QStringLiteral("words that wrap and wrap and wrap"));
    low->setWordWrap(true);
    auto* table = put<QTableWidget>("table", {10, 160, 300, 100});
    table->setRowCount(1);
    table->setColumnCount(2);
    table->setItem(0, 1, new QTableWidgetItem(QStringLiteral("a name that is far too long for its column")));
    const Findings found = cutTexts(shown());
    EXPECT_TRUE(has(found, "cut-name", "clipped"));
    EXPECT_TRUE(has(found, "cut-figure", "figure"));
    EXPECT_TRUE(has(found, "cut-name", "elided"));
    EXPECT_TRUE(has(found, "cut-name", "button"));
    EXPECT_TRUE(has(found, "cut-name", "low"));
    EXPECT_TRUE(has(found, "cut-name", "table[1]"));
    EXPECT_EQ(found.size(), 6U);
}

TEST_F(HarnessProof, FindsWhatHasNoNameOrAWrongRole) {
    put<QToolButton>("cross", {10, 10, 30, 30})->setText(QStringLiteral("×"));
    put<QLineEdit>("edit", {10, 50, 100, 30});
    auto* painted = put<Elides>("painted", {10, 90, 100, 30});
    painted->setFocusPolicy(Qt::StrongFocus);
    painted->setAccessibleName(QStringLiteral("a picture that takes keys"));
    const Findings found = unspoken(shown());
    EXPECT_TRUE(has(found, "nameless", "cross"));
    EXPECT_TRUE(has(found, "nameless", "edit"));
    EXPECT_TRUE(has(found, "role", "painted"));
    EXPECT_EQ(found.size(), 3U);
}

TEST_F(HarnessProof, FindsTheUsersTextReadAsMarkup) {
    auto* label = put<QLabel>("label", {10, 10, 300, 20});
    label->setText(kMark);
    label->setStyleSheet(QStringLiteral("QLabel { qproperty-textFormat: AutoText; }"));  // not the theme's
    put<QPushButton>("button", {10, 40, 300, 24})->setText(kMark);
    put<QWidget>("tip", {10, 70, 20, 20})->setToolTip(QStringLiteral("Takes back: ") + kMark);
    put<QWidget>("twice", {10, 100, 20, 20})
        ->setToolTip(QStringLiteral("<b>%1</b>").arg(kMark.toHtmlEscaped().toHtmlEscaped()));
    auto* table = put<QTableWidget>("table", {10, 130, 300, 100});
    table->setRowCount(1);
    table->setColumnCount(1);
    table->setItem(0, 0, new QTableWidgetItem(QStringLiteral("x")));
    table->item(0, 0)->setToolTip(kMark);
    const Findings found = markup(shown(), kMark);
    EXPECT_TRUE(has(found, "markup", "label"));
    EXPECT_TRUE(has(found, "markup", "button"));
    EXPECT_TRUE(has(found, "markup", "tip tip"));
    EXPECT_TRUE(has(found, "markup", "twice tip"));
    EXPECT_TRUE(has(found, "markup", "table tip"));
    EXPECT_EQ(found.size(), 5U);
}

TEST_F(HarnessProof, FindsWhatTheMouseCantReach) {
    put<QPushButton>("under", {10, 10, 80, 30})->setText(QStringLiteral("ok"));
    put<QWidget>("over", {0, 0, 100, 60});
    put<QLabel>("keys", {10, 100, 300, 20})->setText(QStringLiteral("Enter open    C correct"));
    put<QPushButton>("has-one", {10, 130, 200, 30})->setText(QStringLiteral("Open (Enter)"));
    new QShortcut(QKeySequence(Qt::Key_F12), &page_);
    auto* action = new QAction(&page_);
    action->setObjectName(QStringLiteral("alone"));
    action->setShortcut(QKeySequence(Qt::Key_F9));
    page_.addAction(action);
    Surface surface = shown();
    surface.kind = Surface::Kind::Window;
    const Findings found = notByMouse(surface);
    EXPECT_TRUE(has(found, "mouse", "under"));
    EXPECT_TRUE(has(found, "mouse", "alone"));
    EXPECT_TRUE(has(found, "mouse", "keys"));
    EXPECT_TRUE(has(found, "mouse", "page F12"));
    EXPECT_EQ(found.size(), 4U);
    EXPECT_TRUE(found.at({"mouse", "Made", "keys"}).startsWith(QStringLiteral("C is a key alone")));
}

TEST_F(HarnessProof, FindsWhatTheKeysCantReach) {
    auto* first = put<QLineEdit>("first", {10, 10, 100, 30});
    put<QLineEdit>("second", {10, 50, 100, 30});
    auto* never = put<QPushButton>("never", {10, 90, 100, 30});
    never->setText(QStringLiteral("click me"));
    never->setFocusPolicy(Qt::NoFocus);
    auto* named = put<QToolButton>("named", {10, 130, 100, 30});
    named->setText(QStringLiteral("Find (Ctrl+F)"));
    named->setFocusPolicy(Qt::NoFocus);
    Surface surface = shown();
    first->setFocus();
    Findings found = notByKeys(surface);
    EXPECT_TRUE(has(found, "keys", "never"));
    EXPECT_EQ(found.size(), 1U);
    put<QPlainTextEdit>("trap", {150, 10, 100, 100})->show();
    first->setFocus();
    found = notByKeys(surface);
    EXPECT_TRUE(has(found, "keys", "trap"));
}

TEST(KnownFailures, MayOnlyShrink) {
    const QStringList lines{QStringLiteral("cut-name | Made | a | 100 125"),
                            QStringLiteral("off | Made | b | 100")};
    Known known = Known::read(lines);
    EXPECT_EQ(known.lines(), lines);
    const Findings a{{{"cut-name", "Made", "a"}, {}}};
    const Findings both{{{"cut-name", "Made", "a"}, {}}, {{"off", "Made", "b"}, {}}};
    const Findings other{{{"cut-name", "Made", "a"}, {}}, {{"off", "Made", "c"}, {}}};
    EXPECT_TRUE(known.against(QStringLiteral("100"), both).isEmpty());
    EXPECT_TRUE(known.against(QStringLiteral("125"), a).isEmpty());
    EXPECT_EQ(known.against(QStringLiteral("125"), both).size(), 1);
    EXPECT_TRUE(known.against(QStringLiteral("100"), a).front().startsWith(QStringLiteral("gone at 100")));
    EXPECT_EQ(known.against(QStringLiteral("100"), other).size(), 2);
    known.follow(QStringLiteral("100"), other, false);
    EXPECT_EQ(known.lines(), QStringList{lines.front()});
    known.follow(QStringLiteral("125"), {}, false);
    EXPECT_EQ(known.lines(), QStringList{QStringLiteral("cut-name | Made | a | 100")});
    known.follow(QStringLiteral("125"), other, true);
    EXPECT_EQ(known.lines().size(), 2);
}

TEST(KnownFailures, KeepTheirReasons) {
    const QStringList lines{QStringLiteral("unseen | widget | a | 100 | it never opens"),
                            QStringLiteral("unseen | widget | b | 100")};
    const Known known = Known::read(lines);
    EXPECT_EQ(known.lines(), lines);
    EXPECT_EQ(known.withoutReason(QStringLiteral("unseen")), QStringList{"unseen | widget | b"});
}

// What no surface shows is judged by nothing: there must be a reason why it can't be shown.
TEST(KnownFailures, SayWhyNobodySeesThem) {
    EXPECT_TRUE(Known::ofToday().withoutReason(QStringLiteral("unseen")).isEmpty());
}

}  // namespace
}  // namespace wm::ui
