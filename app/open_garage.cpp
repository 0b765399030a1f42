// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/open_garage.h"

#include <nlohmann/json.hpp>
#include <utility>

#include "core/base/phrase.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/workbench/file_names.h"

namespace wm::app {

namespace {

using store::OpenOutcome;

bool isOpen(OpenOutcome outcome) {
    return outcome == OpenOutcome::Opened || outcome == OpenOutcome::Migrated ||
           outcome == OpenOutcome::NewerReadOnly;
}

bool givesItsFacts(OpenOutcome outcome) {
    return outcome == OpenOutcome::Foreign || outcome == OpenOutcome::Lacking ||
           outcome == OpenOutcome::Altered;
}

bool isOlder(const store::OpenReport& report) {
    return report.outcome == OpenOutcome::NoAccess && report.detail == "older";
}

}  // namespace

Garage::Garage(std::unique_ptr<store::File> file, calendar::Date clock)
    : file_(std::move(file)), today_(file_->ledger()->garage().pinnedToday.value_or(clock)) {
    lookOn(today_);
}

Answer<Garage> Garage::open(const Call& call, store::OpenFor purpose) {
    store::OpenReport report;
    return open(call, purpose, report);
}

Answer<Garage> Garage::open(const Call& call, store::OpenFor purpose, store::OpenReport& report) {
    const QString path = ui::whereItLies(call.word(0));
    auto opened = store::File::open(path, purpose);
    // A file of an earlier version is brought up to this one before it can be read, by whichever verb comes
    // first.
    if (isOlder(opened.report) && purpose == store::OpenFor::ReadingOnly) {
        const bool tookBack = opened.report.tookBack;
        opened = store::File::open(path, store::OpenFor::Writing);
        opened.report.tookBack |= tookBack;
    }
    report = opened.report;
    if (givesItsFacts(report.outcome))
        return fail(Exit::CannotOpen, ui::wordsFor(report) + " Say witnessmark import NEW.witnessmark " +
                                          asArgument(call.word(0)) + " and go on with the new file.");
    if (!isOpen(report.outcome) || opened.file == nullptr)
        return fail(Exit::CannotOpen, ui::wordsFor(report));
    if (const QString words = ui::wordsFor(report); !words.isEmpty())
        call.console().err << "witnessmark: " << words.simplified() << '\n';
    Garage garage(std::move(opened.file), call.console().today());
    garage.console_ = &call.console();
    return garage;
}

Answer<Garage> Garage::create(const Call& call) {
    auto garage = create(call.word(0), call.console().today());
    if (garage)
        garage->console_ = &call.console();
    return garage;
}

Answer<Garage> Garage::create(const QString& path, calendar::Date clock) {
    ui::takeBackUnfinished(path);
    auto opened = store::File::create(path);
    if (opened.file != nullptr)
        return Garage(std::move(opened.file), clock);
    if (opened.report.detail == "reserved" || !opened.report.beside.isEmpty())
        return fail(Exit::CannotWrite, ui::wordsFor(opened.report));
    if (ui::isThere(path))
        return fail(Exit::CannotWrite, ui::quoted(path) + " is there already: choose another name.");
    return fail(Exit::CannotWrite, ui::quoted(path) +
                                       " can't be made: check that its folder is there, may be "
                                       "written and has room.");
}

void Garage::lookOn(calendar::Date day) {
    book_ = std::make_unique<book::Book>(file_->ledger(), day);
}

Answer<picture::Change> Garage::apply(const store::Verb& verb) {
    auto change = file_->apply(verb, today_);
    if (!change)
        return tl::unexpected<Failure>{failureOf(change.error())};
    if (console_ != nullptr)
        console_->wrote = true;
    if (const auto trouble = file_->backupTrouble(); trouble && console_ != nullptr)
        console_->err << "witnessmark: " << ui::wordsFor(*trouble).simplified() << '\n';
    today_ = file_->ledger()->garage().pinnedToday.value_or(today_);
    lookOn(today_);
    return std::move(*change);
}

void Garage::endUndo() {
    if (file_->endUndo() || console_ == nullptr)
        return;
    console_->err
        << "witnessmark: what was said before can still be taken back: another program held the file. "
           "Don't undo it.\n";
}

Failure failureOf(const store::ApplyError& error) {
    if (error.kind == store::ApplyError::Kind::Refused)
        return fail(error.error).value();
    return {Exit::CannotWrite, ui::wordsFor(error), std::nullopt};
}

void reportWritten(const Call& call, const picture::Change& change) {
    if (!call.has("json")) {
        QString words = fromUtf8(base::said(base::restored(change.text)));
        if (!words.isEmpty())
            words[0] = words[0].toUpper();
        call.console().out << words << ".\n";
        return;
    }
    auto ids = nlohmann::ordered_json::array();
    for (const picture::Row& row : change.rows)
        std::visit([&ids](const auto& one) { ids.push_back(one.id.value()); }, row);
    print(call.console(), {{"written", base::said(base::restored(change.text))}, {"ids", ids}});
}

}  // namespace wm::app
