// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "ui/pages/page.h"
#include "ui/pages/weekend/step_fields.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QScrollArea;
class QTimer;

namespace wm::ui {

class FieldsEditor;
class Outcome;
class RowTable;

/// Where access steps are written and changed: the list, the order of work to reach what lies under the
/// chosen one, and its fields. What a change does to plans, or why it is refused, stands below before it is
/// saved; what is not saved stays with its step.
class StepsPage : public Page {
    Q_OBJECT

  public:
    explicit StepsPage(const PageTools& tools, QWidget* parent);
    void refresh() override;
    void aimAt(const Aim& aim) override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;
    [[nodiscard]] QStringList unsaved() const override;

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void nameParts();
    void layOut();
    void connectParts();
    void connectKeys();
    void showRows();
    void showStep();
    void showHead();
    void showOrder(const book::Book& book, MachineId machine, const std::string& code,
                   const weekend::Plan* before);
    [[nodiscard]] const weekend::StepVersion* chosenVersion() const;
    void keep(const Draft& draft);
    void foretell();
    void refuse(const Draft& draft, const Faults& faults);
    void goToFirst();

    bool save();
    void saveAndReturn();
    void dropDraft();
    void addStep();
    void addOrder();
    void switchOnOrOff();
    void openByCode(const QString& code);

    StepDrafts drafts_;
    std::optional<std::int64_t> chosen_;  ///< the step whose fields are shown
    bool isBlamed_ = false;               ///< it was refused as it stood: blanks are told too
    std::optional<StepId> aimed_;         ///< the one to choose at the next refresh
    QLineEdit* find_;
    QPushButton* new_;
    QLabel* empty_;
    QWidget* list_;
    RowTable* table_;
    RowTable* order_;
    QWidget* parts_ = nullptr;
    QWidget* side_;
    QLabel* name_;
    QLabel* state_;
    QPushButton* switch_;
    QScrollArea* scroll_;
    FieldsEditor* editor_;
    Outcome* outcome_;
    QTimer* settle_;  ///< the look ahead waits for a pause in typing
};

}  // namespace wm::ui
