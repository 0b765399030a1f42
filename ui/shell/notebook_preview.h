// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/exchange/starter.h"
#include "core/notebook/read_notebook.h"
#include "core/notebook/take.h"
#include "ui/shell/notebook_memory.h"

namespace wm::ui {

/// How a line stands once its verdict and what the mechanic said of it are put together.
enum class LineState : std::uint8_t {
    GoesIn,   ///< taken
    Known,    ///< in the file already
    Open,     ///< doubtful, and nothing was said
    Cured,    ///< doubtful, goes in as its cure says
    LeftOut,  ///< stays out on his word
    Refused
};

/// A notebook between its file and the garage: read, judged, set right by hand, and agreed to line by line.
/// Writes nothing but what is to be remembered about its header.
class NotebookPreview {
  public:
    NotebookPreview(std::string bytes, std::shared_ptr<const book::Book> book, QSettings& settings);

    /// Takes the cells apart and finds out, or recalls, how they are meant. Empty and NotText: there is
    /// nothing to show; NoColumns: another separator may help.
    std::optional<base::Error> open(const notebook::Progress& progress = {});
    /// Judges every line. The mechanic's answer to a line counts as long as the line has the verdict that was
    /// answered; it sleeps while the verdict is another one. If the notebook can't be judged at all, the
    /// answers are kept.
    void judge(const notebook::Progress& progress = {});
    /// Judges against another book from now on. Call judge() afterwards.
    void setBook(std::shared_ptr<const book::Book> book);

    // What the mechanic sets by hand. Call judge() after each of them.
    std::optional<base::Error> setSeparator(char separator, const notebook::Progress& progress = {});
    void setColumn(std::size_t at, notebook::Column column);
    void setDecimal(char decimal);
    void setDates(notebook::DateForm form);
    void setMeaning(const std::string& text, std::optional<MachineId> machine);
    void setOnlyMachine(std::optional<MachineId> machine) { onlyMachine_ = machine; }
    /// A machine that the file does not know comes with the notebook, and with a schedule: its lines are
    /// judged as if both were there. setMeaning takes that back.
    void setSchedule(const std::string& machine, exchange::Starter starter);
    /// Forgets what was set by hand about this header.
    void forget();

    /// What the lines are judged against: the file, and the machines that come with a schedule.
    [[nodiscard]] const book::Book& book() const { return *book_; }
    /// The file alone.
    [[nodiscard]] const book::Book& file() const { return *file_; }
    /// The schedule that a new machine comes with; empty for any other.
    [[nodiscard]] std::string scheduleOf(const std::string& machine) const;
    /// Names of the new machines that bring lines and come without a schedule.
    [[nodiscard]] std::vector<std::string> withoutSchedule() const;
    [[nodiscard]] const notebook::Table& table() const { return table_; }
    [[nodiscard]] const notebook::Layout& layout() const { return layout_; }
    [[nodiscard]] std::optional<MachineId> onlyMachine() const { return onlyMachine_; }
    [[nodiscard]] bool isSetByHand() const { return !ways_.isEmpty(); }
    /// Nothing while `refusal()` says why.
    [[nodiscard]] const notebook::Notebook* notebook() const { return notebook_ ? &*notebook_ : nullptr; }
    [[nodiscard]] const std::optional<base::Error>& refusal() const { return refusal_; }
    [[nodiscard]] const notebook::Agreement& agreement() const { return agreement_; }

    [[nodiscard]] LineState stateOf(const notebook::Line& line) const;
    /// Accepts the cure of a line, or takes that back. Does nothing for a line without a cure.
    void turnCure(const notebook::Line& line);
    /// Leaves a line out, or takes that back.
    void turnLeftOut(const notebook::Line& line);
    /// Accepts the cures of all lines that raise the same doubts.
    void cureKindOf(const notebook::Line& line);
    void cureAll();

    /// What was agreed to, as a change of the book.
    [[nodiscard]] base::Result<notebook::Taken> take(const std::string& name,
                                                     const notebook::Progress& progress) const;

  private:
    /// What was said of a line, and how it was judged then.
    struct Said {
        notebook::Choice choice = notebook::Choice::Open;
        notebook::Verdict verdict{};
        notebook::Cure cure{};
        std::vector<notebook::Remark> remarks{};
    };
    void say(const notebook::Line& line, notebook::Choice choice);
    [[nodiscard]] notebook::Choice choiceFor(const notebook::Line& line) const;
    void suppose();
    [[nodiscard]] calendar::Date firstDayOf(const std::string& machine) const;
    void findLayout();
    void applyWays();
    void remember();
    [[nodiscard]] std::vector<std::string> machineNames() const;

    std::string bytes_;
    std::shared_ptr<const book::Book> file_;
    std::shared_ptr<const book::Book> book_;
    std::map<std::string, exchange::Starter> schedules_{};  ///< by the name of a machine that is new
    picture::Change added_{};                               ///< what of `book_` is not in `file_`
    QSettings& settings_;
    notebook::Table table_{};
    std::string headerKey_{};
    NotebookWays ways_{};
    notebook::Layout layout_{};
    std::optional<MachineId> onlyMachine_{};
    std::optional<notebook::Notebook> notebook_{};
    std::optional<base::Error> refusal_{};
    std::map<std::size_t, Said> said_{};  ///< by Line::line
    notebook::Agreement agreement_{};     ///< what of it holds for the lines as they are judged now
};

}  // namespace wm::ui
