// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/long_work.h"

#include <QLabel>
#include <QProgressDialog>
#include <QPushButton>
#include <algorithm>

#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr int kShownAfterMs = 300;
constexpr int kParts = 1000;

}  // namespace

LongWork::LongWork(const QString& words, QWidget* window)
    : shown_(std::make_unique<QProgressDialog>(QString(), QString(), 0, kParts, window)) {
    shown_->setObjectName(QStringLiteral("long-work"));
    auto* label = new QLabel(words, shown_.get());
    label->setTextFormat(Qt::PlainText);
    shown_->setLabel(label);
    auto* stop = new QPushButton(ui::tr("Stop"), shown_.get());
    stop->setObjectName(QStringLiteral("long-work-stop"));
    shown_->setCancelButton(stop);
    shown_->setWindowModality(Qt::WindowModal);
    shown_->setMinimumDuration(kShownAfterMs);
    shown_->setAutoClose(false);
    shown_->setAutoReset(false);
    // Closed by Escape it would only hide.
    QObject::connect(shown_.get(), &QDialog::rejected, shown_.get(), &QProgressDialog::cancel);
    shown_->setValue(0);
}

LongWork::~LongWork() = default;

bool LongWork::goesOn(std::size_t done, std::size_t of) {
    // At its beginning the bar would count the time until it is shown anew, with each part of the work.
    const auto part = of == 0 ? 0U : std::min(done, of) * kParts / of;
    shown_->setValue(std::max(1, static_cast<int>(part)));
    return !shown_->wasCanceled();
}

std::function<bool(std::size_t, std::size_t)> LongWork::steps() {
    return [this](std::size_t done, std::size_t of) { return goesOn(done, of); };
}

void LongWork::next(const QString& words) {
    shown_->setLabelText(words);
}

void LongWork::last(const QString& words) {
    shown_->setLabelText(words);
    shown_->setCancelButton(nullptr);
    shown_->repaint();
}

}  // namespace wm::ui
