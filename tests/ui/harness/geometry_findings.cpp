// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QGraphicsView>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QScreen>
#include <QScrollBar>
#include <QTabBar>
#include <optional>

#include "tests/ui/harness/findings.h"
#include "tests/ui/harness/painted_text.h"
#include "tests/ui/harness/widgets.h"

namespace wm::ui {

namespace {

constexpr int kPixel = 1;
constexpr int kLeastView = 40;

// Moves a rectangle that can be rolled into view there.
void roll(QRect& at, const QRect& room, bool across, bool down) {
    if (across) {
        at.setWidth(std::min(at.width(), room.width()));
        at.moveLeft(std::clamp(at.left(), room.left(), room.right() + 1 - at.width()));
    }
    if (down) {
        at.setHeight(std::min(at.height(), room.height()));
        at.moveTop(std::clamp(at.top(), room.top(), room.bottom() + 1 - at.height()));
    }
}

// What a widget loses on its way up to its window, in words.
QString lostOf(const QWidget& widget) {
    QRect at = widget.rect();
    for (const QWidget* each = &widget; !each->isWindow(); each = each->parentWidget()) {
        const QWidget* parent = each->parentWidget();
        at.translate(each->pos());
        const auto* area = qobject_cast<const QAbstractScrollArea*>(parent->parentWidget());
        if (area != nullptr && area->viewport() == parent)
            roll(at, parent->rect(), rolls(*area, Qt::Horizontal), rolls(*area, Qt::Vertical));
        const QRect room = parent->rect().adjusted(-kPixel, -kPixel, kPixel, kPixel);
        if (!room.contains(at))
            return QStringLiteral("%1,%2 %3x%4 does not lie in %5x%6 of %7")
                .arg(at.x())
                .arg(at.y())
                .arg(at.width())
                .arg(at.height())
                .arg(parent->width())
                .arg(parent->height())
                .arg(nameOf(*parent));
    }
    return {};
}

bool shows(const QWidget& widget) {
    if (isQtsOwn(widget) || qobject_cast<const QHeaderView*>(&widget) != nullptr ||
        qobject_cast<const QScrollBar*>(&widget) != nullptr)
        return false;
    if (const auto* label = qobject_cast<const QLabel*>(&widget))
        return !label->text().trimmed().isEmpty() || !label->pixmap(Qt::ReturnByValue).isNull();
    return widget.focusPolicy() != Qt::NoFocus || qobject_cast<const QAbstractButton*>(&widget) != nullptr ||
           qobject_cast<const QAbstractScrollArea*>(&widget) != nullptr;
}

bool isSqueezed(const QWidget& widget) {
    if (widget.size().isEmpty() || widget.width() < 4 || widget.height() < 4)
        return true;
    const auto* view = qobject_cast<const QAbstractItemView*>(&widget);
    if (view == nullptr || view->model() == nullptr || view->model()->rowCount() == 0)
        return false;
    return view->viewport()->width() < kLeastView ||
           view->viewport()->height() < view->fontMetrics().height();
}

QString overEdge(const PaintedText& painted) {
    return QStringLiteral(" runs over its edge: %1..%2, %3..%4 in %5..%6, %7..%8")
        .arg(qRound(painted.ink.left()))
        .arg(qRound(painted.ink.right()))
        .arg(qRound(painted.ink.top()))
        .arg(qRound(painted.ink.bottom()))
        .arg(qRound(painted.clip.left()))
        .arg(qRound(painted.clip.right()))
        .arg(qRound(painted.clip.top()))
        .arg(qRound(painted.clip.bottom()));
}

}  // namespace

QString nameOf(const QWidget& widget) {
    if (!widget.objectName().isEmpty() && !isQtsOwn(widget))
        return widget.objectName();
    const QWidget* around = widget.parentWidget();
    while (around != nullptr && (around->objectName().isEmpty() || isQtsOwn(*around)))
        around = around->parentWidget();
    const QString own = classOf(widget);
    return around == nullptr || widget.isWindow() ? own : around->objectName() + QLatin1Char('>') + own;
}

// "2.1 h left", "± 3", "< 12 %": what stands first is a figure, or there is no letter at all. Of "…" nobody
// can tell.
bool isFigure(const QString& words) {
    for (const QChar c : words) {
        if (c.isDigit())
            return true;
        if (c.isLetter())
            return false;
    }
    return words.trimmed() != QStringLiteral("…");
}

Findings offTheWindow(const Surface& surface) {
    Findings found;
    const auto add = [&](const QWidget& widget, const QString& words) {
        found.emplace(Finding{QStringLiteral("off"), surface.name, nameOf(widget)}, words);
    };
    if (surface.root->isWindow()) {
        const QRect screen = surface.root->screen()->availableGeometry();
        if (!screen.contains(surface.root->frameGeometry()))
            add(*surface.root, QStringLiteral("reaches beyond the screen: %1x%2 on %3x%4")
                                   .arg(surface.root->width())
                                   .arg(surface.root->height())
                                   .arg(screen.width())
                                   .arg(screen.height()));
    }
    for (const auto* widget : seenUnder(surface.root)) {
        if (!shows(*widget))
            continue;
        const QString lost = lostOf(*widget);
        if (!lost.isEmpty())
            add(*widget, lost);
        else if (isSqueezed(*widget))
            add(*widget, QStringLiteral("squeezed to %1x%2").arg(widget->width()).arg(widget->height()));
    }
    return found;
}

Findings cutTexts(const Surface& surface) {
    Findings found;
    for (const PaintedText& painted : paintedTexts(surface.root)) {
        const bool elided = isElided(painted);
        if (!elided && !isClipped(painted))
            continue;
        QString where = nameOf(*painted.by);
        if (painted.index.isValid())
            where += QStringLiteral("[%1]").arg(painted.index.column());
        const QString whole = painted.index.isValid() ? painted.index.data().toString() : QString();
        const bool figure = isFigure(whole.isEmpty() ? painted.text : whole);
        found.emplace(
            Finding{figure ? QStringLiteral("cut-figure") : QStringLiteral("cut-name"), surface.name, where},
            QStringLiteral("\"%1\"%2").arg(painted.text, elided ? QString() : overEdge(painted)));
    }
    return found;
}

}  // namespace wm::ui
