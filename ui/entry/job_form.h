// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <utility>
#include <vector>

#include "ui/entry/entry_form.h"
#include "ui/workbench/guide.h"

namespace wm::ui {

/// A job done. Once its task is named, the row grows the parts that it uses, a field for each measurement and
/// a tick for each joint that it opens; a joint left unticked becomes hand-tight.
class JobForm : public EntryForm {
    Q_OBJECT

  public:
    JobForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    void fill(const verbs::JobDraft& draft);
    void followMachine();
    void followTask();
    void followDay();
    void askFor(const upkeep::TaskVersion& task);
    void forgetTask();
    [[nodiscard]] QStringList jobNames() const;
    [[nodiscard]] const upkeep::TaskVersion* taskTyped() const;
    [[nodiscard]] const upkeep::Snag* snagTyped() const;
    /// The job that is put right, while its task or snag is still the one it had.
    [[nodiscard]] const verbs::JobDraft* sameJob() const;
    void readSubject(Answers& read, verbs::JobDraft& draft) const;
    void readMeasures(Answers& read, upkeep::Record& record) const;
    void readAnswers(verbs::JobDraft& draft) const;
    void askWhere(const upkeep::TaskVersion& task);
    void readSending(Answers& read, verbs::JobDraft& draft) const;

    QComboBox* machine_;
    QLineEdit* task_;
    QLineEdit* date_;
    QLineEdit* meter_;
    QComboBox* kind_;
    QLineEdit* uses_;
    QLineEdit* minutes_;
    QLineEdit* by_;
    QLineEdit* note_;
    QLabel* says_ = nullptr;
    std::optional<TaskId> asksFor_;
    std::vector<QLineEdit*> measures_;
    std::vector<std::pair<JointId, QCheckBox*>> joints_;
    QLineEdit* tool_ = nullptr;  ///< what the joints were torqued with
    QCheckBox* extra_ = nullptr;
    QCheckBox* sends_ = nullptr;  ///< of a task that sends something out
    QLineEdit* where_ = nullptr;
    QLineEdit* back_ = nullptr;
    std::vector<std::string> steps_;  ///< access steps that the task needs off
    std::optional<verbs::JobDraft> corrected_;
    QString correctedName_;  ///< of its task or snag, as the form shows it
};

}  // namespace wm::ui
