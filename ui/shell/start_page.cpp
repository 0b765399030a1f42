// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/start_page.h"

#include <QAction>
#include <QApplication>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/drawing/glyph.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kLineWidth = 560;
constexpr int kMark = 96;

class LargeMark : public QWidget {
  public:
    explicit LargeMark(QWidget* parent) : QWidget(parent) { setFixedSize(kMark, kMark); }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintMark(painter, rect(), MarkState{MarkState::Kind::InHand}, tokensFor(palette()));
    }
};

QPushButton* buttonFor(QAction* action, QWidget* parent) {
    auto* button = new QPushButton(QString(action->text()).remove(QLatin1Char('&')), parent);
    button->setObjectName(QStringLiteral("start-") + action->objectName());
    button->setToolTip(action->toolTip());
    QObject::connect(button, &QPushButton::clicked, action, &QAction::trigger);
    return button;
}

}  // namespace

StartPage::StartPage(const std::vector<QAction*>& withoutFile, const std::vector<QAction*>& withFile,
                     QWidget* parent)
    : QWidget(parent), title_(new QLabel(this)), sentence_(new QLabel(this)) {
    setObjectName(QStringLiteral("start"));
    title_->setProperty("role", QStringLiteral("title"));
    sentence_->setWordWrap(true);
    sentence_->setFixedWidth(kLineWidth);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(kSpaceLine);
    for (auto* action : withoutFile) {
        fileButtons_.push_back(buttonFor(action, this));
        buttons->addWidget(fileButtons_.back());
    }
    for (auto* action : withFile) {
        garageButtons_.push_back(buttonFor(action, this));
        buttons->addWidget(garageButtons_.back());
    }
    buttons->addStretch();
    recentTitle_ = new QLabel(tr("opened lately"), this);
    recentTitle_->setProperty("role", QStringLiteral("note"));
    recent_ = new QVBoxLayout;
    recent_->setSpacing(kSpaceHair);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpacePage * 3, kSpacePage * 2, kSpacePage, kSpacePage);
    lines->setSpacing(kSpaceGroup);
    lines->addStretch(1);
    lines->addWidget(new LargeMark(this));
    lines->addWidget(title_);
    lines->addWidget(sentence_);
    lines->addLayout(buttons);
    lines->addSpacing(kSpaceGroup);
    lines->addWidget(recentTitle_);
    lines->addLayout(recent_);
    lines->addStretch(2);
}

void StartPage::refresh(bool hasFile, const QStringList& recent) {
    title_->setText(hasFile ? tr("An empty garage") : tr("Witnessmark"));
    sentence_->setText(hasFile ? tr("Begin with a machine: its name, what it has behind it, and a schedule "
                                    "of common practice to work from. Or take over a notebook that was kept "
                                    "in a spreadsheet; its machines come along.")
                               : tr("Keeps what was done to each machine, and says what is due, what has "
                                    "slipped and what nobody ever marked."));
    // Hiding the button that was pressed would send the keys elsewhere; they belong on the next step.
    const auto* focus = QApplication::focusWidget();
    const bool hadFocus = focus != nullptr && isAncestorOf(focus);
    for (auto* button : fileButtons_)
        button->setVisible(!hasFile);
    for (auto* button : garageButtons_)
        button->setVisible(hasFile);
    auto* first = hasFile ? garageButtons_.front() : fileButtons_.front();
    first->setDefault(true);
    setFocusProxy(first);
    if (hadFocus && first->isVisible())
        first->setFocus(Qt::OtherFocusReason);
    while (auto* item = recent_->takeAt(0)) {
        item->widget()->deleteLater();
        delete item;
    }
    recentTitle_->setVisible(!hasFile && !recent.isEmpty());
    if (hasFile)
        return;
    for (const QString& path : recent) {
        auto* button = new QPushButton(asCaption(QFileInfo(path).fileName()), this);
        button->setFlat(true);
        button->setToolTip(asTip(path));
        button->setObjectName(QStringLiteral("recent"));
        connect(button, &QPushButton::clicked, this, [this, path] { emit fileAsked(path); });
        recent_->addWidget(button, 0, Qt::AlignLeft);
    }
}

}  // namespace wm::ui
