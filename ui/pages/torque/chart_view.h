// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/definitions/chart.h"
#include "core/sheet/torque_card.h"
#include "ui/pages/torque/torque_view.h"

class QComboBox;
class QLineEdit;
class QPushButton;
class QTableWidget;

namespace wm::ui {

/// A machine's whole torque chart, typed or pasted into a grid. Every cell is checked as it is typed, a bad
/// one says what is wrong; nothing is written until all are right and the mechanic agrees, and undo takes all
/// of it back at once. The same chart prints as a card for the wall.
class ChartView : public TorqueView {
    Q_OBJECT

  public:
    ChartView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    [[nodiscard]] QStringList unsaved() const override;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void layOut();
    void paste();
    void check();
    void enterAll();
    void clear();
    void saveCard();
    void printCard();
    [[nodiscard]] std::optional<sheet::TorqueCard> card();
    [[nodiscard]] std::vector<definitions::ChartRow> rows() const;
    void put(int at, const std::vector<definitions::ChartRow>& rows);
    void growTo(int rows);
    void showFaults(const std::vector<definitions::ChartFault>& faults);
    /// Which other machines of the model the rows would go to as well, and the choice to keep them here.
    void offerSharing(const definitions::Chart& chart);
    [[nodiscard]] bool isForThisOneOnly() const;
    /// The same with the model years that were typed, if any. Nothing if those can't be read: the words under
    /// the grid then say why.
    [[nodiscard]] std::optional<std::vector<fastening::JointVersion>> withYears(
        std::vector<fastening::JointVersion> versions);

    QLabel* head_;
    QTableWidget* grid_;
    QLabel* words_;
    QWidget* holds_;  ///< seen where rows are shared with other machines
    QLabel* sharedWith_;
    QComboBox* sharing_;  ///< for all of the model, or for this machine only
    QLineEdit* yearFrom_;
    QLineEdit* yearTo_;
    QPushButton* paste_;
    QPushButton* enter_;
    QPushButton* clear_;
    QPushButton* card_;
    QPushButton* print_;
    bool settling_ = false;
    std::optional<MachineId> machine_;
};

}  // namespace wm::ui
