// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/console.h"

#include <QRegularExpression>
#include <exception>
#include <nlohmann/json.hpp>
#include <utility>

#include "ui/words/error_words.h"
#include "ui/workbench/write_bytes.h"

namespace wm::app {

tl::unexpected<Failure> fail(Exit exit, QString words) {
    return tl::unexpected<Failure>{Failure{exit, std::move(words), std::nullopt}};
}

QString asArgument(const QString& word) {
    static const QRegularExpression kPlain(QStringLiteral("^[A-Za-z0-9_./+@:,%-]+$"));
    QString said = word.startsWith('-') ? "./" + word : word;
    if (kPlain.match(said).hasMatch())
        return said;
    return '\'' + said.replace("'", "'\\''") + '\'';
}

tl::unexpected<Failure> cannotWrite(const QString& path, const QString& detail) {
    if (const auto stays = ui::whyItStays(path))
        return fail(Exit::CannotWrite,
                    ui::quoted(path) + " can't be written: " + *stays + ". Give another name.");
    const QString why = detail.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(detail);
    return fail(Exit::CannotWrite,
                ui::quoted(path) + " can't be written" + why +
                    ": check that its folder is there, that it is no folder itself, and that "
                    "there is room.");
}

tl::unexpected<Failure> fail(const base::Error& error) {
    return tl::unexpected<Failure>{Failure{Exit::Refused, ui::wordsFor(error), error.fault}};
}

QString unforeseenWords(const char* what, bool wrote) {
    const QString happened = QStringLiteral("Something went wrong that nobody foresaw ") + ui::quoted(what);
    if (wrote)
        return happened +
               ": what you asked for is in the file, only the answer is not whole; do not say it again.";
    return happened +
           ": nothing of what you asked for just now was written, and what was saved before is safe.";
}

Answer<void> guarded(const Console& console, const std::function<Answer<void>()>& act) {
    try {
        return act();
    } catch (const std::exception& unforeseen) {
        return fail(Exit::Unforeseen, unforeseenWords(unforeseen.what(), console.wrote));
    } catch (...) {
        return fail(Exit::Unforeseen, unforeseenWords("unknown", console.wrote));
    }
}

void print(Console& console, const nlohmann::ordered_json& json) {
    console.out << fromUtf8(json.dump(2)) << '\n';
}

}  // namespace wm::app
