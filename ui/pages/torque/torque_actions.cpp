// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QLabel>
#include <QLineEdit>
#include <algorithm>

#include "core/fastening/lookup.h"
#include "core/verbs/verbs.h"
#include "ui/pages/torque/joint_form.h"
#include "ui/pages/torque/torque_page.h"
#include "ui/pages/torque/torque_rows.h"
#include "ui/tables/row_table.h"
#include "ui/words/apply_words.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

// What the keys do at a joint.

namespace wm::ui {

void TorquePage::mark(fastening::MarkKind kind) {
    const auto* joint = chosenJoint();
    if (joint == nullptr)
        return;
    const JointId id = joint->joint;
    workbench().perform([=](const verbs::VerbContext& context) {
        return verbs::markJoints(context, {{.joint = id, .date = context.book.today(), .kind = kind}});
    });
}

void TorquePage::choose(JointId joint) {
    joints_->choose(joint.value());
    if (joints_->chosenId() != joint.value()) {
        find_->clear();
        joints_->choose(joint.value());
    }
}

// Enter: from the line to the list; from a joint without a figure to where it is typed.
void TorquePage::takeUp() {
    const auto* joint = chosenJoint();
    if (joint != nullptr && (!joint->torque || joints_->hasFocus()))
        form_->focusFigure();
    else if (joints_->isVisible())
        joints_->setFocus(Qt::OtherFocusReason);
}

void TorquePage::goThroughJob(int by) {
    const auto* joint = chosenJoint();
    if (joint == nullptr)
        return;
    const auto joints = jobOf(*workbench().book(), *joint).joints;
    const auto here = std::find(joints.begin(), joints.end(), joint->joint);
    if (here == joints.end())
        return;
    const auto count = static_cast<std::ptrdiff_t>(joints.size());
    choose(joints[static_cast<std::size_t>((here - joints.begin() + by + count) % count)]);
}

// The figure stands in the manual as it stands here: said with one key, and on to the next that nobody has
// checked yet.
void TorquePage::confirmFigure() {
    const auto* joint = chosenJoint();
    if (joint == nullptr || workbench().readOnly())
        return;
    if (!joint->torque) {
        guide().say(tr("Type the figure first, then it can be confirmed."));
        return form_->focusFigure();
    }
    if (joint->page.empty()) {
        guide().say(tr("On which page does it stand? Type that, then it can be confirmed."));
        return form_->focusPage();
    }
    fastening::JointVersion version = *joint;
    const auto ids = joints_->shownIds();
    if (!version.confirmed) {
        version.confirmed = true;
        version.validFrom = workbench().today();
        if (!workbench().perform(
                [=](const verbs::VerbContext& context) { return verbs::saveJoint(context, version); }))
            return;
    }
    const auto here = std::find(ids.begin(), ids.end(), version.joint.value());
    std::vector<std::int64_t> round(here == ids.end() ? ids.begin() : here + 1, ids.end());
    round.insert(round.end(), ids.begin(), here);
    for (const std::int64_t id : round) {
        const auto* next = id > 0 ? workbench().book()->joint(JointId(id)) : nullptr;
        if (next != nullptr && next->torque && !next->confirmed)
            return joints_->choose(id);
    }
    joints_->choose(version.joint.value());
    guide().say(tr("Every figure shown is confirmed."));
}

void TorquePage::countConfirmed() {
    int all = 0;
    int typed = 0;
    int confirmed = 0;
    for (const fastening::Figure& figure : lookup().figures()) {
        if (figure.kind != fastening::FigureKind::Joint ||
            (workbench().chosen() && *workbench().chosen() != figure.machine))
            continue;
        ++all;
        typed += figure.low ? 1 : 0;
        confirmed += figure.low && figure.confirmed ? 1 : 0;
    }
    progress_->setText(tr("%1 of %2 typed, %3 confirmed").arg(typed).arg(all).arg(confirmed));
}

}  // namespace wm::ui
