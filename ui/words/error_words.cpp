// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/error_words.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "core/base/circle.h"
#include "ui/words/act_words.h"
#include "ui/words/field_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using base::Fault;

constexpr qsizetype kLongestQuote = 60;

// Puts the parts in at once, so that a "%2" that the user typed stays what it is.
QString filled(const QString& words, const QString& where, const QString& given, const QString& wanted) {
    QString result;
    for (qsizetype at = 0; at < words.size(); ++at) {
        const QChar next = at + 1 < words.size() ? words[at + 1] : QChar();
        if (words[at] == '%' && next >= '1' && next <= '3') {
            result += next == '1' ? where : next == '2' ? given : wanted;
            ++at;
        } else {
            result += words[at];
        }
    }
    return result;
}

struct FaultWords {
    Fault fault;
    const char* what;  ///< %1 is the field, with what was typed if there is something
    const char* doThis;
    const char* doThisByBound;  ///< if the error says what would have been right: %3
};
constexpr std::array<FaultWords, base::kFaults> kFaultWords{{
    {Fault::Empty, QT_TR_NOOP("The %1 is blank"), QT_TR_NOOP("fill it in"), QT_TR_NOOP("enter %3")},
    {Fault::NotANumber, QT_TR_NOOP("The %1 is not a number"), QT_TR_NOOP("enter digits, like 12.5"),
     QT_TR_NOOP("enter it like %3")},
    {Fault::NotADate, QT_TR_NOOP("The %1 is not a day of the calendar"),
     QT_TR_NOOP("enter it like 2026-05-16"), QT_TR_NOOP("enter it like %3")},
    {Fault::Negative, QT_TR_NOOP("The %1 is below zero"), QT_TR_NOOP("enter zero or more"), nullptr},
    {Fault::NotPositive, QT_TR_NOOP("The %1 is not above zero"), QT_TR_NOOP("enter more than zero"), nullptr},
    {Fault::TooLarge, QT_TR_NOOP("The %1 is too large"), QT_TR_NOOP("enter a smaller figure"),
     QT_TR_NOOP("enter at most %3")},
    {Fault::TooLong, QT_TR_NOOP("The %1 is too long"), QT_TR_NOOP("shorten it"),
     QT_TR_NOOP("shorten it to %3 characters")},
    {Fault::NotText, QT_TR_NOOP("The %1 holds characters that are no text"),
     QT_TR_NOOP("enter it again as plain text (UTF-8)"), nullptr},
    {Fault::InFuture, QT_TR_NOOP("The %1 lies in the future"), QT_TR_NOOP("enter today or an earlier day"),
     QT_TR_NOOP("enter %3 or an earlier day")},
    {Fault::BeforeItsTime, QT_TR_NOOP("The %1 lies before the first day of what it is about"),
     QT_TR_NOOP("enter a later day, or move that first day"),
     QT_TR_NOOP("enter %3 or a later day, or move that first day")},
    {Fault::Unknown, QT_TR_NOOP("The %1 is not known here"),
     QT_TR_NOOP("choose one that is there, or add it first"), QT_TR_NOOP("choose one of these: %3")},
    {Fault::Duplicate, QT_TR_NOOP("The %1 is there already"),
     QT_TR_NOOP("choose another one, or change the one that is there"), nullptr},
    {Fault::MeterRunsBack, QT_TR_NOOP("The %1 is lower than the reading before it"),
     QT_TR_NOOP("check it, or say that the meter was replaced, reset or rolled over"),
     QT_TR_NOOP("check it against %3, or say that the meter was replaced, reset or rolled over")},
    {Fault::MeterJumps, QT_TR_NOOP("The %1 is more than the days since the last reading can hold"),
     QT_TR_NOOP("check the figure and the date"), nullptr},
    {Fault::MeterStood, QT_TR_NOOP("The %1 is far more than the meter ran"),
     QT_TR_NOOP("a slip of the pen, has the meter stopped, or is it right"),
     QT_TR_NOOP(
         "%3. A slip of the pen, has the meter stopped (log that from the reading before on), or is it "
         "right")},
    {Fault::PositionTaken, QT_TR_NOOP("The %1 is taken by another item at that time"),
     QT_TR_NOOP("take that item off first, or swap the two"), nullptr},
    {Fault::Cycle, QT_TR_NOOP("The %1 would in the end need or hold itself"),
     QT_TR_NOOP("choose another one"), nullptr},
    {Fault::InTwoPlaces, QT_TR_NOOP("The %1 is fitted somewhere else at that time"),
     QT_TR_NOOP("take it off there first"), nullptr},
    {Fault::WrongKind, QT_TR_NOOP("The %1 is of a kind that does not go there"),
     QT_TR_NOOP("choose another one, or put its kind right on its card"), nullptr},
    {Fault::NotOpened, QT_TR_NOOP("The %1 is not opened by that job"),
     QT_TR_NOOP("leave it out, or say that it was tightened as well"), nullptr},
    {Fault::IsOut, QT_TR_NOOP("The %1 can't be tightened: nothing is fitted there"),
     QT_TR_NOOP("say first what was put back on"), QT_TR_NOOP("say first what was put back on at: %3")},
    {Fault::NothingThere, QT_TR_NOOP("The %1 can't be recorded: nothing was fitted there on that day"),
     QT_TR_NOOP("say first what was put on, or check the day"),
     QT_TR_NOOP("say first what was put on at: %3, or check the day")},
    {Fault::RidesSoon, QT_TR_NOOP("The %1 would leave the machine apart, and it is to be ridden soon"),
     QT_TR_NOOP("leave that job out, have a spare on the shelf, or do it after %3"),
     QT_TR_NOOP("leave that job out, have a spare on the shelf, or do it after %3")},
    {Fault::NotFitted, QT_TR_NOOP("The %1 has nothing fitted that could come off"),
     QT_TR_NOOP("check the position and the date"), nullptr},
    {Fault::Retired, QT_TR_NOOP("The %1 is out of use by then"),
     QT_TR_NOOP("choose another one or an earlier day"), nullptr},
    {Fault::ReasonNeeded, QT_TR_NOOP("The %1 can't be left out here"), QT_TR_NOOP("say in a few words why"),
     nullptr},
    {Fault::WrongUnit, QT_TR_NOOP("The %1 has a unit that does not fit"),
     QT_TR_NOOP("give it in the unit that is asked for"), QT_TR_NOOP("choose one of these: %3")},
    {Fault::OutOfOrder, QT_TR_NOOP("The %1 does not follow from the rest"),
     QT_TR_NOOP("put the earlier or smaller one first"), nullptr},
    {Fault::AlreadyStruck, QT_TR_NOOP("The %1 was struck before"),
     QT_TR_NOOP("there is nothing left to take back"), nullptr},
    {Fault::NotEnough, QT_TR_NOOP("The %1 is more than is there"),
     QT_TR_NOOP("take less, or count the shelf"), QT_TR_NOOP("take at most %3, or count the shelf")},
    {Fault::Malformed, QT_TR_NOOP("The %1 can't be read"), QT_TR_NOOP("put it right and try again"),
     QT_TR_NOOP("what is wanted there is: %3")},
    {Fault::NewerFormat, QT_TR_NOOP("The %1 is that of a newer Witnessmark"),
     QT_TR_NOOP("read it with that newer program"),
     QT_TR_NOOP("read it with that newer program; this one reads up to format %3")},
    {Fault::Inconsistent, QT_TR_NOOP("The %1 does not fit the other entries"),
     QT_TR_NOOP("check what it refers to"), nullptr},
    {Fault::NothingToDo, QT_TR_NOOP("The %1 would stay as it is"),
     QT_TR_NOOP("choose or change something first"), nullptr},
    {Fault::MustAnswer, QT_TR_NOOP("The %1 is still open"),
     QT_TR_NOOP(
         "torque and mark those joints, enter what was fitted, or say that it was ridden all the same"),
     nullptr},
    {Fault::Implausible, QT_TR_NOOP("The %1 is far from anything real"),
     QT_TR_NOOP("check it, and enter it again if it is right"), nullptr},
    {Fault::NotEmpty, QT_TR_NOOP("The %1 holds entries already"), QT_TR_NOOP("read the text into a new file"),
     nullptr},
    {Fault::Stopped, QT_TR_NOOP("The %1 was stopped, and nothing was done"),
     QT_TR_NOOP("say it again if you want it after all"), nullptr},
    {Fault::Outdated, QT_TR_NOOP("The %1 was judged before the file changed"),
     QT_TR_NOOP("look at it once more"), nullptr},
    {Fault::NoColumns, QT_TR_NOOP("The %1 has no columns"),
     QT_TR_NOOP("part its cells by semicolons, commas or tabs"), nullptr},
    {Fault::NoDates, QT_TR_NOOP("The %1 has no column of dates"),
     QT_TR_NOOP("say which one it is, or add it"), nullptr},
    {Fault::NoMachine, QT_TR_NOOP("The %1 has no column for the machine"),
     QT_TR_NOOP("say which one it is, or which machine all of it is about"), nullptr},
    {Fault::NoFigures, QT_TR_NOOP("The %1 has no column of hours, readings, kilometres, washes or jobs"),
     QT_TR_NOOP("say which one it is"), nullptr},
    {Fault::NothingNew, QT_TR_NOOP("The %1 says nothing that is new to this file"),
     QT_TR_NOOP("nothing is left to be done"), nullptr},
}};

constexpr bool inOrderOfFaults() {
    for (std::size_t at = 0; at < kFaultWords.size(); ++at)
        if (kFaultWords[at].fault != static_cast<Fault>(at))
            return false;
    return true;
}
static_assert(inOrderOfFaults());

// Ids say nothing to anybody.
bool isId(const QString& given) {
    return given.size() > 9 && std::all_of(given.begin(), given.end(), [](QChar c) { return c.isDigit(); });
}

// Clarifies a bound that is not part of the remedy: "(24)".
QString besides(const base::Error& error, bool inRemedy) {
    return error.wanted.empty() || inRemedy ? QString()
                                            : " (" + quoted(QString::fromStdString(error.wanted)) + ')';
}

// A text that was written by hand or cut: what is there can be read, and something is not there.
bool isMissing(const base::Error& error) {
    return error.fault == Fault::Malformed && error.wanted == "this key";
}

// What one text says in two places, where nobody chose a name that is taken.
bool standsTwice(const base::Error& error) {
    const std::string place = error.field.text();
    const std::string_view last = lastPart(place);
    return error.fault == Fault::Duplicate &&
           (place.starts_with("line ") || last == "id" || last == "entered");
}

// What waits for itself, and what goes while something still needs it: what to do hangs on the field.
std::optional<QString> wordsOfOrder(const base::Error& error) {
    const std::string place = error.field.text();
    const std::string_view last = lastPart(place);
    const QString given = QString::fromStdString(error.given);
    const bool isCircle = error.given.find(base::kBefore) != std::string::npos;
    const bool isAct = last == "edges" || last.starts_with("later") || last.starts_with("earlier");
    if (error.fault == Fault::Cycle && isAct && !isCircle && last != "edges")
        return tr("An act can't come before itself (%1): choose another one.").arg(quoted(given));
    if (error.fault == Fault::Cycle && isAct)
        return tr("These acts wait for each other, so none of them can be first: %1. Take one of these "
                  "orders "
                  "out.")
            .arg(cycleWords(given));
    if (error.fault == Fault::Cycle && isCircle)
        return tr("These access steps need each other, so none of them can come off first: %1. Take one of "
                  "these needs out.")
            .arg(cycleWords(given));
    if (error.fault == Fault::Inconsistent && last == "active")
        return tr("It can't be switched off, %1 still needs it: take it out there first.").arg(quoted(given));
    if (error.fault == Fault::Inconsistent && last == "doings")
        return tr("The doing %1 can't go, the order of %2 still speaks of it: change that one first.")
            .arg(quoted(given), quoted(QString::fromStdString(error.wanted)));
    return std::nullopt;
}

}  // namespace

QString quoted(const QString& text) {
    QString clean;
    for (const QChar c : text.simplified()) {
        const auto category = c.category();
        const bool disturbs = category == QChar::Other_Control || category == QChar::Other_Format ||
                              category == QChar::Separator_Line || category == QChar::Separator_Paragraph;
        clean += disturbs ? QChar(0xFFFD) : c;
    }
    if (clean.size() > kLongestQuote) {
        const bool splitsPair = clean[kLongestQuote - 1].isHighSurrogate();
        clean = clean.left(kLongestQuote - (splitsPair ? 1 : 0)) + QChar(0x2026);
    }
    return QChar(0x201C) + clean + QChar(0x201D);
}

QString wordsFor(const base::Error& error) {
    if (const auto order = wordsOfOrder(error))
        return *order;
    const QString given = QString::fromStdString(error.given);
    const QString wanted = error.wanted.empty() ? QString() : tr(error.wanted.c_str()).simplified();
    QString where = fieldWords(error.field.text());
    if (!given.isEmpty() && !isId(given))
        where += ' ' + quoted(given);
    if (standsTwice(error))
        return tr("The %1 stands there twice: take one of the two out, or give each its own.").arg(where);
    if (isMissing(error))
        return tr("The %1 is missing: add it, or export the file once more.").arg(where);
    const FaultWords& words = kFaultWords.at(static_cast<std::size_t>(error.fault));
    const char* bound = error.wanted.empty() ? nullptr : words.doThisByBound;
    const QString what = filled(tr(words.what), where, given, wanted);
    const QString doThis = filled(tr(bound != nullptr ? bound : words.doThis), where, given, wanted);
    return what + besides(error, bound != nullptr) + ": " + doThis + '.';
}

}  // namespace wm::ui
