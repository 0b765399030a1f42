// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/baseline_words.h"

#include "ui/pages/tasks/baseline_view.h"
#include "ui/words/error_words.h"

namespace wm::ui {

QString saidWords(Said said) {
    switch (said) {
        case Said::New:
            return BaselineView::tr("new on");
        case Said::NeverDone:
            return BaselineView::tr("the first one");
        case Said::Serviced:
            return BaselineView::tr("serviced");
        case Said::Fine:
            return BaselineView::tr("looked at: fine");
        case Said::Unknown:
            break;
    }
    return BaselineView::tr("unknown");
}

QString tasksWords(std::size_t count) {
    return BaselineView::tr("%n task(s)", nullptr, static_cast<int>(count));
}

QString faultWords(const BaselineAsking::Fault& fault, const QString& task) {
    using Kind = BaselineAsking::Fault::Kind;
    switch (fault.kind) {
        case Kind::None:
            break;
        case Kind::Refused:
            return wordsFor(fault.error);
        case Kind::HoursNotMeant:
            return BaselineView::tr("A day, not hours: hours of the meter are said of a service (S).");
        case Kind::NothingTyped:
            return BaselineView::tr(
                "Type the day, what the hour meter showed, or how long ago; Escape leaves it open.");
        case Kind::NeedsDay:
            return BaselineView::tr("%1 counts more than hours: say the day as well.").arg(task);
    }
    return {};
}

QString takenWords(const BaselineAsking::Taken& taken, const QString& task) {
    if (taken.left == 0)
        return {};
    if (taken.alone)
        return BaselineView::tr(
                   "%1 is renewed: looking at it begins no count. Say when it was new (N) or "
                   "serviced (S).")
            .arg(task);
    return taken.said == Said::Fine
               ? BaselineView::tr("%1 left open: looking alone does not settle them.")
                     .arg(tasksWords(taken.left))
               : BaselineView::tr("%1 left open: they count more than hours, so they need a day.")
                     .arg(tasksWords(taken.left));
}

}  // namespace wm::ui
