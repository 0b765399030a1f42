// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QButtonGroup>
#include <QLabel>
#include <QMenu>
#include <QRegularExpression>
#include <QShortcut>
#include <QTabBar>
#include <QTest>
#include <QToolButton>
#include <set>

#include "tests/ui/harness/findings.h"
#include "tests/ui/harness/widgets.h"

namespace wm::ui {

namespace {

constexpr int kMostTabs = 250;

// "F12", "Ctrl+B", "Del", and letters that stand alone: "C correct"; a newton is none.
QStringList keysNamedIn(const QString& words) {
    static const QRegularExpression kKeys(QStringLiteral(
        R"((?:(?:Ctrl|Alt|Shift)\+)*(?:\bF\d{1,2}\b|\bEnter\b|\bSpace\b|\bDel\b|\bIns\b|\bInsert\b|\bEsc\b)|(?:(?:Ctrl|Alt|Shift)\+)+\w+|(?<![\w+])(?<!\d )(?<!\d\x{A0})[B-HJ-Z](?![\w.+'\x{B7}]))"));
    QStringList keys;
    for (auto at = kKeys.globalMatch(words); at.hasNext();)
        keys << at.next().captured().replace(QStringLiteral("Insert"), QStringLiteral("Ins"));
    return keys;
}

QWidgetList controlsIn(const Surface& surface) {
    QWidgetList all;
    for (auto* widget : seenUnder(surface.root))
        if (widget->isEnabled() && isControl(*widget))
            all << widget;
    return all;
}

// Every key that stands on something to click, in the whole window; also on what is hidden now, if asked for.
std::set<QString> keysToClick(const QWidget& window, bool withHidden = false) {
    std::set<QString> keys;
    const auto take = [&keys](const QString& words) {
        for (const QString& key : keysNamedIn(words))
            keys.insert(key);
    };
    for (const auto* button : window.findChildren<QAbstractButton*>()) {
        if (!button->isVisible() && !withHidden)
            continue;
        take(button->text() + QLatin1Char(' ') + button->toolTip() + QLatin1Char(' ') +
             button->shortcut().toString());
        const auto* tool = qobject_cast<const QToolButton*>(button);
        if (tool == nullptr)
            continue;
        if (tool->defaultAction() != nullptr)
            take(tool->defaultAction()->shortcut().toString());
        if (tool->menu() != nullptr)
            for (const auto* action : tool->menu()->actions())
                take(action->shortcut().toString());
    }
    for (const auto* tabs : window.findChildren<QTabBar*>())
        if (tabs->isVisible())
            take(tabs->toolTip());
    return keys;
}

// Of the window's own: neither in a menu that a button opens, nor on a button, which would name its key.
std::vector<const QAction*> actionsWithoutClick(const QWidget& window) {
    std::set<const QAction*> inMenus;
    for (const auto* button : window.findChildren<QToolButton*>())
        if (button->menu() != nullptr && button->isVisible())
            for (const auto* action : button->menu()->actions())
                inMenus.insert(action);
    const auto keys = keysToClick(window, true);
    std::vector<const QAction*> without;
    for (const auto* action : window.actions())
        if (!inMenus.contains(action) && !keys.contains(action->shortcut().toString()))
            without.push_back(action);
    return without;
}

bool isHit(const QWidget& control) {
    const QRegion seen = control.visibleRegion();
    if (seen.isEmpty())
        return true;  // rolled out of view, or off the window, which is said elsewhere
    const QPoint middle = seen.begin()->center();
    const auto* at = control.window()->childAt(control.mapTo(control.window(), middle));
    return at == &control || control.isAncestorOf(at);
}

bool hasKeyOfItsOwn(const QWidget& control) {
    const auto* button = qobject_cast<const QAbstractButton*>(&control);
    if (button == nullptr)
        return false;
    const auto* tool = qobject_cast<const QToolButton*>(button);
    return !button->shortcut().isEmpty() || !keysNamedIn(button->text()).isEmpty() ||
           !keysNamedIn(button->toolTip()).isEmpty() ||
           (tool != nullptr && tool->defaultAction() != nullptr &&
            !tool->defaultAction()->shortcut().isEmpty());
}

// Of a group of buttons Tab reaches one, and the arrows the others.
bool isGroupedWith(const QWidget& control, const std::set<const QWidget*>& reached) {
    const auto* button = qobject_cast<const QAbstractButton*>(&control);
    if (button == nullptr || button->group() == nullptr)
        return false;
    const auto mates = button->group()->buttons();
    return std::any_of(mates.begin(), mates.end(), [&](const auto* mate) { return reached.contains(mate); });
}

// Where one press of Tab leads; out of a grid from its last cell, as it goes from cell to cell.
const QWidget* tabFrom(QWidget* from) {
    QTest::keyClick(from, Qt::Key_Tab);
    auto* view = qobject_cast<QAbstractItemView*>(QApplication::focusWidget());
    if (view != from || view == nullptr || !view->tabKeyNavigation() || view->model() == nullptr)
        return QApplication::focusWidget();
    const auto* model = view->model();
    view->setCurrentIndex(model->index(model->rowCount() - 1, model->columnCount() - 1));
    QTest::keyClick(view, Qt::Key_Tab);
    return QApplication::focusWidget();
}

}  // namespace

Findings notByMouse(const Surface& surface) {
    Findings found;
    const auto add = [&](const QString& where, const QString& words) {
        found.emplace(Finding{QStringLiteral("mouse"), surface.name, where}, words);
    };
    for (const auto* control : controlsIn(surface))
        if (!isHit(*control))
            add(nameOf(*control), QStringLiteral("something lies over it"));
    const auto clickable = keysToClick(*surface.root->window());
    for (const auto* label : surface.root->findChildren<QLabel*>()) {
        if (!label->isVisible())
            continue;
        for (const QString& key : keysNamedIn(label->text()))
            if (!clickable.contains(key))
                add(nameOf(*label), QStringLiteral("%1 is a key alone: \"%2\"").arg(key, label->text()));
    }
    // The button of a key may show itself only when there is something to do. The cross of a dialog is its
    // Esc.
    auto sometimes = keysToClick(*surface.root->window(), true);
    if (surface.kind == Surface::Kind::Dialog)
        sometimes.insert(QStringLiteral("Esc"));
    for (const auto* shortcut : surface.root->findChildren<QShortcut*>()) {
        const auto* on = qobject_cast<const QWidget*>(shortcut->parent());
        const QString key = shortcut->key().toString();
        if (on != nullptr && on->isVisible() && shortcut->isEnabled() && !sometimes.contains(key))
            add(nameOf(*on) + QLatin1Char(' ') + key, QStringLiteral("a key that nothing clickable bears"));
    }
    if (surface.kind == Surface::Kind::Window)
        for (const auto* action : actionsWithoutClick(*surface.root))
            add(action->objectName(), QStringLiteral("an action that nothing clickable has"));
    return found;
}

Findings notByKeys(const Surface& surface) {
    Findings found;
    const auto add = [&](const QWidget& widget, const QString& words) {
        found.emplace(Finding{QStringLiteral("keys"), surface.name, nameOf(widget)}, words);
    };
    if (surface.kind == Surface::Kind::Menu)
        return found;  // the arrows go through a menu, and a popup closes with any key
    QWidget* const before = QApplication::focusWidget();
    if (before == nullptr) {
        if (!controlsIn(surface).isEmpty())
            add(*surface.root, QStringLiteral("the keys are nowhere"));
        return found;
    }
    const QWidgetList controls = controlsIn(surface);
    std::set<const QWidget*> reached{before};
    for (int tabs = 0; tabs < kMostTabs; ++tabs) {
        const QWidget* const from = QApplication::focusWidget();
        const QWidget* const to = tabFrom(QApplication::focusWidget());
        if (to == before || (to == from && controls.size() == 1))
            break;
        if (to == from || to == nullptr) {
            add(*from, QStringLiteral("Tab does not leave it"));
            before->setFocus();
            return found;  // what lies behind it is not reached either
        }
        reached.insert(to);
    }
    for (const auto* control : controls) {
        const auto* proxy = control->focusProxy();
        const bool reaches = reached.contains(control) || (proxy != nullptr && reached.contains(proxy)) ||
                             isGroupedWith(*control, reached) || hasKeyOfItsOwn(*control);
        if (!reaches)
            add(*control, QStringLiteral("neither Tab nor a key of its own"));
    }
    before->setFocus();
    return found;
}

}  // namespace wm::ui
