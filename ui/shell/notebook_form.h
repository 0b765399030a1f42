// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "core/notebook/layout.h"
#include "core/notebook/matching.h"

class QComboBox;
class QLabel;
class QPushButton;

namespace wm::ui {

class Flow;
class NotebookPreview;

/// How a notebook is understood: separator, decimal mark, dates, what each column holds, which machine each
/// name means. Everything can be changed; what was changed goes out as a signal and comes back by refresh().
class NotebookForm : public QWidget {
    Q_OBJECT

  public:
    /// `schedules` are the names of those that a new machine may come with.
    NotebookForm(const NotebookPreview& preview, QStringList schedules, QWidget* parent = nullptr);
    void refresh();

  signals:
    void separatorSaid(char separator);
    void decimalSaid(char decimal);
    void datesSaid(notebook::DateForm form);
    void columnSaid(std::size_t at, notebook::Column column);
    void meaningSaid(const QString& text, std::optional<MachineId> machine);
    void onlyMachineSaid(MachineId machine);
    /// `schedule` is empty for a new machine without one.
    void newMachineSaid(const QString& text, const QString& schedule);
    void asFoundAsked();

  private:
    /// A choice below its name, as an entry's fields stand.
    QComboBox* place(Flow* into, const QString& name, const QString& label, const QString& tip);
    void clear();
    void showForms();
    void showColumns();
    void showMachines();
    void showOnlyMachine();
    void showSpelling(std::size_t at, const notebook::NameSpelling& spelling);

    /// A new machine of the notebook, without a schedule or with one of them; its place in `choice`.
    int offerNew(QComboBox* choice, const QString& machine, const QString& chosen) const;

    const NotebookPreview& preview_;
    QStringList schedules_;
    Flow* forms_;
    Flow* columns_;
    Flow* machines_;
    QLabel* columnsTitle_;
    QLabel* machinesTitle_;
    QLabel* byHand_;
    QPushButton* asFound_;
    std::vector<QWidget*> boxes_;
};

}  // namespace wm::ui
