// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPrinter>
#include <functional>
#include <memory>
#include <optional>

#include "core/sheet/job_sheet.h"
#include "ui/pages/page.h"

class QComboBox;
class QLabel;
class QPrintPreviewWidget;
class QPushButton;

namespace wm::ui {

class RowTable;

/// Job sheets: a proof for each machine with something picked, to look at and print, and the numbers that
/// went out.
class SheetsPage : public Page {
    Q_OBJECT

  public:
    explicit SheetsPage(const PageTools& tools, QWidget* parent);
    ~SheetsPage() override;
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;

  protected:
    void changeEvent(QEvent* event) override;

  private:
    void layOut();
    void dressPreview();
    void showSheet();
    /// Gives the sheet its number, lets `hand` put it on paper, and takes the number back if that came to
    /// nothing; true if it went out.
    bool issue(const std::function<bool(const sheet::JobSheet&)>& hand);
    void print();
    void savePdf();
    /// "Heron 250 2026-05-07 sheet 4"
    [[nodiscard]] QString suggestedName() const;
    void makeVoid();
    [[nodiscard]] std::optional<MachineId> proofMachine() const;
    [[nodiscard]] const weekend::IssuedSheet* chosenSheet() const;

    RowTable* sheets_;
    QLabel* words_;
    QComboBox* paper_;
    QPushButton* print_;
    QPushButton* pdf_;
    QPushButton* void_;
    std::unique_ptr<QPrinter> printer_;
    QPrintPreviewWidget* preview_;
    std::optional<sheet::JobSheet> shown_;
};

}  // namespace wm::ui
