// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/base/phrase.h"
#include "ui/words/error_words.h"

namespace wm::app {

namespace {

QString wordsOf(const std::string& kept) {
    return fromUtf8(base::said(base::restored(kept)));
}

tl::unexpected<Failure> nothingLeft(bool back) {
    if (back)
        return fail(
            Exit::Refused,
            "There is nothing to take back: undo ends after 12 hours, at a printed sheet, an export and "
            "a whole file taken in. What is wrong can be struck in the window.");
    return fail(Exit::Refused,
                "There is nothing to say again: it ends with the next entry and after 12 hours.");
}

Failure failureOfTurn(const store::ApplyError& error, const QString& file) {
    if (error.error.fault != base::Fault::MustAnswer || error.kind != store::ApplyError::Kind::Refused)
        return failureOf(error);
    return {Exit::Refused,
            "That would take back the only machine, and " + ui::quoted(file) +
                " would be empty: make a new file if you want to begin anew.",
            error.error.fault};
}

// A command has no session: it goes back to what others said as well, and says first what that was.
Answer<void> turn(const Call& call, bool back) {
    auto garage = Garage::open(call, store::OpenFor::Writing);
    if (!garage)
        return tl::unexpected(garage.error());
    store::File& file = garage->file();
    file.reachBack();
    const auto next = back ? file.undoText() : file.redoText();
    if (!next)
        return nothingLeft(back);
    if (!call.has("accept")) {
        call.console().out << (back ? "Would take back: " : "Would say again: ") << wordsOf(*next)
                           << ". Nothing was written; with --accept it is.\n";
        return {};
    }
    const auto turned = back ? file.undo() : file.redo();
    if (!turned)
        return tl::unexpected<Failure>{failureOfTurn(turned.error(), call.word(0))};
    call.console().wrote = true;
    call.console().out << (back ? "Taken back: " : "Said again: ") << wordsOf(*turned) << ".\n";
    return {};
}

QCommandLineOption acceptOption() {
    return {"accept", "Do it; without it what would be done is only said."};
}

}  // namespace

VerbSpec undoVerb() {
    return {"undo",
            "Take back what was last said, within 12 hours.",
            {{"FILE", "The file."}},
            {acceptOption()},
            "  witnessmark undo garage.witnessmark\n"
            "  witnessmark undo garage.witnessmark --accept\n",
            [](const Call& call) { return turn(call, true); }};
}

VerbSpec redoVerb() {
    return {"redo",
            "Say again what was taken back.",
            {{"FILE", "The file."}},
            {acceptOption()},
            "  witnessmark redo garage.witnessmark --accept\n",
            [](const Call& call) { return turn(call, false); }};
}

}  // namespace wm::app
