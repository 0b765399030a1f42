// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/theme.h"

#include <QApplication>
#include <QStyle>
#include <QStyleFactory>
#include <QToolTip>
#include <utility>

#include "ui/theme/contrast.h"

// The resources sit in a static library: without this the linker leaves them out. It works at the global
// scope alone.
static void takeResourcesAlong() {
    Q_INIT_RESOURCE(witnessmark);
}

namespace wm::ui {

namespace {

QString css(const QColor& color) {
    return QStringLiteral("rgba(%1,%2,%3,%4)")
        .arg(color.red())
        .arg(color.green())
        .arg(color.blue())
        .arg(color.alpha());
}

const char* const kButtons = R"(
QPushButton { background: transparent; color: @ink; border: 1px solid @rule; border-radius: 3px; padding: 4px 12px; }
QPushButton:hover { background: @hover; }
QPushButton:pressed, QPushButton:checked { background: @pressed; color: @ink; }
QPushButton:default { border: 1px solid @ink; }
QPushButton:focus { border: 2px solid @ink; padding: 3px 11px; }
QPushButton:disabled { color: @pencil; border-color: @rule; }
QPushButton:flat { border-color: transparent; }
QPushButton:flat:focus { border: 2px solid @ink; }
QToolButton { background: transparent; border: 1px solid transparent; border-radius: 3px; padding: 4px; }
QToolButton:hover { background: @hover; }
QToolButton:pressed, QToolButton:checked { background: @pressed; }
QToolButton:focus { border: 1px solid @ink; }
)";

const char* const kInputs = R"(
QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox, QComboBox {
  background: @sheet; color: @ink; border: 1px solid @rule; border-bottom: 1px solid @pencil; border-radius: 3px;
  padding: 3px 6px; selection-background-color: @textmark; selection-color: @ink; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QAbstractSpinBox:focus, QComboBox:focus {
  border: 1px solid @ink; border-bottom: 2px solid @ink; padding-bottom: 2px; }
QLineEdit:read-only { background: transparent; border-color: transparent; }
QComboBox::drop-down { border: none; width: 20px; }
QComboBox::down-arrow, QAbstractSpinBox::down-arrow, QDateTimeEdit::down-arrow {
  image: url(:/icons/chevron-down-@shade.svg); width: 9px; height: 9px; }
QAbstractSpinBox { padding-right: 20px; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button { border: none; background: transparent; width: 18px; }
QAbstractSpinBox::up-button:hover, QAbstractSpinBox::down-button:hover { background: @hover; }
QAbstractSpinBox::up-arrow { image: url(:/icons/chevron-up-@shade.svg); width: 9px; height: 9px; }
QComboBox QAbstractItemView { border: 1px solid @rule; background: @sheet; selection-background-color: @pressed;
  selection-color: @ink; }
QCheckBox, QRadioButton { spacing: 6px; }
QCheckBox::indicator, QRadioButton::indicator { width: 12px; height: 12px; border: 1px solid @pencil;
  background: @sheet; }
QCheckBox::indicator { border-radius: 2px; }
QRadioButton::indicator { border-radius: 7px; }
QCheckBox::indicator:checked { image: url(:/icons/check-@shade.svg); }
QRadioButton::indicator:checked { border: 4px solid @ink; width: 6px; height: 6px; }
QCheckBox::indicator:focus, QRadioButton::indicator:focus { border-color: @ink; }
QCheckBox:focus, QRadioButton:focus { text-decoration: underline; }
)";

const char* const kLists = R"(
QAbstractItemView { background: @sheet; color: @ink; border: none; gridline-color: transparent; outline: none;
  alternate-background-color: @sheet; }
QHeaderView { background: transparent; border: none; }
QHeaderView::section { background: transparent; color: @pencil; border: none; border-bottom: 1px solid @rule;
  padding: 4px 8px; text-align: left; font-weight: normal; }
QHeaderView::section:checked { font-weight: normal; }
QTableWidget { gridline-color: @rule; }
QTableWidget::item:selected { background: @pressed; color: @ink; }
QTableWidget::item:focus { border: 1px solid @ink; }
QTableCornerButton::section { background: transparent; border: none; border-bottom: 1px solid @rule; }
)";

const char* const kFrames = R"(
QSplitter::handle { background: @rule; }
QSplitter::handle:horizontal { width: 1px; margin: 0 8px; }
QSplitter::handle:vertical { height: 1px; margin: 8px 0; }
QAbstractScrollArea::corner { background: transparent; border: none; }
QScrollArea { border: none; background: transparent; }
QScrollBar { background: transparent; border: none; }
QScrollBar:vertical { width: 8px; }
QScrollBar:horizontal { height: 8px; }
QScrollBar::handle { background: @pressed; border-radius: 3px; margin: 1px; }
QScrollBar::handle:vertical { min-height: 24px; }
QScrollBar::handle:horizontal { min-width: 24px; }
QScrollBar::handle:hover { background: @pencil; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QMenu { background: @sheet; border: 1px solid @rule; padding: 4px 0; }
QMenu::item { padding: 4px 24px; }
QMenu::item:selected { background: @pressed; color: @ink; }
QMenu::item:disabled { color: @pencil; }
QMenu::separator { height: 1px; background: @rule; margin: 4px 0; }
QToolTip { background: @sheet; color: @ink; border: 1px solid @pencil; padding: 4px; }
QStatusBar::item { border: none; }
QProgressBar { background: @rule; border: none; max-height: 4px; color: transparent; }
QProgressBar::chunk { background: @ink; }
QGroupBox { border: none; border-top: 1px solid @rule; margin-top: 12px; padding-top: 8px; }
QGroupBox::title { subcontrol-origin: margin; left: 0; padding-right: 8px; color: @pencil; }
QTabWidget::pane { border: none; border-top: 1px solid @rule; }
QTabBar::tab { background: transparent; color: @pencil; border: none; padding: 4px 12px; margin-right: 4px; }
QTabBar::tab:selected { color: @ink; border-bottom: 3px solid @ink; }
QTabBar::tab:focus { background: @hover; }
QFrame[frameShape="4"], QFrame[frameShape="5"] { color: @rule; }
.QLabel { qproperty-textFormat: PlainText; }
QLabel[role="title"] { font-size: @titlesizept; }
QLabel[role="section"] { font-size: @sectionsizept; font-weight: 600; }
QLabel[role="note"] { color: @pencil; }
)";

bool desktopIsDark() {
    // A default palette has no say of its own: what the application answers then is the desktop's.
    const QPalette desktop = QApplication::palette();
    return relativeLuminance(desktop.color(QPalette::WindowText)) >
           relativeLuminance(desktop.color(QPalette::Window));
}

}  // namespace

Tokens tokensOf(ThemeChoice choice) {
    switch (choice) {
        case ThemeChoice::Light:
            return lightTokens();
        case ThemeChoice::Dark:
            return darkTokens();
        case ThemeChoice::System:
            break;
    }
    return desktopIsDark() ? darkTokens() : lightTokens();
}

QPalette paletteFrom(const Tokens& tokens) {
    QPalette palette;
    const QColor pressed = laidOver(tokens.rule, tokens.paper);
    palette.setColor(QPalette::Window, tokens.paper);
    palette.setColor(QPalette::WindowText, tokens.ink);
    palette.setColor(QPalette::Base, tokens.sheet);
    palette.setColor(QPalette::AlternateBase, tokens.sheet);
    palette.setColor(QPalette::Text, tokens.ink);
    palette.setColor(QPalette::PlaceholderText, laidOver(tokens.pencil, tokens.sheet));
    palette.setColor(QPalette::Button, tokens.paper);
    palette.setColor(QPalette::ButtonText, tokens.ink);
    palette.setColor(QPalette::BrightText, tokens.over);
    palette.setColor(QPalette::ToolTipBase, tokens.sheet);
    palette.setColor(QPalette::ToolTipText, tokens.ink);
    palette.setColor(QPalette::Highlight, laidOver(tokens.select, tokens.sheet));
    palette.setColor(QPalette::HighlightedText, tokens.ink);
    palette.setColor(QPalette::Link, tokens.ink);
    palette.setColor(QPalette::LinkVisited, tokens.ink);
    palette.setColor(QPalette::Light, tokens.sheet);
    palette.setColor(QPalette::Midlight, tokens.sheet);
    palette.setColor(QPalette::Mid, pressed);
    palette.setColor(QPalette::Dark, laidOver(tokens.pencil, tokens.paper));
    palette.setColor(QPalette::Shadow, tokens.ink);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, laidOver(tokens.pencil, tokens.paper));
    }
    return palette;
}

QString styleSheetFrom(const Tokens& tokens) {
    const double points = QApplication::font().pointSizeF() > 0.0 ? QApplication::font().pointSizeF() : 10.0;
    const std::pair<const char*, QString> words[] = {
        {"@shade", relativeLuminance(tokens.paper) > 0.5 ? QStringLiteral("light") : QStringLiteral("dark")},
        {"@ink", css(tokens.ink)},
        {"@pencil", css(tokens.pencil)},
        {"@rule", css(tokens.rule)},
        {"@sheet", css(tokens.sheet)},
        {"@hover", css(thinned(tokens.ink, 0.06F))},
        {"@pressed", css(thinned(tokens.ink, 0.18F))},
        {"@textmark", css(thinned(tokens.ink, 0.25F))},
        {"@titlesize", QString::number(points * 1.5, 'f', 1)},
        {"@sectionsize", QString::number(points * 1.15, 'f', 1)},
    };
    QString rules = QString::fromLatin1(kButtons) + QString::fromLatin1(kInputs) +
                    QString::fromLatin1(kLists) + QString::fromLatin1(kFrames);
    for (const auto& [word, value] : words) {
        rules.replace(QLatin1String(word), value);
    }
    return rules;
}

void applyTheme(QApplication& application, ThemeChoice choice) {
    takeResourcesAlong();
    application.setStyleSheet(QString());
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    QApplication::setPalette(QPalette());
    const Tokens tokens = tokensOf(choice);
    QApplication::setPalette(paletteFrom(tokens));
    QToolTip::setPalette(paletteFrom(tokens));
    application.setStyleSheet(styleSheetFrom(tokens));
}

}  // namespace wm::ui
