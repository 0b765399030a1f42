// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/sheet/torque_card.h"
#include "ui/print/paged_output.h"
#include "ui/print/torque_card_layout.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"

namespace wm::app {

namespace {

Answer<ui::PaperSize> paperIn(const Call& call) {
    const QString paper = call.has("paper") ? call.value("paper").toLower() : QString("a4");
    if (paper != "a4" && paper != "letter")
        return fail(base::Error{base::Fault::Unknown, "paper", call.text("paper"), "A4, Letter"});
    return paper == "a4" ? ui::PaperSize::A4 : ui::PaperSize::Letter;
}

void reportCard(const Call& call, const sheet::TorqueCard& card, const ui::PdfResult& written) {
    std::size_t joints = 0;
    for (const sheet::CardGroup& group : card.groups)
        joints += group.lines.size();
    if (call.has("json")) {
        print(call.console(), {{"machine", card.machine},
                               {"pdf", written.path.toStdString()},
                               {"pages", written.pages},
                               {"joints", joints},
                               {"unconfirmed", card.unconfirmed},
                               {"blank", card.blank}});
        return;
    }
    call.console().out << "Torque card for " << fromUtf8(card.machine) << " in " << written.path << ": "
                       << qulonglong{joints} << " joints, " << qulonglong{card.unconfirmed}
                       << " of them not confirmed; " << qulonglong{card.blank} << " without a figure\n";
}

Answer<void> runCard(const Call& call) {
    if (!call.has("pdf") || call.value("pdf").isEmpty())
        return fail(Exit::Usage, "Say where the card goes, with --pdf OUT.");
    const auto size = paperIn(call);
    if (!size)
        return tl::unexpected(size.error());
    auto garage = Garage::open(call, store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    const auto machine = findMachine(garage->book(), call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    const auto card = sheet::torqueCard(garage->book(), (*machine)->id, ui::decimalMark());
    if (!card && card.error().fault == base::Fault::NothingToDo)
        return fail(Exit::Refused, fromUtf8((*machine)->name) +
                                       " has no torque figure yet: type them in from its service manual "
                                       "first.");
    if (!card)
        return fail(card.error());
    const auto layOut = [&](QSizeF area) { return ui::layOutTorqueCard(*card, area); };
    const auto written =
        ui::writePagesPdf(layOut, ui::torqueCardTitle(*card), call.value("pdf"), *size, call.word(0));
    if (!written.isWritten())
        return cannotWrite(written.path, written.detail);
    reportCard(call, *card, written);
    return {};
}

}  // namespace

VerbSpec cardVerb() {
    return {"card",
            "Write every torque figure of a machine as a card for the wall, as a PDF.",
            {{"FILE", "The file."}},
            {machineOption(),
             {"pdf", "Where it goes.", "out"},
             {"paper", "A4 (otherwise) or Letter.", "size"},
             jsonOption()},
            "  witnessmark card garage.witnessmark --machine Heron --pdf card.pdf\n",
            runCard};
}

}  // namespace wm::app
