// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <QFileInfo>
#include <nlohmann/json.hpp>

#include "app/open_garage.h"
#include "app/verb.h"
#include "app/verb_notebook.h"
#include "core/exchange/json.h"
#include "ui/words/error_words.h"
#include "ui/workbench/write_bytes.h"

namespace wm::app {

namespace {

constexpr qint64 kLargestText = 512LL * 1024 * 1024;

Answer<std::string> readText(const QString& path) {
    QFile file(path);
    if (QFileInfo(path).isDir())
        return fail(Exit::CannotOpen, ui::quoted(path) + " is a folder: name the file in it.");
    if (!file.open(QIODevice::ReadOnly))
        return fail(Exit::CannotOpen,
                    ui::quoted(path) + " can't be read: check that it is there and that you may read it.");
    if (file.size() > kLargestText)
        return fail(Exit::Refused,
                    ui::quoted(path) + " is larger than any file of ours: check that it is the right one.");
    const QByteArray bytes = file.readAll();
    if (file.error() != QFileDevice::NoError)
        return fail(Exit::CannotOpen,
                    ui::quoted(path) + " can't be read to its end: check the disk it lies on.");
    return bytes.toStdString();
}

// A whole file begins with a brace, or says by its name that it should; all else is a notebook.
bool isWholeFile(const QString& path, const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    return path.endsWith(QLatin1String(".json"), Qt::CaseInsensitive) ||
           (first != std::string::npos && text[first] == '{');
}

Answer<void> importWhole(const Call& call, const std::string& text) {
    if (call.has("accept") || call.has("machine"))
        return fail(Exit::Usage, "--accept and --machine are for notebooks (CSV); " +
                                     ui::quoted(call.word(1)) + " is a whole file.");
    auto rows = exchange::fromJson(text);
    if (!rows)
        return fail(rows.error());
    const bool isNew = !QFileInfo::exists(call.word(0));
    Answer<picture::Change> change;
    {
        auto garage = isNew ? Garage::create(call) : Garage::open(call, store::OpenFor::Writing);
        if (!garage)
            return tl::unexpected(garage.error());
        change =
            garage->apply([&](const verbs::VerbContext& context) { return verbs::adoptAll(context, *rows); });
    }
    if (!change) {
        if (isNew)
            QFile::remove(call.word(0));
        return tl::unexpected(change.error());
    }
    if (call.has("json"))
        print(call.console(),
              {{"written", base::said(base::restored(change->text))}, {"rows", change->rows.size()}});
    else
        call.console().out << "Read " << change->rows.size() << " rows into " << call.word(0) << ".\n";
    return {};
}

Answer<void> runImport(const Call& call) {
    const auto text = readText(call.word(1));
    if (!text)
        return tl::unexpected(text.error());
    return isWholeFile(call.word(1), *text) ? importWhole(call, *text) : importNotebook(call, *text);
}

Answer<void> writeText(const QString& path, const std::string& text) {
    if (const auto written = ui::writeBytes(path, QByteArray::fromStdString(text)); !written.isWritten())
        return cannotWrite(path, written.detail);
    return {};
}

Answer<void> runExport(const Call& call) {
    auto garage = Garage::open(call, store::OpenFor::Writing);
    if (!garage)
        return tl::unexpected(garage.error());
    const std::string text = exchange::toJson(*garage->file().ledger());
    if (call.has("to")) {
        if (auto written = writeText(call.value("to"), text); !written)
            return written;
    } else {
        call.console().out << fromUtf8(text);
        call.console().out.flush();
    }
    // What has left the program can't be taken back as if it had not been said.
    if (!garage->file().readOnly())
        (void)garage->file().endUndo();
    return {};
}

}  // namespace

VerbSpec importVerb() {
    return {"import",
            "Take over a notebook (CSV), or read a whole file from JSON.",
            {{"FILE", "The file; with a whole file from JSON a new or empty one."},
             {"SOURCE",
              "A notebook as a spreadsheet saves it (CSV): each line is taken, doubtful or refused. Or the "
              "text of a whole file, as `export` writes it."}},
            {{"accept",
              "Write a notebook's lines as one step: \"taken\" those without a doubt, \"cured\" the doubtful "
              "ones too, with the cure that is offered. Without it nothing is written.",
              "which"},
             {"machine", "The machine that a notebook without such a column is about.", "name"},
             jsonOption()},
            "  witnessmark import garage.witnessmark outings.csv\n"
            "  witnessmark import garage.witnessmark outings.csv --accept cured\n"
            "  witnessmark import copy.witnessmark garage.json\n",
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
