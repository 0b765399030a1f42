// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/form_table.h"

#include <QStringList>

#include "ui/entry/event_form.h"
#include "ui/entry/item_forms.h"
#include "ui/entry/job_form.h"
#include "ui/entry/machine_form.h"
#include "ui/entry/outing_form.h"
#include "ui/entry/reading_form.h"
#include "ui/entry/small_forms.h"

namespace wm::ui {

namespace {

std::unique_ptr<EntryForm> blankForm(Workbench& workbench, const EntryRequest& request) {
    switch (request.kind) {
        case EntryKind::Outing:
            return std::make_unique<OutingForm>(workbench, request);
        case EntryKind::Job:
            return std::make_unique<JobForm>(workbench, request);
        case EntryKind::Snag:
            return std::make_unique<SnagForm>(workbench, request);
        case EntryKind::Wash:
            return std::make_unique<WashForm>(workbench, request);
        case EntryKind::Reading:
            return std::make_unique<ReadingForm>(workbench, request);
        case EntryKind::Crash:
            return std::make_unique<CrashForm>(workbench, request);
        case EntryKind::PutOff:
            return std::make_unique<PutOffForm>(workbench, request);
        case EntryKind::EndSnag:
            return std::make_unique<EndSnagForm>(workbench, request);
        case EntryKind::Strike:
            return std::make_unique<StrikeForm>(workbench, request);
        case EntryKind::Fit:
            return std::make_unique<FitForm>(workbench, request);
        case EntryKind::TakeOff:
            return std::make_unique<TakeOffForm>(workbench, request);
        case EntryKind::Swap:
            return std::make_unique<SwapForm>(workbench, request);
        case EntryKind::Event:
            return std::make_unique<EventForm>(workbench, request);
        case EntryKind::Person:
            return std::make_unique<PersonForm>(workbench);
        case EntryKind::Machine:
            break;
    }
    return std::make_unique<MachineForm>(workbench);
}

template <class T>
QString number(const std::optional<T>& id) {
    return id ? QString::number(id->value()) : QString();
}

QString number(const std::optional<std::int64_t>& fact) {
    return fact ? QString::number(*fact) : QString();
}

}  // namespace

std::unique_ptr<EntryForm> makeForm(Workbench& workbench, const EntryRequest& request) {
    auto form = blankForm(workbench, request);
    if (request.corrects)
        form->correct(*request.corrects);
    return form;
}

QString draftKey(const EntryRequest& request) {
    // The machine is no part of it: what was begun is found again even when another machine is chosen by now.
    return QStringList{QString::number(static_cast<int>(request.kind)),
                       number(request.task),
                       number(request.snag),
                       number(request.item),
                       number(request.event),
                       request.position,
                       number(request.fact),
                       number(request.corrects)}
        .join(QLatin1Char('/'));
}

}  // namespace wm::ui
