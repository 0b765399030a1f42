// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/fields/field_spec.h"

class QLabel;

namespace wm::ui {

/// One field: its label, what is typed, chosen or ticked in it, and below it what is wrong with that.
class FieldInput : public QWidget {
    Q_OBJECT

  public:
    FieldInput(const FieldSpec& spec, const QString& objectName, QWidget* parent);

    [[nodiscard]] QString value() const;
    /// Does not emit edited(). A value that can't be chosen is offered as it is, so that nothing is lost.
    void setValue(const QString& value);
    void offer(const Choices& choices);
    void setSpoken(const QString& name);
    /// In a list the labels stand over the first line alone.
    void showLabel(bool shown);
    /// Nothing = no fault.
    void showFault(const QString& words);
    [[nodiscard]] QWidget* control() const { return control_; }

  signals:
    void edited();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    QWidget* makeControl(const FieldSpec& spec);
    QWidget* makeChoice(bool isSearched);

    InputKind kind_;
    QLabel* label_;
    QLabel* fault_;
    QWidget* control_;
    Choices offered_;
};

}  // namespace wm::ui
