// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <map>
#include <vector>

#include "ui/fields/field_spec.h"

class QBoxLayout;
class QLabel;
class QToolButton;

namespace wm::ui {

class FieldInput;
class FieldList;

/// All fields of one definition, in groups: what is changed often stands open, the rest is folded. It knows
/// nothing of saving; Enter in a field asks for it.
class FieldsEditor : public QWidget {
    Q_OBJECT

  public:
    FieldsEditor(SheetSpec sheet, QWidget* parent);

    /// What can be chosen; asked for again while something else is typed that it hangs on.
    void offer(ChoicesOf choices);
    void show(const Draft& draft);
    /// What was shown, with what was typed since.
    [[nodiscard]] Draft draft() const;
    /// Each fault at its field, in words, its group opened; the keys go to the first. Those that name no
    /// field of this editor come back.
    Faults showFaults(const Faults& faults);
    /// The same while somebody types: the keys and the folds stay as they are.
    void markFaults(const Faults& faults);
    void clearFaults();
    /// The field, with all that stands in it chosen.
    void goTo(const base::Place& place);
    /// A line more in a list; the keys go there.
    void addLine(const std::string& list);
    /// The open groups side by side, or one below the other.
    void setAcross(bool across);

  signals:
    void edited();
    void openAsked(const std::string& list, const QString& value);
    void saveAsked();
    void wentTo(QWidget* field);  ///< the keys were sent to it: it should be in sight

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    struct Group {
        QToolButton* fold = nullptr;  ///< nothing for one that is always open
        QWidget* inside = nullptr;
        QString title{};
        std::vector<std::string> names{};
    };
    QWidget* makeGroup(const GroupSpec& spec);
    void fill(QWidget* inside, const GroupSpec& spec);
    FieldList* makeList(const ListSpec& spec, QWidget* inside);
    void offerAgain(const FieldList* but);
    void doubtTheFigure();
    void reportEdit();
    void showFoldCounts();
    [[nodiscard]] FieldInput* inputAt(const base::Place& place) const;
    void open(const base::Place& place);

    SheetSpec sheet_;
    ChoicesOf choices_;
    Draft shown_;
    QBoxLayout* often_;
    std::map<std::string, FieldInput*> inputs_;
    std::map<std::string, FieldList*> lists_;
    std::vector<Group> groups_;
};

/// The words of a fault where it is seen which line it is about.
QString wordsAtField(base::Error fault);

}  // namespace wm::ui
