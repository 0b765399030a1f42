// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QBoxLayout>
#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QGroupBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QRadioButton>
#include <QSpinBox>
#include <QSplitter>
#include <QTabWidget>
#include <QTableWidget>
#include <QTest>
#include <QToolButton>
#include <QTreeWidget>

#include "tests/ui/drawing/reference_image.h"
#include "ui/theme/row_delegate.h"
#include "ui/theme/theme.h"
#include "ui/theme/type.h"

namespace wm::ui {
namespace {

QLabel* label(const QString& text, const char* role) {
    auto* made = new QLabel(text);
    made->setProperty("role", QString::fromLatin1(role));
    return made;
}

QLayout* buttonRow() {
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceClose);
    auto* wanted = new QPushButton(QStringLiteral("Record job"));
    wanted->setDefault(true);
    auto* off = new QPushButton(QStringLiteral("Print"));
    off->setEnabled(false);
    auto* tool = new QToolButton;
    tool->setText(QStringLiteral("Undo"));
    auto* pressed = new QPushButton(QStringLiteral("Plan"));
    pressed->setCheckable(true);
    pressed->setChecked(true);
    for (QWidget* widget :
         {static_cast<QWidget*>(wanted), static_cast<QWidget*>(new QPushButton(QStringLiteral("Put off"))),
          static_cast<QWidget*>(off), static_cast<QWidget*>(pressed), static_cast<QWidget*>(tool)}) {
        row->addWidget(widget);
    }
    row->addStretch();
    return row;
}

QLayout* inputRow(QLineEdit* focused) {
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceClose);
    row->addWidget(focused);
    auto* empty = new QLineEdit;
    empty->setPlaceholderText(QStringLiteral("find…"));
    row->addWidget(empty);
    auto* list = new QComboBox;
    list->addItems({QStringLiteral("Heron 250"), QStringLiteral("Sorrel 450")});
    row->addWidget(list);
    row->addWidget(new QDateEdit(QDate(2026, 5, 7)));
    row->addWidget(new QSpinBox);
    auto* check = new QCheckBox(QStringLiteral("pressure washer"));
    check->setChecked(true);
    row->addWidget(check);
    row->addWidget(new QCheckBox(QStringLiteral("mud")));
    auto* radio = new QRadioButton(QStringLiteral("race"));
    radio->setChecked(true);
    row->addWidget(radio);
    return row;
}

QTableWidget* table() {
    auto* made = new QTableWidget(12, 3);
    made->setHorizontalHeaderLabels({QStringLiteral("job"), QStringLiteral("left"), QStringLiteral("by")});
    dressRows(*made);
    for (int row = 0; row < 12; ++row) {
        made->setItem(row, 0, new QTableWidgetItem(QStringLiteral("fork oil %1").arg(row)));
        made->setItem(row, 1, new QTableWidgetItem(QStringLiteral("2.1 h")));
        made->setItem(row, 2, new QTableWidgetItem(QStringLiteral("16 May")));
    }
    made->setCurrentCell(1, 0);
    return made;
}

QTreeWidget* tree() {
    auto* made = new QTreeWidget;
    dressRows(*made);
    made->setHeaderLabels({QStringLiteral("fitted"), QStringLiteral("life")});
    auto* engine = new QTreeWidgetItem(made, {QStringLiteral("engine"), QStringLiteral("61.3 h")});
    auto* piston = new QTreeWidgetItem(engine, {QStringLiteral("piston"), QStringLiteral("12.0 h")});
    new QTreeWidgetItem(made, {QStringLiteral("fork"), QStringLiteral("9.5 h")});
    made->expandAll();
    made->setCurrentItem(piston);
    return made;
}

TEST(ThemeGallery, DressesEveryWidgetForTheEye) {
    for (const auto choice : {ThemeChoice::Light, ThemeChoice::Dark}) {
        applyTheme(*qApp, choice);
        QWidget window;
        auto* column = new QVBoxLayout(&window);
        column->setContentsMargins(kSpaceSection, kSpaceGroup, kSpaceSection, kSpaceGroup);
        column->setSpacing(kSpaceLine);
        column->addWidget(label(QStringLiteral("Heron 250"), "title"));
        column->addWidget(label(QStringLiteral("Before Saturday 16 May"), "section"));
        column->addWidget(label(QStringLiteral("nothing due before: 71 %"), "note"));
        column->addLayout(buttonRow());
        auto* focused = new QLineEdit(QStringLiteral("fork oil"));
        column->addLayout(inputRow(focused));
        auto* progress = new QProgressBar;
        progress->setValue(40);
        column->addWidget(progress);
        auto* lists = new QSplitter;
        lists->addWidget(table());
        lists->addWidget(tree());
        auto* pages = new QTabWidget;
        pages->addTab(new QPlainTextEdit(QStringLiteral("weeping fork seal")), QStringLiteral("notes"));
        pages->addTab(new QGroupBox(QStringLiteral("work window")), QStringLiteral("window"));
        lists->addWidget(pages);
        lists->addWidget(new QGroupBox(QStringLiteral("work window")));
        column->addWidget(lists, 1);
        window.resize(1000, 460);
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        focused->setFocus();
        const QString name = choice == ThemeChoice::Light ? QStringLiteral("light") : QStringLiteral("dark");
        const QString path = pictureFolder() + QStringLiteral("theme-") + name + QStringLiteral(".png");
        EXPECT_TRUE(window.grab().save(path)) << path.toStdString();
    }
    applyTheme(*qApp, ThemeChoice::Light);
}

}  // namespace
}  // namespace wm::ui
