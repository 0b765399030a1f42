// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <string_view>

#include "core/book/book.h"
#include "core/fastening/figure.h"

class QLabel;

namespace wm::ui {

class BigFigure;
class OrderPicture;

/// The answer to a question at the stand: the figure large, the same in the unit that was asked for, what
/// else has to be known, the order drawn, source, wrench, and who did it last.
class JointAnswer : public QWidget {
    Q_OBJECT

  public:
    explicit JointAnswer(QWidget* parent);
    /// `unit`: a symbol of units::convert that was named in the question, or empty.
    void show(const book::Book& book, const fastening::Figure& figure, std::string_view unit);

  private:
    void showJoint(const book::Book& book, const fastening::JointVersion& joint);

    QLabel* name_;
    QLabel* about_;
    QLabel* handTight_;
    BigFigure* figure_;
    QLabel* printed_;
    QLabel* notes_;
    OrderPicture* order_;
    QLabel* source_;
    QLabel* wrench_;
    QLabel* last_;
};

}  // namespace wm::ui
