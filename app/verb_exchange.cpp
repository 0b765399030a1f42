// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>
#include <nlohmann/json.hpp>

#include "app/garage.h"
#include "app/verb.h"
#include "core/exchange/json.h"
#include "ui/words/error_words.h"

namespace wm::app {

namespace {

constexpr qint64 kLargestText = 512LL * 1024 * 1024;

Answer<std::string> readText(const QString& path) {
    QFile file(path);
    if (QFileInfo(path).isDir())
        return fail(Exit::CannotOpen, ui::quoted(path) + " is a folder: name the JSON file in it.");
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

Answer<void> runImport(const Call& call) {
    const auto text = readText(call.word(1));
    if (!text)
        return tl::unexpected(text.error());
    auto rows = exchange::fromJson(*text);
    if (!rows)
        return fail(rows.error());
    const bool isNew = !QFileInfo::exists(call.word(0));
    Answer<ledger::Change> change;
    {
        auto garage = isNew ? Garage::create(call) : Garage::open(call, store::OpenFor::Writing);
        if (!garage)
            return tl::unexpected(garage.error());
        change = garage->apply([&](const ledger::Pen& pen) { return ledger::adoptAll(pen, *rows); });
    }
    if (!change) {
        if (isNew)
            QFile::remove(call.word(0));
        return tl::unexpected(change.error());
    }
    if (call.has("json"))
        print(call.console(), {{"written", change->text}, {"rows", change->rows.size()}});
    else
        call.console().out << "Read " << change->rows.size() << " rows into " << call.word(0) << ".\n";
    return {};
}

Answer<void> writeText(const QString& path, const std::string& text) {
    QSaveFile file(path);
    const auto size = static_cast<qint64>(text.size());
    if (!file.open(QIODevice::WriteOnly) || file.write(text.data(), size) != size || !file.commit())
        return fail(Exit::CannotWrite, ui::quoted(path) +
                                           " can't be written: check that its folder is there, that it "
                                           "is no folder itself, and that there is room.");
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
            "Read a whole file from JSON, into a new file or one that is still empty.",
            {{"FILE", "The file; made if it is not there."}, {"JSON", "The text, as `export` writes it."}},
            {jsonOption()},
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
