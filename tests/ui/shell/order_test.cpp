// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Tab goes the way the eye goes, and whatever can be used has a name, on every page and in every entry.
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QComboBox>
#include <QLineEdit>
#include <set>

#include "tests/ui/window.h"
#include "ui/entry/entry_strip.h"
#include "ui/shell/page_table.h"

namespace wm::ui {
namespace {

class Order : public WindowTest {
  protected:
    static bool isForUse(const QWidget* widget) {
        return qobject_cast<const QAbstractButton*>(widget) != nullptr ||
               qobject_cast<const QLineEdit*>(widget) != nullptr ||
               qobject_cast<const QComboBox*>(widget) != nullptr ||
               qobject_cast<const QAbstractItemView*>(widget) != nullptr;
    }
    void expectNames(const QString& where) {
        for (const auto* widget : window_->findChildren<QWidget*>()) {
            if (!widget->isVisible() || !isForUse(widget) ||
                qobject_cast<QComboBox*>(widget->parentWidget()) != nullptr ||
                widget->objectName().startsWith(QStringLiteral("qt_")) ||
                widget->focusPolicy() == Qt::NoFocus)
                continue;
            const auto* button = qobject_cast<const QAbstractButton*>(widget);
            EXPECT_FALSE(widget->objectName().isEmpty())
                << where.toStdString() << ": " << widget->metaObject()->className();
            EXPECT_FALSE(widget->accessibleName().isEmpty() &&
                         (button == nullptr || button->text().isEmpty()))
                << where.toStdString() << ": " << widget->objectName().toStdString();
        }
    }
    /// The widgets that Tab reaches from `first` inside `whole`, until it comes round or leaves.
    static std::vector<QWidget*> chain(QWidget* first, const QWidget* whole) {
        std::vector<QWidget*> found;
        std::set<QWidget*> seen;
        for (QWidget* at = first; seen.insert(at).second; at = at->nextInFocusChain())
            if (whole->isAncestorOf(at) && at->isVisible() && at->isEnabled() &&
                (at->focusPolicy() & Qt::TabFocus) != 0 && at->focusProxy() == nullptr)
                found.push_back(at);
        return found;
    }
};

TEST_F(Order, EverythingHasAName) {
    openOn(Garage::Fill::Season);
    for (const auto& page : pageTable()) {
        window_->goTo(page.id);
        expectNames(page.name);
    }
    for (int kind = 0; kind <= static_cast<int>(EntryKind::Machine); ++kind) {
        EntryRequest request;
        request.kind = static_cast<EntryKind>(kind);
        request.machine = garage_->machine("Heron 250");
        request.task = garage_->task("Heron 250", "linkage-grease");
        request.item = garage_->book().ledger().all<items::Item>().front().id;
        window_->enter(request);
        expectNames(QStringLiteral("entry %1").arg(kind));
    }
}

TEST_F(Order, TabFollowsTheRowsOfAnEntry) {
    openOn(Garage::Fill::Season);
    for (int kind = 0; kind <= static_cast<int>(EntryKind::Machine); ++kind) {
        EntryRequest request;
        request.kind = static_cast<EntryKind>(kind);
        request.machine = garage_->machine("Sorrel 450");
        request.task = garage_->task("Sorrel 450", "valve-clearance");
        request.item = garage_->book().ledger().all<items::Item>().front().id;
        window_->enter(request);
        QApplication::processEvents();
        const auto* strip = child<EntryStrip>("entry-strip");
        const auto* form = QApplication::focusWidget()->parentWidget()->parentWidget();
        const QWidget* before = nullptr;
        const auto widgets = chain(form->nextInFocusChain(), form);
        EXPECT_EQ(form->parentWidget()->parentWidget(), strip) << "entry " << kind;
        EXPECT_GE(widgets.size(), 1U) << "entry " << kind;
        for (const auto* widget : widgets) {
            const QPoint at = widget->mapTo(strip, QPoint());
            if (before != nullptr) {
                const QPoint was = before->mapTo(strip, QPoint());
                const bool sameRow = std::abs(at.y() - was.y()) < 12;
                EXPECT_TRUE(sameRow ? at.x() > was.x() : at.y() > was.y())
                    << "entry " << kind << ": " << before->objectName().toStdString() << " then "
                    << widget->objectName().toStdString();
            }
            before = widget;
        }
    }
}

}  // namespace
}  // namespace wm::ui
