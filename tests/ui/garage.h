// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QTemporaryDir>
#include <memory>
#include <string>
#include <vector>

#include "ui/workbench/workbench.h"

namespace wm::ui {

/// A garage in a file of its own, gone with the object. Everything in it is invented. Its day is Thursday, 7
/// May 2026.
class Garage {
  public:
    /// Demo is the garage that the program brings along, from demo-db/.
    enum class Fill : std::uint8_t { Empty, OneMachine, Season, Demo };

    explicit Garage(Fill fill);

    [[nodiscard]] Workbench& workbench() { return *workbench_; }
    [[nodiscard]] const book::Book& book() const { return *workbench_->book(); }
    [[nodiscard]] QString path() const { return directory_.filePath(QStringLiteral("garage.witnessmark")); }
    [[nodiscard]] QString in(const QString& name) const { return directory_.filePath(name); }

    [[nodiscard]] MachineId machine(const std::string& name) const;
    [[nodiscard]] TaskId task(const std::string& machine, const std::string& code) const;

    void addMachine(const std::string& name, const std::string& starter, units::Hours past);
    void say(const store::Verb& verb);
    void ride(const std::string& machine, const char* date, int hundredths, usage::OutingKind kind,
              usage::Ground ground, bool washed);
    void record(const std::string& machine, const std::string& code, const char* date,
                upkeep::RecordKind kind = upkeep::RecordKind::Done);

  private:
    void tell(Fill fill);
    void fillDemo();
    void fillSeason();
    void rideTheSeason();
    void fillShelf();
    void fillEvents();
    void fillItems();

    QTemporaryDir directory_;
    std::unique_ptr<Workbench> workbench_;
};

/// "2026-05-07", which must be a date.
calendar::Date day(const char* iso);

}  // namespace wm::ui
