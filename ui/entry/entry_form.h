// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <QWidget>
#include <map>
#include <optional>
#include <vector>

#include "core/store/store.h"
#include "ui/entry/choice.h"
#include "ui/entry/day_words.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QVBoxLayout;

namespace wm::ui {

class Flow;
class Workbench;

/// Everything that was wrong with what stands in a form.
using Faults = std::vector<base::Error>;

/// Collects what fields answer, so that a form can name all its faults at once.
class Answers {
  public:
    template <class T>
    T operator()(base::Result<T> answer) {
        if (answer)
            return *std::move(answer);
        faults_.push_back(answer.error());
        return T{};
    }
    void fault(base::Error error) { faults_.push_back(std::move(error)); }
    [[nodiscard]] bool isFine() const { return faults_.empty(); }
    [[nodiscard]] Faults faults() && { return std::move(faults_); }
    /// `verb`, or the faults if there are any.
    tl::expected<store::Verb, Faults> answer(store::Verb verb) &&;

  private:
    Faults faults_;
};

/// One entry in the strip: a few fields in a row and the verb that Enter says. Fields have the names that the
/// verb's errors use, so that a refusal finds its place. A form holds ids, never pointers into a book.
class EntryForm : public QWidget {
    Q_OBJECT

  public:
    EntryForm(Workbench& workbench, const QString& title, QWidget* parent = nullptr);

    [[nodiscard]] const QString& title() const { return title_; }
    /// What the form is about, if not a request says so: a form that was left comes back for that alone.
    [[nodiscard]] const QString& subject() const { return subject_; }
    /// What Enter says, from the fields as they stand.
    virtual tl::expected<store::Verb, Faults> verb() = 0;
    /// The same as a correction, if this form puts an earlier fact right: strike and re-entry in one.
    tl::expected<store::Verb, Faults> saying();
    /// From now on this form puts `fact` right and asks for the reason.
    void correct(std::int64_t fact);
    /// Faults stand at their fields, in words; one that names no field of this form stands below the row.
    virtual void showFaults(const Faults& faults);
    void showTrouble(const QString& words);
    void clearFaults();

    /// True once anything was typed or changed by hand.
    [[nodiscard]] bool isTouched() const { return touched_; }
    /// Where the keys go first: the first field that wants an answer.
    [[nodiscard]] QWidget* firstField() const;

  protected:
    /// How a machine or an item came.
    enum class Past : std::uint8_t { New, Used };

    QLineEdit* addText(const QString& name, const QString& label, const QString& value, int letters);
    /// Offers every choice that contains what is typed; anything else may be typed too.
    QLineEdit* addSuggested(const QString& name, const QString& label, const QString& value,
                            const QStringList& choices, int letters);
    /// A day, as day_words.h reads it; the label says which day was understood.
    QLineEdit* addDay(const QString& name, const QString& label, const QString& value, Lean lean);
    template <class T>
    QComboBox* addChoice(const QString& name, const QString& label,
                         const std::vector<Choice<std::type_identity_t<T>>>& choices, T current) {
        QComboBox* box = addBox(name, label);
        addChoices(*box, choices);
        chooseIn(*box, current);
        return box;
    }
    /// Without a line yet.
    QComboBox* addBox(const QString& name, const QString& label);
    QCheckBox* addTick(const QString& name, const QString& label, bool isTicked);
    QComboBox* addMachine(std::optional<MachineId> chosen);
    QLineEdit* addPerson(const QString& name, const QString& label, std::optional<PersonId> person);
    /// If a fault asks whether the meter has stopped: a tick for the answer.
    void askOfMeter(const Faults& faults);
    [[nodiscard]] bool meterIsRight() const;
    /// A line of words below the row.
    QLabel* addNote(const QString& words);
    /// Words in the row, before the ticks that they are about.
    QLabel* addCaption(const QString& words);
    void remove(QWidget* field);
    void startAt(QWidget* field) { first_ = field; }
    void setSubject(const QString& subject) { subject_ = subject; }
    void suggest(QLineEdit* field, const QStringList& choices);

    [[nodiscard]] std::string typed(const QLineEdit* field) const;
    /// Empty reads as nothing.
    [[nodiscard]] base::Result<std::optional<units::Hours>> hoursIn(const QLineEdit* field) const;
    [[nodiscard]] base::Result<std::int64_t> countIn(const QLineEdit* field, std::int64_t most) const;
    [[nodiscard]] base::Result<calendar::Date> dayIn(const QLineEdit* field, Lean lean) const;
    [[nodiscard]] base::Result<std::optional<calendar::Date>> dayOrNothingIn(const QLineEdit* field,
                                                                             Lean lean) const;
    [[nodiscard]] base::Result<std::optional<PersonId>> personIn(const QLineEdit* field) const;
    [[nodiscard]] std::optional<MachineId> machineIn(const QComboBox* field) const;
    [[nodiscard]] base::Result<MachineId> needMachineIn(const QComboBox* field) const;
    [[nodiscard]] Workbench& workbench() const { return workbench_; }
    [[nodiscard]] const book::Book& book() const;

  private:
    struct Field {
        QWidget* box = nullptr;
        QWidget* input = nullptr;
        QLabel* label = nullptr;
        QLabel* fault = nullptr;
    };
    void place(const QString& name, const QString& label, QWidget* input);
    [[nodiscard]] Field* fieldFor(const base::Place& place);

    Workbench& workbench_;
    QString title_;
    QString subject_;
    Flow* row_;
    QVBoxLayout* lines_;
    QLabel* trouble_;
    std::vector<Field> fields_;
    QWidget* first_ = nullptr;
    bool touched_ = false;
    std::optional<std::int64_t> corrects_;
    QLineEdit* reason_ = nullptr;
    QCheckBox* meterIsRight_ = nullptr;
    int inputHeight_ = 0;
};

}  // namespace wm::ui
