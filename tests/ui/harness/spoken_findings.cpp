// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAccessible>
#include <QCheckBox>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPlainTextEdit>
#include <QRadioButton>
#include <QTabBar>
#include <QTableView>
#include <QTextDocument>
#include <QToolButton>
#include <QTreeView>
#include <set>

#include "tests/ui/harness/findings.h"
#include "tests/ui/harness/widgets.h"

namespace wm::ui {

namespace {

using Role = QAccessible::Role;

// What a control of this class may say that it is.
std::set<Role> rolesFor(const QWidget& widget) {
    if (qobject_cast<const QCheckBox*>(&widget) != nullptr)
        return {Role::CheckBox};
    if (qobject_cast<const QRadioButton*>(&widget) != nullptr)
        return {Role::RadioButton};
    if (qobject_cast<const QAbstractButton*>(&widget) != nullptr)
        return {Role::Button,  Role::ButtonMenu,  Role::ButtonDropDown, Role::CheckBox,
                Role::PageTab, Role::RadioButton, Role::PushButton};
    if (qobject_cast<const QLineEdit*>(&widget) != nullptr ||
        qobject_cast<const QPlainTextEdit*>(&widget) != nullptr)
        return {Role::EditableText, Role::StaticText};
    if (qobject_cast<const QComboBox*>(&widget) != nullptr)
        return {Role::ComboBox};
    if (qobject_cast<const QTabBar*>(&widget) != nullptr)
        return {Role::PageTabList};
    if (qobject_cast<const QTreeView*>(&widget) != nullptr)
        return {Role::Tree};
    if (qobject_cast<const QTableView*>(&widget) != nullptr)
        return {Role::Table};
    if (qobject_cast<const QAbstractItemView*>(&widget) != nullptr)
        return {Role::List, Role::Table, Role::Tree};
    return {};
}

bool says(const QString& name) {
    return std::any_of(name.begin(), name.end(), [](QChar c) { return c.isLetterOrNumber(); });
}

// Under Linux a box of choices is called by what is chosen, and named by the label that belongs to it.
QString nameSpoken(const QWidget& widget, const QAccessibleInterface& spoken) {
    if (qobject_cast<const QComboBox*>(&widget) == nullptr)
        return spoken.text(QAccessible::Name);
    QString name = widget.accessibleName();
    for (const auto& [other, relation] : spoken.relations(QAccessible::Label))
        name += other->text(QAccessible::Name);
    return name;
}

QString shownBy(const QWidget& widget) {
    if (const auto* label = qobject_cast<const QLabel*>(&widget))
        return label->text();
    if (const auto* button = qobject_cast<const QAbstractButton*>(&widget))
        return button->text();
    return {};
}

bool losesAmpersand(const QString& words, const QString& mark) {
    if (!words.contains(mark))
        return false;
    // "&&" is shown as "&"; a single one marks a letter and is not shown.
    QString rest = words;
    return rest.remove(QStringLiteral("&&")).contains(QLatin1Char('&'));
}

// A tip has no format of its own: the user's text must stand in it escaped.
bool isMarkupTip(const QString& tip, const QString& mark) {
    if (tip.contains(mark))
        return true;
    if (!Qt::mightBeRichText(tip))
        return false;
    QTextDocument shown;
    shown.setHtml(tip);
    const QString escaped = mark.toHtmlEscaped().mid(1, 7);  // the same escaped once more
    return tip.contains(escaped) && !shown.toPlainText().contains(mark);
}

}  // namespace

Findings unspoken(const Surface& surface) {
    Findings found;
    const auto add = [&](const char* check, const QWidget& widget, const QString& words) {
        found.emplace(Finding{QLatin1String(check), surface.name, nameOf(widget)}, words);
    };
    for (auto* widget : seenUnder(surface.root)) {
        if (!isControl(*widget))
            continue;
        const auto* spoken = QAccessible::queryAccessibleInterface(widget);
        if (spoken == nullptr) {
            add("nameless", *widget, QStringLiteral("is not there for who can't see"));
            continue;
        }
        if (!says(nameSpoken(*widget, *spoken)))
            add("nameless", *widget, QStringLiteral("\"%1\"").arg(shownBy(*widget)));
        const auto allowed = rolesFor(*widget);
        const bool isPlain =
            spoken->role() == Role::Client || spoken->role() == Role::NoRole || spoken->role() == Role::Pane;
        if (allowed.empty() ? isPlain : !allowed.contains(spoken->role()))
            add("role", *widget, QStringLiteral("says it is 0x%1").arg(spoken->role(), 0, 16));
    }
    return found;
}

Findings markup(const Surface& surface, const QString& mark) {
    Findings found;
    const auto add = [&](const QWidget& widget, const QString& words) {
        found.emplace(Finding{QStringLiteral("markup"), surface.name, nameOf(widget)}, words);
    };
    for (auto* widget : seenUnder(surface.root)) {
        if (const auto* label = qobject_cast<const QLabel*>(widget)) {
            if (label->text().contains(mark) && label->textFormat() != Qt::PlainText)
                add(*widget, label->text());
            if (label->textFormat() == Qt::PlainText && label->buddy() != nullptr &&
                losesAmpersand(label->text(), mark))
                add(*widget, label->text());
        }
        const auto* button = qobject_cast<const QAbstractButton*>(widget);
        if (button != nullptr && losesAmpersand(button->text(), mark))
            add(*widget, button->text());
        if (const auto* tabs = qobject_cast<const QTabBar*>(widget))
            for (int at = 0; at < tabs->count(); ++at)
                if (losesAmpersand(tabs->tabText(at), mark))
                    add(*widget, tabs->tabText(at));
        if (qobject_cast<const QMenu*>(widget) != nullptr)
            for (const auto* action : widget->actions())
                if (losesAmpersand(action->text(), mark))
                    add(*widget, action->text());
    }
    for (const Tip& tip : tipsOf(surface))
        if (isMarkupTip(tip.text, mark))
            found.emplace(
                Finding{QStringLiteral("markup"), surface.name, nameOf(*tip.at) + QStringLiteral(" tip")},
                tip.text);
    return found;
}

}  // namespace wm::ui
