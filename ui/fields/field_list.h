// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>
#include <vector>

#include "ui/fields/field_spec.h"

class QLayout;
class QPushButton;
class QToolButton;

namespace wm::ui {

class FieldInput;

/// A list within a definition, a line of fields for each entry: limits, parts, access steps ... A line is
/// taken out by its cross and added by the button below.
class FieldList : public QWidget {
    Q_OBJECT

  public:
    using RowChoices = std::function<Choices(const std::string& field, const DraftRow& row)>;

    /// Its parts are named under `prefix` ("task").
    FieldList(ListSpec spec, const QString& prefix, QWidget* parent);

    [[nodiscard]] const std::string& name() const { return spec_.name; }
    [[nodiscard]] const std::vector<DraftRow>& rows() const { return rows_; }
    /// Does not emit edited(). The fields stay as they are where they show the same already.
    void setRows(const std::vector<DraftRow>& rows);
    void offer(RowChoices choices);
    /// Asks again for what hangs on something else: on another field of its line, or on another list.
    void offerAgain();
    /// The field of a line, or nullptr.
    [[nodiscard]] FieldInput* field(std::size_t row, const std::string& column) const;
    void clearFaults();
    /// One more, with the keys in its first field, which it answers.
    FieldInput* addLine();

  signals:
    void edited();
    void openAsked(const QString& value);

  private:
    struct Line {
        QWidget* box = nullptr;
        std::vector<FieldInput*> inputs{};
        std::vector<QWidget*> keys{};  ///< the one that opens what it names, if there is one, and its cross
    };
    void takeOut(std::size_t at);
    void take(std::size_t at, const FieldSpec& column, const FieldInput& input);
    void doubtTheFigure(std::size_t row);
    void build();
    void setOrder();
    Line makeLine(std::size_t at);
    FieldInput* makeInput(std::size_t at, const FieldSpec& column, QWidget* box);
    void layOut(const Line& line, bool isFirst);
    void layOutSentence(const Line& line);
    QToolButton* makeKey(const QString& name, const QString& sign, QWidget* box);
    [[nodiscard]] bool hasLabels() const { return spec_.columns.size() > 1 && !spec_.isSentence; }
    /// What all parts of this list begin with: "task-limits-".
    [[nodiscard]] QString named(const QString& rest) const;

    ListSpec spec_;
    QString prefix_;
    RowChoices choices_;
    std::vector<DraftRow> rows_;
    std::vector<Line> lines_;
    QLayout* place_;
    QPushButton* add_;
};

}  // namespace wm::ui
