// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <map>
#include <optional>

#include "core/definitions/sharing.h"
#include "core/fastening/rows.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;

namespace wm::ui {

class Workbench;

/// The figure of one joint as the manual prints it, typed in one row: value or range, unit, manual, page, and
/// whether it was checked. "25 ft lb" and "18-22" are understood in the first field. Enter, or a place that
/// is chosen, saves a new version; the old one stays in the file. A figure that looks like a misreading is
/// asked about once. Of a joint that the machines of a model share it is said for which of them the figure
/// holds. Where the joint sits decides whether it goes with an engine or a wheel to another machine.
class JointForm : public QWidget {
    Q_OBJECT

  public:
    JointForm(Workbench& workbench, QWidget* parent);
    /// What is being typed stays when the same joint is shown again, whatever was looked at or saved of it
    /// meanwhile.
    void setJoint(const fastening::JointVersion* joint);
    void focusFigure();
    void focusPage();

  private:
    /// What was typed of a joint and not saved yet.
    struct Typed {
        QString low;
        QString high;
        QString source;
        QString page;
        int unit = 0;
        bool isConfirmed = false;
    };
    [[nodiscard]] bool isTyped() const;
    void setAside();
    void bringBack();
    void layOut();
    void clear();
    void offerSharing(const fastening::JointVersion& joint);
    void offerPlaces(const fastening::JointVersion& joint);
    void share(fastening::JointVersion& version) const;
    void save();
    /// Takes what was typed as a torque; false with the words for it if it can't be.
    bool take(fastening::JointVersion& version);
    /// What becomes of the stages; false with the words for it if that is not plain.
    bool takeStages(fastening::JointVersion& version);
    /// True the first time that a figure far off is to be saved: says so, and waits for another Enter.
    bool questions(const fastening::JointVersion& version);

    Workbench& workbench_;
    std::optional<fastening::JointVersion> joint_;
    std::optional<definitions::ModelYears> years_;  ///< for which the joint is shared
    QLineEdit* low_;
    QLineEdit* high_;
    QComboBox* unit_;
    QLineEdit* source_;
    QLineEdit* page_;
    QCheckBox* confirmed_;
    QComboBox* place_;    ///< the machine itself, or what it sits in; nothing: nobody said
    QWidget* holds_;      ///< seen where the joint is shared
    QComboBox* sharing_;  ///< for all of the model, or for this machine only
    QLabel* problem_;
    std::map<JointId, Typed> aside_;
    QString questioned_;  ///< the figure that was asked about; entered again, it is meant
};

}  // namespace wm::ui
