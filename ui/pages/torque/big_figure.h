// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>
#include <cstdint>

namespace wm::ui {

/// A figure that is read from a metre away, or at arm's length, with its unit and, behind one that nobody has
/// confirmed, the wedge. A long one gets smaller rather than cut off.
class BigFigure : public QWidget {
    Q_OBJECT

  public:
    enum class From : std::uint8_t { AMetre, ArmsLength };
    explicit BigFigure(QWidget* parent, From from = From::AMetre);
    void setFigure(const QString& digits, const QString& unit, bool unconfirmed);
    [[nodiscard]] QString text() const { return digits_ + QChar(0x00A0) + unit_; }
    [[nodiscard]] bool isUnconfirmed() const { return unconfirmed_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    [[nodiscard]] QFont fontAt(double factor) const;
    [[nodiscard]] double widthAt(double factor) const;

    double times_;  ///< the large figure
    QString digits_;
    QString unit_;
    bool unconfirmed_ = false;
};

}  // namespace wm::ui
