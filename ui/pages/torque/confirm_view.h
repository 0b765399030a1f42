// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <set>
#include <vector>

#include "core/definitions/confirming.h"
#include "ui/pages/torque/torque_view.h"

class QLineEdit;
class QPushButton;
class QScrollArea;

namespace wm::ui {

class BigFigure;
class RowTable;

/// Leafing through the service manual of one machine: figure after figure that nobody has confirmed, the keys
/// in one line. Enter: it stands there so. Another figure typed over it puts it right. Down: not in my
/// manual, it comes again in the next round. What was typed and not entered stays, whatever is looked at
/// meanwhile.
class ConfirmView : public TorqueView {
    Q_OBJECT

  public:
    ConfirmView(const PageTools& tools, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    [[nodiscard]] QStringList unsaved() const override;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void layOut();
    void connectParts();
    void showRows();
    void showCount(const items::Machine& machine);
    void showChosen();
    void load(const definitions::Printed& figure);
    void loadPlace(const definitions::Printed& figure);
    void forget();
    void keepTyped();
    void confirm();
    void goOn();
    void goBack();
    [[nodiscard]] bool questions(const definitions::PrintedKey& key, const QString& figure);
    [[nodiscard]] const definitions::Printed* chosen() const;
    [[nodiscard]] const definitions::Printed* find(const definitions::PrintedKey& key) const;
    [[nodiscard]] std::int64_t idOf(const definitions::PrintedKey& key);
    /// What comes after the chosen one and was not passed over in this round.
    [[nodiscard]] std::optional<std::int64_t> nextId() const;
    [[nodiscard]] QString typed() const;  ///< nothing if the figure stands as it is stored

    std::optional<MachineId> machine_;
    std::vector<definitions::Printed> figures_;
    std::map<definitions::PrintedKey, std::int64_t> ids_;  ///< of the rows, kept while the window lives
    std::map<definitions::PrintedKey, QString> drafts_;
    std::set<definitions::PrintedKey> passed_;
    std::optional<definitions::PrintedKey> shown_;
    QString loaded_;  ///< the stored figure of the shown one, as it was put into the field
    std::map<MachineId, QString> manuals_;  ///< as typed last
    std::map<MachineId, QString> pages_;
    QString questioned_;

    QLabel* head_;
    QLabel* progress_;
    RowTable* table_;
    QWidget* answer_;
    QScrollArea* right_ = nullptr;
    QLabel* name_;
    QLabel* about_;
    BigFigure* stored_;
    QLabel* source_;
    QLineEdit* figure_;
    QLineEdit* manual_;
    QLineEdit* page_;
    QLabel* problem_;
    QPushButton* stands_;
    QPushButton* next_;
};

}  // namespace wm::ui
