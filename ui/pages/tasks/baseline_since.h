// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/verbs/baseline_verb.h"

class QLineEdit;

namespace wm::ui {

/// How many washes and mud days there were since the jobs of before, said of all of them at once. Left empty
/// it says nothing.
class BaselineSince : public QWidget {
    Q_OBJECT

  public:
    explicit BaselineSince(QWidget* parent);

    [[nodiscard]] base::Result<verbs::SinceThen> said() const;
    [[nodiscard]] bool isEmpty() const;
    void clear();
    void setReadOnly(bool readOnly);

  signals:
    void changed();
    void entered();

  private:
    QLineEdit* field(const char* name, const QString& words);

    QLineEdit* washes_;
    QLineEdit* mud_;
};

}  // namespace wm::ui
