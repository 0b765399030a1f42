// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <nlohmann/json.hpp>

#include "app/open_garage.h"
#include "app/verb.h"
#include "app/verb_notebook.h"
#include "core/base/phrase.h"
#include "core/exchange/json.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/oddity_words.h"
#include "ui/workbench/file_names.h"
#include "ui/workbench/read_bytes.h"
#include "ui/workbench/write_bytes.h"

namespace wm::app {

namespace {

Answer<std::string> readText(const QString& path) {
    const auto bytes = ui::readBytes(path);
    if (!bytes)
        return fail(bytes.error() == ui::Unread::TooLarge ? Exit::Refused : Exit::CannotOpen,
                    ui::wordsFor(bytes.error(), path));
    return bytes->toStdString();
}

// A whole file begins with a brace, or says by its name that it should; all else is a notebook.
bool isWholeFile(const QString& path, const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    return path.endsWith(QLatin1String(".json"), Qt::CaseInsensitive) ||
           (first != std::string::npos && text[first] == '{');
}

// What was taken over, and what of it somebody should look at.
void reportTaken(const Call& call, const picture::Change& change, const std::vector<QString>& altered,
                 const QStringList& odd) {
    if (call.has("json")) {
        nlohmann::ordered_json answer{{"written", base::said(base::restored(change.text))},
                                      {"rows", change.rows.size()}};
        for (const QString& row : altered)
            answer["altered"].push_back(row.toStdString());
        for (const QString& line : odd)
            answer["odd"].push_back(line.toStdString());
        return print(call.console(), answer);
    }
    call.console().out << "Read " << change.rows.size() << " rows into " << call.word(0) << ".\n";
    if (!altered.empty())
        call.console().out << "Taken as they stand there, so look at each:\n";
    for (const QString& row : altered)
        call.console().out << row << '\n';
    if (!odd.empty())
        call.console().out << "What no verb would have taken without a question, so look at each:\n";
    for (const QString& line : odd)
        call.console().out << line << '\n';
}

// Writes all rows of a whole file into the file of the call, which is new or holds nothing yet.
Answer<void> adopt(const Call& call, const std::vector<picture::Row>& rows,
                   const std::vector<QString>& altered = {}) {
    if (call.has("accept") || call.has("machine"))
        return fail(Exit::Usage, "--accept and --machine are for notebooks (CSV); " +
                                     ui::quoted(call.word(1)) + " is a whole file.");
    const bool isNew = ui::isFree(call.word(0));
    Answer<picture::Change> change;
    QStringList odd;
    {
        auto garage = isNew ? Garage::create(call) : Garage::open(call, store::OpenFor::Writing);
        if (!garage)
            return tl::unexpected(garage.error());
        change =
            garage->apply([&](const verbs::VerbContext& context) { return verbs::adoptAll(context, rows); });
        // A garage that came in whole is not emptied by an undo.
        if (change) {
            garage->endUndo();
            odd = ui::oddityLines(garage->book());
        }
    }
    if (!change) {
        if (isNew)
            store::File::discard(call.word(0));
        return tl::unexpected(change.error());
    }
    reportTaken(call, *change, altered, odd);
    return {};
}

Answer<void> importWhole(const Call& call, const std::string& text) {
    const auto rows = exchange::fromJson(text);
    if (!rows)
        return fail(rows.error());
    return adopt(call, *rows);
}

// The facts of a file of ours, whatever else somebody put into it.
Answer<void> importGarage(const Call& call) {
    const store::Facts facts = store::factsOf(call.word(1));
    if (facts.report.outcome != store::OpenOutcome::Opened)
        return fail(Exit::CannotOpen, ui::wordsFor(facts.report));
    return adopt(call, facts.rows, facts.altered);
}

Answer<void> runImport(const Call& call) {
    const auto text = readText(call.word(1));
    if (!text)
        return tl::unexpected(text.error());
    if (ui::isGarage(QByteArray::fromRawData(text->data(), static_cast<qsizetype>(text->size()))))
        return importGarage(call);
    return isWholeFile(call.word(1), *text) ? importWhole(call, *text) : importNotebook(call, *text);
}

Answer<void> writeText(const QString& path, const std::string& text, const QString& garage) {
    if (const auto written = ui::writeBytes(path, QByteArray::fromStdString(text), garage);
        !written.isWritten())
        return cannotWrite(path, written.detail);
    return {};
}

Answer<void> runExport(const Call& call) {
    auto garage = Garage::open(call, store::OpenFor::Writing);
    if (!garage)
        return tl::unexpected(garage.error());
    const std::string text = exchange::toJson(*garage->file().ledger());
    if (call.has("to")) {
        if (auto written = writeText(call.value("to"), text, call.word(0)); !written)
            return written;
    } else {
        call.console().out << fromUtf8(text);
        call.console().out.flush();
        // What did not leave can still be taken back; that it did not is said for every verb.
        if (call.console().out.status() != QTextStream::Ok)
            return {};
    }
    // What has left the program can't be taken back as if it had not been said.
    if (!garage->file().readOnly())
        garage->endUndo();
    return {};
}

}  // namespace

VerbSpec importVerb() {
    return {
        "import",
        "Take over a notebook (CSV), or read a whole file, from JSON or as it is.",
        {{"FILE", "The file; with a whole file a new or empty one."},
         {"SOURCE",
          "A notebook as a spreadsheet saves it (CSV): each line is taken, doubtful or refused. Or the "
          "text of a whole file, as `export` writes it. Or a file of ours that was refused because something "
          "else changed it: its facts are taken over as they stand, with a list of the rows that are not as "
          "they were written."}},
        {{"accept",
          "Write a notebook's lines as one step: \"taken\" those without a doubt, \"cured\" the doubtful "
          "ones too, with the cure that is offered. Without it nothing is written.",
          "which"},
         {"machine", "The machine that a notebook without such a column is about.", "name"},
         jsonOption()},
        "  witnessmark import garage.witnessmark outings.csv\n"
        "  witnessmark import garage.witnessmark outings.csv --accept cured\n"
        "  witnessmark import copy.witnessmark garage.json\n"
        "  witnessmark import clean.witnessmark from-somebody.witnessmark\n",
        runImport};
}

VerbSpec exportVerb() {
    return {"export",
            "Write the whole file as JSON (exchange.schema.json), to standard output.",
            {{"FILE", "The file."}},
            {QCommandLineOption("to", "Write it to this file instead.", "out")},
            "  witnessmark export garage.witnessmark > garage.json\n",
            runExport};
}

}  // namespace wm::app
