// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>
#include <vector>

#include "tests/ui/garage.h"
#include "ui/pages/page.h"
#include "ui/workbench/guide.h"

namespace wm::ui {

class EntryForm;

/// What a page shows only after a hand was laid on it, or of a garage in which something is the case.
struct PageState {
    PageId page;
    const char* view;  ///< the class of one of the page's views, or nothing
    QString name;
    std::function<void(Page& page, Garage& garage)> begin;
    std::function<void(Page& page)> end{};  ///< takes back what would be kept
};
/// In this order: the last ones are about a machine that comes without a schedule, and stays.
std::vector<PageState> pageStates();

/// Takes an item off that won't last through the next event, and asks to fit it again.
EntryRequest aWornItemAgain(Garage& garage);
/// A request to fit something from the shelf where another thing sits.
EntryRequest aPlaceThatIsTaken(const book::Book& book);
/// What is taken off goes to a workshop.
void sendAway(EntryForm& form);
/// In a form for a reading, which then asks for more.
void replaceTheMeter(EntryForm& form);

}  // namespace wm::ui
