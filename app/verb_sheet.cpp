// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFileInfo>

#include <nlohmann/json.hpp>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/sheet/job_sheet.h"
#include "ui/print/sheet_painter.h"
#include "ui/words/error_words.h"

namespace wm::app {

namespace {

// What is on the sheet goes on record with its number.
weekend::IssuedSheet issuedFrom(const book::Book& book, MachineId machine) {
    weekend::IssuedSheet issued{};
    issued.machine = machine;
    issued.date = book.today();
    const auto& events = book.ahead(machine).events;
    if (!events.empty())
        issued.target = events.front().name;
    for (const weekend::Job& job : book.pickedJobs(machine))
        issued.jobs.push_back({job.task, job.snag});
    return issued;
}

Answer<void> asAnswer(const ui::PdfResult& result) {
    if (result.isWritten())
        return {};
    return cannotWrite(result.path, result.detail);
}

struct Paper {
    QString path;
    ui::PaperSize size;
    QString like;  ///< the garage's file: the paper gets its rights
};

Answer<void> writePdf(const sheet::JobSheet& content, const Paper& paper) {
    return asAnswer(ui::writeSheetPdf(content, paper.path, paper.size, paper.like));
}

Answer<sheet::JobSheet> contentOf(const book::Book& book, MachineId machine, std::int64_t number) {
    auto content = sheet::jobSheet(book, machine, number);
    if (!content && content.error() == base::Error{base::Fault::NothingToDo, "picks", {}, {}})
        return fail(Exit::Refused,
                    "No job is picked for " +
                        ui::quoted(fromUtf8(book.ledger().find<items::Machine>(machine)->name)) +
                        ", so its sheet would be blank: pick one with witnessmark plan FILE --pick TASK.");
    if (!content)
        return fail(content.error());
    return std::move(*content);
}

void reportSheet(const Call& call, const sheet::JobSheet& content, const QString& path) {
    if (call.has("json"))
        print(call.console(), {{"number", content.number},
                               {"machine", content.machine},
                               {"pdf", path.toStdString()},
                               {"jobs", content.jobs}});
    else if (content.number == 0)
        call.console().out << "Proof for " << fromUtf8(content.machine) << " in " << path << '\n';
    else
        call.console().out << "Job sheet no. " << qlonglong{content.number} << " for "
                           << fromUtf8(content.machine) << " in " << path << '\n';
}

// The number is taken first; if the paper can't be written it is given back for good.
Answer<sheet::JobSheet> issue(Garage& garage, MachineId machine, const Paper& paper) {
    const auto change = garage.apply([machine](const verbs::VerbContext& context) {
        return verbs::issueSheet(context, issuedFrom(context.book, machine));
    });
    if (!change)
        return tl::unexpected(change.error());
    std::int64_t number = 0;
    for (const picture::Row& row : change->rows)
        if (const auto* issued = std::get_if<weekend::IssuedSheet>(&row))
            number = issued->number;
    auto content = contentOf(garage.book(), machine, number);
    auto written = content ? writePdf(*content, paper) : tl::unexpected(content.error());
    if (written) {
        garage.endUndo();
        return content;
    }
    if (const auto back = garage.file().undo(store::LastMachine::Stays, store::Redo::Never); !back)
        return tl::unexpected<Failure>{failureOf(back.error())};
    return tl::unexpected(written.error());
}

Answer<void> runSheet(const Call& call) {
    if (!call.has("pdf") || call.value("pdf").isEmpty())
        return fail(Exit::Usage, "Say where the sheet goes, with --pdf OUT.");
    const QString paper = call.has("paper") ? call.value("paper").toLower() : QString("a4");
    if (paper != "a4" && paper != "letter")
        return fail(base::Error{base::Fault::Unknown, "paper", call.text("paper"), "A4, Letter"});
    const Paper onto{call.value("pdf"), paper == "a4" ? ui::PaperSize::A4 : ui::PaperSize::Letter,
                     call.word(0)};
    // Before a number is taken that would have to be given back.
    if (auto place = asAnswer(ui::pdfTarget(onto.path)); !place)
        return place;
    const bool proof = call.has("proof");
    auto garage = Garage::open(call, proof ? store::OpenFor::ReadingOnly : store::OpenFor::Writing);
    if (!garage)
        return tl::unexpected(garage.error());
    const auto machine = findMachine(garage->book(), call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    const MachineId id = (*machine)->id;
    auto content = contentOf(garage->book(), id, 0);
    if (!content)
        return tl::unexpected(content.error());
    if (proof) {
        if (auto written = writePdf(*content, onto); !written)
            return written;
    } else {
        content = issue(*garage, id, onto);
        if (!content)
            return tl::unexpected(content.error());
    }
    reportSheet(call, *content, call.value("pdf"));
    return {};
}

}  // namespace

VerbSpec sheetVerb() {
    return {"sheet",
            "Write the job sheet of the picked jobs as a PDF.",
            {{"FILE", "The file."}},
            {machineOption(),
             {"pdf", "Where it goes.", "out"},
             {"paper", "A4 (otherwise) or Letter.", "size"},
             {"proof", "Without a number, and not put on record."},
             jsonOption()},
            "  witnessmark sheet garage.witnessmark --machine Heron --pdf sheet.pdf\n",
            runSheet};
}

}  // namespace wm::app
