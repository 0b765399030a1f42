// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string_view>

#include "core/fastening/figure.h"
#include "core/fastening/rows.h"
#include "ui/pages/page.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace wm::fastening {
class Lookup;
}

namespace wm::ui {

class GenericPanel;
class JointAnswer;
class JointForm;
class RowTable;

/// The search line over every figure at the stand, and the answer: large, with its condition, order, source
/// and wrench. The keys stay in the line: arrows choose, Enter goes to what is missing, Escape begins anew.
class TorquePage : public Page {
    Q_OBJECT

  public:
    TorquePage(const PageTools& tools, QWidget* parent);
    ~TorquePage() override;
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;
    [[nodiscard]] std::optional<MachineId> machineHere() const override;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void layOut();
    void connectParts();
    void search();
    void fitColumns();
    void showChosen();
    void showJob(const fastening::JointVersion& joint);
    void mark(fastening::MarkKind kind);
    [[nodiscard]] const fastening::Lookup& lookup();
    [[nodiscard]] const fastening::Figure* chosenFigure() const;
    [[nodiscard]] const fastening::JointVersion* chosenJoint() const;
    void choose(JointId joint);

    // Leafing through the manual and through a job.
    void takeUp();
    void confirmFigure();
    void goThroughJob(int by);
    void countConfirmed();

    std::unique_ptr<fastening::Lookup> lookup_;  ///< of the book now; made when it is first asked
    std::string_view unit_;                      ///< that was named in the search line
    QLineEdit* find_;
    QLabel* progress_;
    QLabel* handTight_;  ///< what is open, above the figures
    RowTable* joints_;
    QLabel* empty_;
    JointAnswer* answer_;
    GenericPanel* generic_;
    QLabel* job_;
    QWidget* jobKeys_;
    RowTable* marks_;
    QPushButton* confirm_;
    QPushButton* loosen_;
    QPushButton* checked_;
    JointForm* form_;
};

}  // namespace wm::ui
