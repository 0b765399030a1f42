// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/book/book.h"
#include "ui/pages/tasks/baseline_answers.h"

namespace wm::ui {

/// What is asked about the tasks that nobody has recorded, and what is answered so far: which questions are
/// seen, which are folded away, and for which of them a day is being typed. The view shows it and brings the
/// keys; nothing is written here.
class BaselineAsking {
  public:
    /// Why what is typed can't be said of what is asked.
    struct Fault {
        enum class Kind : std::uint8_t { None, Refused, HoursNotMeant, NothingTyped, NeedsDay };
        Kind kind = Kind::None;
        base::Error error{};  ///< Refused
    };
    /// What became of an answer to one or several questions.
    struct Taken {
        Said said = Said::Unknown;
        TaskId first{};
        TaskId last{};
        bool alone = false;    ///< it was said of one task
        std::size_t left = 0;  ///< tasks of which it can't be said
    };
    struct Shown {
        std::vector<TaskId> tasks{};  ///< the most pressing first
        int folded = 0;
    };
    /// What becomes of a day that is half typed when the keys go elsewhere.
    enum class Leaving : std::uint8_t { Nothing, Drop, Take, Refuse };

    /// The questions about this machine. What was answered of a task that has a record by now is forgotten;
    /// what was answered of other machines waits for them.
    void refresh(const book::Book& book, std::optional<MachineId> machine);
    [[nodiscard]] std::optional<MachineId> machine() const { return machine_; }
    [[nodiscard]] const std::vector<TaskId>& tasks() const { return tasks_; }
    [[nodiscard]] const BaselineAnswers& answers() const;
    [[nodiscard]] const BaselineAnswer* answerTo(TaskId task) const;
    /// The first few open questions and all that are answered, until the rest is unfolded.
    [[nodiscard]] Shown shown(const book::Book& book) const;
    void unfold() { unfolded_ = true; }
    /// The next of these without an answer, round from `after`; `after` itself if all have one.
    [[nodiscard]] std::int64_t nextOpen(const std::vector<std::int64_t>& shown, TaskId after) const;

    /// Begins to answer for the marked tasks. True: a day has to be typed for it first; false: take().
    bool begin(Said said, const std::vector<TaskId>& marked);
    /// Goes back to the day of an answer that was given; nothing without one.
    void goBackTo(TaskId task);
    [[nodiscard]] bool isAsking() const { return !askedOf_.empty(); }
    [[nodiscard]] Said asked() const { return asked_; }
    [[nodiscard]] const std::vector<TaskId>& askedOf() const { return askedOf_; }
    /// What was typed for it before.
    [[nodiscard]] QString typedBefore() const;
    [[nodiscard]] Fault faultIn(const book::Book& book, const QString& typed) const;
    [[nodiscard]] Leaving leaving(const book::Book& book, const QString& typed) const;
    /// Answers what is asked. Said of several, it leaves alone what has an answer already.
    Taken take(const book::Book& book, const QString& typed);
    void drop() { askedOf_.clear(); }

    /// Answers of all machines that could be written, and what is half typed.
    [[nodiscard]] std::size_t unsaved(const QString& typed) const;
    [[nodiscard]] auto lines(calendar::Date today) const { return linesOf(answers(), tasks_, today); }
    /// The answers of this machine are given up.
    void clear();
    /// They are written. What nobody knows can't be, and is not asked again as long as the window is open.
    void clearWritten();
    void fold() { unfolded_ = false; }
    /// Another file.
    void reset() { *this = {}; }

  private:
    std::map<MachineId, BaselineAnswers> answers_{};  ///< begun and not written
    std::optional<MachineId> machine_{};
    std::vector<TaskId> tasks_{};  ///< of that machine without a record, ranked
    bool unfolded_ = false;
    Said asked_ = Said::Serviced;    ///< what is being said
    std::vector<TaskId> askedOf_{};  ///< and of which tasks; empty while nothing is asked
};

}  // namespace wm::ui
