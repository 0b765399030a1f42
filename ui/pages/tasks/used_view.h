// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/items/evidence.h"
#include "core/verbs/past_verb.h"
#include "ui/pages/page.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace wm::ui {

/// What a used machine has behind it: what can be seen and what is said goes in, a bracket of hours comes
/// out, with what each piece of evidence says. Stating it writes the machine's past, and that of parts that
/// the file knows, in one go; the evidence is kept as a note.
class UsedView : public Page {
    Q_OBJECT

  public:
    UsedView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    [[nodiscard]] QStringList unsaved() const override;

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    enum class Kind : std::uint8_t { Meter, Word, Seasons, Chain, Disc, Bore, FrontTyre, RearTyre };
    struct Line {
        Kind kind = Kind::Meter;
        std::vector<std::string> fields{};  ///< of the line, in the order of the keys
        QLabel* says = nullptr;
    };
    /// A line as it reads: nothing typed, a piece of evidence with what it says, or what is wrong.
    struct Read {
        std::size_t line = 0;
        items::Evidence evidence{};
        items::Claim claim{};
    };
    using Typed = std::map<std::string, QString>;

    void addLine(QGridLayout* grid, Kind kind, const QString& title,
                 const std::vector<std::pair<QString, std::string>>& fields);
    void addLines(QGridLayout* grid);
    void layOut();
    void keep();
    void showTyped();
    void work();
    [[nodiscard]] std::optional<base::Result<items::Evidence>> evidenceOf(const Line& line) const;
    [[nodiscard]] base::Result<items::Evidence> wearOf(const Line& line, items::WornPart part) const;
    [[nodiscard]] base::Result<items::Evidence> meterOf(const Line& line) const;
    [[nodiscard]] base::Result<items::Evidence> seasonsOf(const Line& line) const;
    [[nodiscard]] std::string typed(const Line& line, std::size_t field) const;
    [[nodiscard]] std::optional<ItemId> chain() const;
    [[nodiscard]] QString whyHeld() const;
    void showVerdict();
    void state();
    void clear();

    std::map<MachineId, Typed> typed_;  ///< begun and not stated
    std::optional<MachineId> machine_;
    std::map<std::string, QLineEdit*> fields_;
    QComboBox* fitted_;
    std::vector<Line> lines_;
    std::vector<Read> read_;
    bool faulty_ = false;
    items::Verdict verdict_;
    QLabel* head_;
    QLabel* result_;
    QPushButton* state_;
    QPushButton* clear_;
    bool settling_ = false;
};

}  // namespace wm::ui
