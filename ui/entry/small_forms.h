// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/entry/entry_form.h"
#include "ui/workbench/guide.h"

namespace wm::ui {

class SnagForm : public EntryForm {
    Q_OBJECT

  public:
    SnagForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    QComboBox* machine_;
    QLineEdit* what_;
    QLineEdit* date_;
    QComboBox* wish_;
    QComboBox* consequence_;
    std::optional<upkeep::Snag> corrected_;
};

class WashForm : public EntryForm {
    Q_OBJECT

  public:
    WashForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    QComboBox* machine_;
    QLineEdit* date_;
    QComboBox* how_;
    QLineEdit* note_;
    std::optional<usage::Wash> corrected_;
};

class CrashForm : public EntryForm {
    Q_OBJECT

  public:
    CrashForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    QComboBox* machine_;
    QLineEdit* date_;
    QLineEdit* note_;
    std::optional<usage::Crash> corrected_;
};

/// Puts off a task or a snag: until a day or a meter's total, with the reason.
class PutOffForm : public EntryForm {
    Q_OBJECT

  public:
    PutOffForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    EntryRequest request_;
    QLineEdit* until_;
    QLineEdit* hours_;
    QLineEdit* reason_;
    QLineEdit* by_;
};

/// Ends a snag that needed no job after all.
class EndSnagForm : public EntryForm {
    Q_OBJECT

  public:
    EndSnagForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    SnagId snag_;
    QLineEdit* date_;
    QLineEdit* how_;
};

class StrikeForm : public EntryForm {
    Q_OBJECT

  public:
    StrikeForm(Workbench& workbench, const EntryRequest& request);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    std::int64_t fact_;
    QLineEdit* reason_;
};

class PersonForm : public EntryForm {
    Q_OBJECT

  public:
    explicit PersonForm(Workbench& workbench);
    tl::expected<store::Verb, Faults> verb() override;

  private:
    QLineEdit* name_;
};

}  // namespace wm::ui
