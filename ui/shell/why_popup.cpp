// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/why_popup.h"

#include <QAbstractItemView>
#include <QGridLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QScreen>
#include <QTreeWidget>
#include <algorithm>

#include "ui/theme/plain.h"
#include "ui/theme/row_delegate.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kWidest = 420;
constexpr int kWidestTree = 620;
constexpr int kLettersOfTree = 88;  ///< in larger letters it grows with them
constexpr int kMostLines = 16;      ///< of the tree before it scrolls

void addNode(const WhyNode& node, QTreeWidgetItem* into) {
    auto* item = new QTreeWidgetItem(into, {node.what, node.much});
    item->setToolTip(1, asTip(node.much));
    for (const WhyNode& child : node.children)
        addNode(child, item);
}

// What is seen of a derivation before anything is opened.
void speak(const std::vector<WhyNode>& nodes, QString& spoken) {
    for (const WhyNode& node : nodes) {
        spoken += QStringLiteral(". %1: %2").arg(node.what, node.much);
        if (node.open)
            speak(node.children, spoken);
    }
}

// An item opens only once it is in the tree.
void openAsTold(const std::vector<WhyNode>& nodes, QTreeWidgetItem* of) {
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        auto* item = of->child(static_cast<int>(i));
        item->setExpanded(nodes[i].open);
        openAsTold(nodes[i].children, item);
    }
}

bool movesInTree(int key) {
    switch (key) {
        case Qt::Key_Up:
        case Qt::Key_Down:
        case Qt::Key_Left:
        case Qt::Key_Right:
        case Qt::Key_Home:
        case Qt::Key_End:
        case Qt::Key_PageUp:
        case Qt::Key_PageDown:
        case Qt::Key_Plus:
        case Qt::Key_Minus:
        case Qt::Key_Asterisk:
            return true;
        default:
            return false;
    }
}

}  // namespace

WhyPopup::WhyPopup(const Why& why, QWidget* parent) : QFrame(parent, Qt::Popup) {
    setObjectName(QStringLiteral("why"));
    setAttribute(Qt::WA_DeleteOnClose);
    setFixedWidth(why.tree.empty()
                      ? kWidest
                      : std::max(kWidestTree, kLettersOfTree * fontMetrics().averageCharWidth()));
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(kSpaceGroup, kSpaceLine, kSpaceGroup, kSpaceLine);
    grid->setHorizontalSpacing(kSpaceLine);
    grid->setVerticalSpacing(kSpaceHair);
    grid->setColumnStretch(1, 1);
    auto* title = plainWords(this, why.title);
    title->setProperty("role", QStringLiteral("section"));
    grid->addWidget(title, 0, 0, 1, 2);
    if (!why.tree.empty())
        addTree(why, grid);
    int row = 2;
    QString spoken = why.title;
    speak(why.tree, spoken);
    for (const auto& [what, much] : why.lines) {
        auto* left = plainWords(this, what);
        left->setWordWrap(false);
        left->setProperty("role", QStringLiteral("note"));
        grid->addWidget(left, row, 0, Qt::AlignTop);
        grid->addWidget(plainWords(this, much), row, 1);
        spoken += QStringLiteral(". %1: %2").arg(what, much);
        ++row;
    }
    if (!why.footnote.isEmpty()) {
        auto* foot = plainWords(this, why.footnote);
        foot->setProperty("role", QStringLiteral("note"));
        grid->addWidget(foot, row, 0, 1, 2);
    }
    setAccessibleName(spoken);
}

void WhyPopup::addTree(const Why& why, QGridLayout* grid) {
    tree_ = new QTreeWidget(this);
    tree_->setObjectName(QStringLiteral("derivation"));
    tree_->setAccessibleName(tr("derivation"));
    tree_->setColumnCount(2);
    tree_->setHeaderHidden(true);
    tree_->setFrameShape(QFrame::NoFrame);
    dressRows(*tree_);
    tree_->header()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
    tree_->header()->setStretchLastSection(true);
    for (const WhyNode& node : why.tree)
        addNode(node, tree_->invisibleRootItem());
    openAsTold(why.tree, tree_->invisibleRootItem());
    tree_->setCurrentItem(tree_->topLevelItem(0));
    tree_->installEventFilter(this);
    connect(tree_, &QTreeWidget::itemExpanded, this, &WhyPopup::fitTree);
    connect(tree_, &QTreeWidget::itemCollapsed, this, &WhyPopup::fitTree);
    grid->addWidget(tree_, 1, 0, 1, 2);
    fitTree();
}

// As high as its lines, up to a point; beyond that it scrolls.
void WhyPopup::fitTree() {
    int lines = 0;
    for (QTreeWidgetItemIterator at(tree_); *at != nullptr && lines < kMostLines; ++at) {
        const auto* parent = (*at)->parent();
        bool seen = true;
        for (; parent != nullptr; parent = parent->parent())
            seen = seen && parent->isExpanded();
        lines += seen ? 1 : 0;
    }
    const int line = std::max(tree_->sizeHintForRow(0), tree_->fontMetrics().height());
    tree_->setFixedHeight(lines * line + 2 * tree_->frameWidth());
    if (isVisible())
        adjustSize();
}

bool WhyPopup::eventFilter(QObject* watched, QEvent* event) {
    if (watched == tree_ && event->type() == QEvent::KeyPress &&
        !movesInTree(static_cast<QKeyEvent*>(event)->key())) {
        close();
        return true;
    }
    return QFrame::eventFilter(watched, event);
}

void WhyPopup::showBeside(const QWidget* at) {
    adjustSize();
    const int wide = width();
    resize(wide, heightForWidth(wide) > 0 ? heightForWidth(wide) : sizeHint().height());
    QPoint corner = at->mapToGlobal(QPoint(at->width() / 2, at->height()));
    if (const auto* view = qobject_cast<const QAbstractItemView*>(at);
        view != nullptr && view->currentIndex().isValid())
        corner = view->viewport()->mapToGlobal(view->visualRect(view->currentIndex()).bottomLeft()) +
                 QPoint(kSpaceSection, kSpaceHair);
    const QRect room = at->screen()->availableGeometry();
    move(std::clamp(corner.x(), room.left(), std::max(room.left(), room.right() - width())),
         std::clamp(corner.y(), room.top(), std::max(room.top(), room.bottom() - height())));
    show();
    if (tree_ != nullptr)
        tree_->setFocus();
    else
        setFocus();
}

void WhyPopup::keyPressEvent(QKeyEvent*) {
    close();
}

void WhyPopup::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens tokens = tokensFor(palette());
    painter.fillRect(rect(), tokens.sheet);
    painter.setPen(tokens.pencil);
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

}  // namespace wm::ui
