// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/entry_strip.h"

#include <QAbstractButton>
#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/drawing/device_space.h"
#include "ui/entry/entry_form.h"
#include "ui/entry/form_table.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr int kTitleWidth = 104;

// A stack as tall as the form that is seen, not as the tallest one.
class SnugStack : public QStackedWidget {
  public:
    using QStackedWidget::QStackedWidget;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override {
        const auto* form = currentWidget();
        return form == nullptr ? 0 : form->layout()->totalHeightForWidth(width);
    }
    [[nodiscard]] QSize sizeHint() const override { return {400, heightForWidth(std::max(width(), 400))}; }
    [[nodiscard]] QSize minimumSizeHint() const override {
        return {400, heightForWidth(std::max(width(), 400))};
    }

  protected:
    void resizeEvent(QResizeEvent* event) override {
        QStackedWidget::resizeEvent(event);
        updateGeometry();
    }
};

}  // namespace

EntryStrip::EntryStrip(Workbench& workbench, QWidget* parent) : QWidget(parent), workbench_(workbench) {
    setObjectName(QStringLiteral("entry-strip"));
    title_ = new QLabel(this);
    title_->setProperty("role", QStringLiteral("section"));
    title_->setFixedWidth(kTitleWidth);
    title_->setWordWrap(true);
    forms_ = new SnugStack(this);
    saveButton_ = new QPushButton(tr("Save (Enter)"), this);
    saveButton_->setObjectName(QStringLiteral("save-entry"));
    leaveButton_ = new QPushButton(tr("Leave (Esc)"), this);
    leaveButton_->setObjectName(QStringLiteral("leave-entry"));
    leaveButton_->setFlat(true);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(kSpaceGroup, kSpaceClose, kSpaceGroup, kSpaceClose);
    row->setSpacing(kSpaceLine);
    row->addWidget(title_, 0, Qt::AlignTop);
    row->addWidget(forms_, 1);
    auto* buttons = new QVBoxLayout;
    buttons->setSpacing(kSpaceHair);
    // At the bottom, which stays where it is when a form grows: else Leave would come to where Save was
    // clicked.
    buttons->addStretch();
    buttons->addWidget(saveButton_);
    buttons->addWidget(leaveButton_);
    row->addLayout(buttons);
    connect(saveButton_, &QPushButton::clicked, this, &EntryStrip::save);
    connect(leaveButton_, &QPushButton::clicked, this, &EntryStrip::leave);
    connect(&workbench_, &Workbench::fileChanged, this, &EntryStrip::dropAll);
    qApp->installEventFilter(this);
    hide();
}

EntryForm* EntryStrip::current() const {
    return qobject_cast<EntryForm*>(forms_->currentWidget());
}

void EntryStrip::openFor(const EntryRequest& request) {
    if (!workbench_.hasFile())
        return;
    const QString key = draftKey(request);
    const auto at = open_.find(key);
    if (at != open_.end() && at->second->isTouched()) {
        at->second->clearFaults();  // of the last try; what stands there now has not been tried
        return show(at->second);
    }
    if (at != open_.end())
        drop(at->second);
    auto* form = makeForm(workbench_, request).release();
    open_.emplace(key, form);
    show(form);
}

void EntryStrip::openForm(EntryForm* form) {
    const QString key = QStringLiteral("page/%1/%2").arg(form->metaObject()->className(), form->subject());
    const auto at = open_.find(key);
    if (at != open_.end() && at->second->isTouched()) {
        delete form;
        at->second->clearFaults();
        return show(at->second);
    }
    if (at != open_.end())
        drop(at->second);
    open_.emplace(key, form);
    show(form);
}

void EntryStrip::show(EntryForm* form) {
    if (!isOpen())
        before_ = QApplication::focusWidget();
    if (forms_->indexOf(form) < 0)
        forms_->addWidget(form);
    forms_->setCurrentWidget(form);
    title_->setText(form->title());
    QWidget::show();
    forms_->updateGeometry();
    if (auto* field = form->firstField()) {
        field->setFocus(Qt::ShortcutFocusReason);
        if (auto* edit = qobject_cast<QLineEdit*>(field))
            edit->selectAll();
    }
}

void EntryStrip::save() {
    auto* form = current();
    if (form == nullptr)
        return;
    form->clearFaults();
    const auto verb = form->saying();
    if (!verb)
        return form->showFaults(verb.error());
    const auto change = workbench_.attempt(*verb);
    if (!change) {
        const auto& error = change.error();
        if (error.kind == store::ApplyError::Kind::Refused)
            return form->showFaults({error.error});
        return form->showTrouble(wordsFor(error));
    }
    drop(form);
    leave();
    emit written(*change);
}

void EntryStrip::leave() {
    if (!isOpen())
        return;
    auto* form = current();
    const bool keep = form != nullptr && form->isTouched();
    hide();
    // Where the keys were may be gone; hiding has then sent them anywhere, and the window says where they go.
    if (before_ && before_->isVisible())
        before_->setFocus(Qt::OtherFocusReason);
    else if (auto* stray = QApplication::focusWidget())
        stray->clearFocus();
    if (!keep && form != nullptr)
        drop(form);
    emit left();
}

void EntryStrip::drop(EntryForm* form) {
    for (auto at = open_.begin(); at != open_.end(); ++at)
        if (at->second == form) {
            open_.erase(at);
            break;
        }
    forms_->removeWidget(form);
    form->hide();
    form->deleteLater();
}

void EntryStrip::dropAll() {
    while (!open_.empty())
        drop(open_.begin()->second);
    hide();
}

QStringList EntryStrip::unsaved() const {
    QStringList titles;
    for (const auto& [key, form] : open_)
        if (form->isTouched())
            titles << form->title();
    return titles;
}

bool EntryStrip::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress || !isOpen())
        return false;
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool isEnter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    const auto* widget = qobject_cast<QWidget*>(watched);
    if (!isEnter || widget == nullptr || current() == nullptr || !current()->isAncestorOf(widget) ||
        widget->window() != window())
        return false;
    if (qobject_cast<const QAbstractButton*>(widget) != nullptr && key->modifiers() == Qt::NoModifier &&
        widget->inherits("QPushButton"))
        return false;
    save();
    return true;
}

void EntryStrip::paintEvent(QPaintEvent* event) {
    QWidget::paintEvent(event);
    QPainter painter(this);
    const Tokens tokens = tokensFor(palette());
    painter.fillRect(rect(), tokens.sheet);
    paintHorizontal(painter, 0, width(), 0, tokens.ink);
}

}  // namespace wm::ui
