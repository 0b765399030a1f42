// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QProgressDialog>
#include <QPushButton>
#include <QTabBar>
#include <QTimer>

#include "core/exchange/json.h"
#include "tests/repository.h"
#include "tests/ui/window.h"
#include "ui/shell/notebook_dialog.h"
#include "ui/shell/notebook_lines.h"

namespace wm::ui {

inline QByteArray sample(const char* name) {
    QFile file(QString::fromStdString(test::repositoryPath("tests/data/notebook/")) + QLatin1String(name));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name;
    return file.readAll();
}

inline constexpr int kLong = 20'000;  ///< lines that take long enough for the bar to be seen

/// From the File menu into the dialog, as the hands go.
class NotebookWindow : public WindowTest {
  protected:
    void openGarage(bool withMachines) {
        openOn(Garage::Fill::Empty);
        garage_->say([](const verbs::VerbContext& context) {
            return verbs::nameGarage(context, "Alder Yard", day("2026-11-25"));
        });
        if (withMachines) {
            garage_->addMachine("Heron 250", "four-stroke-motocross", units::Hours{1250});
            garage_->addMachine("Sorrel 450", "four-stroke-motocross", units::Hours{8830});
        }
    }
    QString write(const char* name, const QByteArray& bytes) {
        const QString path = garage_->in(QString::fromLatin1(name));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes);
        return path;
    }
    // The platform of the tests brings no window back by itself.
    void back() {
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        window_->activateWindow();
        QTest::qWait(120);  // a key of the shell shows that it was pressed for a tenth of a second
        EXPECT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    }
    void backTo(NotebookDialog* dialog) {
        dialog->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(dialog));
        table()->setFocus();
    }
    // By the File menu and its letter, as the hands go.
    NotebookDialog* import(const QString& path) {
        back();
        prompts_.paths.push_back(path);
        QTimer letter;
        QObject::connect(&letter, &QTimer::timeout, window_.get(), [&letter] {
            if (auto* menu = QApplication::activePopupWidget()) {
                letter.stop();
                QTest::keyClick(menu, Qt::Key_T);
            }
        });
        letter.start(0);
        press(Qt::Key_F, Qt::AltModifier);
        EXPECT_TRUE(QTest::qWaitFor([this] { return prompts_.paths.empty(); }));
        auto* dialog = window_->findChild<NotebookDialog*>();
        if (dialog != nullptr)
            dialog->activateWindow();
        EXPECT_TRUE(dialog == nullptr || QTest::qWaitForWindowActive(dialog));
        return dialog;
    }
    NotebookDialog* importSample(const char* name) { return import(write(name, sample(name))); }
    /// With another Escape where answers are left behind.
    void leave(NotebookDialog* dialog) {
        for (int press = 0; press < 2 && dialog->isVisible(); ++press)
            QTest::keyClick(dialog, Qt::Key_Escape);
        EXPECT_FALSE(dialog->isVisible());
        back();
    }
    void takeAll(const char* name) {
        ASSERT_NE(importSample(name), nullptr);
        press(Qt::Key_A);
        press(Qt::Key_Return);
        back();
        ASSERT_EQ(window_->findChild<NotebookDialog*>(), nullptr);
    }
    QString words() { return child<QLabel>("notebook-words")->text(); }
    QString tab(int at) { return child<QTabBar>("notebook-verdicts")->tabText(at); }
    QStringList tabs() { return {tab(1), tab(2), tab(3)}; }
    QPushButton* importButton() { return child<QPushButton>("notebook-import"); }
    NotebookTable* table() { return child<NotebookTable>("notebook-lines"); }
    QString cell(int row, int column) { return table()->model()->index(row, column).data().toString(); }
    QString total(int row, int column) {
        return child<QLabel>(QStringLiteral("notebook-total-%1-%2").arg(row).arg(column).toLatin1())->text();
    }
    QString status() { return child<QLabel>("status-words")->text(); }
    /// Stands for the whole content of the file: a failure would else print all of it.
    std::size_t everything() { return std::hash<std::string>{}(exchange::toJson(garage_->book().ledger())); }
    /// The same as another window reads it.
    std::size_t inTheFile() {
        Workbench other([] { return QDateTime(QDate(2026, 5, 7), QTime(18, 5)); });
        EXPECT_EQ(other.open(garage_->path(), store::OpenFor::ReadingOnly).outcome,
                  store::OpenOutcome::Opened);
        return std::hash<std::string>{}(exchange::toJson(other.book()->ledger()));
    }
    static QByteArray longNotebook(int lines) {
        QByteArray text = "date;machine;hours;meter;note\n";
        for (int at = 0; at < lines; ++at)
            text += QDate(2020, 1, 1).addDays(at / 30).toString(Qt::ISODate).toLatin1() + ";Heron 250;0,1;;" +
                    QByteArray::number(at) + "\n";
        return text;
    }
    /// Presses Escape once the bar is seen at that part of the work.
    void stopWhen(const char* part) {
        stopped_ = false;
        watch_.disconnect();
        QObject::connect(&watch_, &QTimer::timeout, window_.get(), [this, part = QString(part)] {
            auto* work = window_->findChild<QProgressDialog*>("long-work");
            if (stopped_ || work == nullptr || !work->isVisible() || !work->labelText().startsWith(part))
                return;
            stopped_ = true;
            QTest::keyClick(work, Qt::Key_Escape);
        });
        watch_.start(5);
    }

    bool stopped_ = false;
    QTimer watch_;
    void choose(const char* name, int index) {
        auto* choice = child<QComboBox>(name);
        choice->setFocus();
        choice->setCurrentIndex(index);
        emit choice->activated(index);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
};

}  // namespace wm::ui
