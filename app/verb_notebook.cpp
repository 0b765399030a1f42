// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/verb_notebook.h"

#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "core/notebook/read_notebook.h"
#include "core/notebook/take.h"
#include "ui/words/notebook_words.h"
#include "ui/workbench/file_names.h"

namespace wm::app {

namespace {

using notebook::Notebook;

// What the call asks for: which machine, and whether to write.
struct Wishes {
    notebook::ReadingWishes reading{};
    std::optional<notebook::Agreement> agreement{};
};

Answer<Wishes> readWishes(const Call& call, const book::Book& book) {
    Wishes wishes;
    if (call.has("machine")) {
        const auto machine = findMachine(book, call.value("machine"));
        if (!machine)
            return tl::unexpected(machine.error());
        wishes.reading.machine = (*machine)->id;
    }
    if (!call.has("accept"))
        return wishes;
    const QString accept = call.value("accept");
    if (accept != "taken" && accept != "cured")
        return fail(base::Error{base::Fault::Unknown, "accept", call.text("accept"), "taken, cured"});
    wishes.agreement = notebook::Agreement{.allCures = accept == "cured"};
    return wishes;
}

tl::unexpected<Failure> refused(const base::Error& error, const QString& path) {
    return tl::unexpected<Failure>{
        Failure{Exit::Refused, ui::notebookRefusal(error, QFileInfo(path).fileName()), error.fault}};
}

void reportLines(const Call& call, const Notebook& notebook) {
    auto lines = nlohmann::ordered_json::array();
    for (const notebook::Line& line : notebook.lines)
        lines.push_back({{"line", line.line},
                         {"verdict", ui::verdictWord(line.verdict).toStdString()},
                         {"reason", ui::reasonFor(line).toStdString()},
                         {"cure", ui::cureFor(line).toStdString()}});
    print(call.console(), lines);
}

void reportInWords(const Call& call, const Notebook& notebook) {
    QTextStream& out = call.console().out;
    for (const notebook::Line& line : notebook.lines) {
        if (line.verdict == notebook::Verdict::Taken)
            continue;
        out << "line " << line.line << ": " << ui::verdictWord(line.verdict) << ": " << ui::reasonFor(line);
        if (const QString cure = ui::cureFor(line); !cure.isEmpty())
            out << "; likely: " << cure;
        out << ".\n";
    }
    out << ui::countsOf(notebook) << ".\n";
}

Answer<void> take(const Call& call, Garage& garage, const std::string& bytes, const Wishes& wishes) {
    const std::string name = QFileInfo(call.word(1)).fileName().toStdString();
    std::size_t lines = 0;
    std::size_t waiting = 0;
    bool knowsSome = false;
    const auto change = garage.apply([&](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        auto table = notebook::readTable(bytes);
        if (!table)
            return tl::unexpected(table.error());
        const auto read = notebook::readNotebook(std::move(*table), context.book, wishes.reading);
        if (!read)
            return tl::unexpected(read.error());
        knowsSome = std::any_of(read->lines.begin(), read->lines.end(),
                                [](const notebook::Line& line) { return line.inFile; });
        auto taken = notebook::takeNotebook(context, *read, *wishes.agreement, name);
        if (!taken)
            return tl::unexpected(taken.error());
        lines = taken->lines;
        waiting = taken->waiting;
        return std::move(taken->change);
    });
    QTextStream& report = call.has("json") ? call.console().err : call.console().out;
    if (!change && change.error().fault == base::Fault::NothingNew)
        report << (knowsSome ? "Nothing in " + call.word(1) + " is new to this file"
                             : "No line of " + call.word(1) + " could be taken")
               << "; nothing was written.\n";
    else if (!change)
        return tl::unexpected(change.error());
    else
        report << "Took over " << lines << (lines == 1 ? " line" : " lines") << " as one step.\n";
    if (waiting > 0)
        report << waiting << " meter readings were left out: they wait for a word about a renewed meter.\n";
    return {};
}

Answer<void> readAndTell(const Call& call, Garage& garage, const std::string& bytes) {
    const auto wishes = readWishes(call, garage.book());
    if (!wishes)
        return tl::unexpected(wishes.error());
    auto table = notebook::readTable(bytes);
    if (!table)
        return refused(table.error(), call.word(1));
    const auto read = notebook::readNotebook(std::move(*table), garage.book(), wishes->reading);
    if (!read)
        return refused(read.error(), call.word(1));
    if (call.has("json"))
        reportLines(call, *read);
    else
        reportInWords(call, *read);
    return wishes->agreement ? take(call, garage, bytes, *wishes) : Answer<void>{};
}

}  // namespace

Answer<void> importNotebook(const Call& call, const std::string& bytes) {
    const bool writes = call.has("accept");
    const bool isNew = writes ? ui::isFree(call.word(0)) : !ui::isThere(call.word(0));
    if (isNew && !writes)
        return fail(Exit::CannotOpen, call.word(0) + " is not there: make it first, with witnessmark new " +
                                          call.word(0) + ", or write at once with --accept.");
    Answer<void> done;
    {
        auto garage =
            isNew ? Garage::create(call)
                  : Garage::open(call, writes ? store::OpenFor::Writing : store::OpenFor::ReadingOnly);
        if (!garage)
            return tl::unexpected(garage.error());
        done = readAndTell(call, *garage, bytes);
    }
    // Of what came to nothing, or of which nothing was new, no file is left.
    if (isNew && !call.console().wrote)
        store::File::discard(call.word(0));
    return done;
}

}  // namespace wm::app
