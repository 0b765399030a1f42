// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/picture/checks.h"
#include "core/picture/facts.h"

namespace wm::app {

namespace {

// What one call of `log` is about: the riding of a day brings its meter, wash and crash along; without it
// there is one of these alone.
constexpr std::array<const char*, 4> kAlone{"reading", "odometer", "wash", "crash"};
constexpr std::array<const char*, 8> kOfAnOuting{"race",  "ground", "pace",     "meter",
                                                 "rider", "event",  "distance", "other"};

// The option under which a piece is noted: "starts".
std::string optionFor(const usage::Noted& noted) {
    std::string option(noted.field);
    std::replace(option.begin(), option.end(), '_', '-');
    return option;
}

std::vector<usage::Noted> notedPieces() {
    std::vector<usage::Noted> noted;
    for (const usage::PieceTraits& piece : usage::kPieces)
        if (piece.noted)
            noted.push_back(*piece.noted);
    return noted;
}

Answer<std::optional<bool>> readWash(const Call& call) {
    if (!call.has("wash"))
        return std::nullopt;
    const QString how = call.value("wash");
    if (how == "pressure" || how == "hand")
        return how == "pressure";
    return fail(base::Error{base::Fault::Unknown, "wash", call.text("wash"), "pressure, hand"});
}

Answer<void> readFigures(const Call& call, usage::Outing& outing) {
    if (call.value("outing") != "?") {
        const auto hours = call.hours("outing");
        if (!hours)
            return tl::unexpected(hours.error());
        outing.hours = *hours;
    }
    if (call.has("distance")) {
        const auto distance = units::parseKilometres("distance", call.text("distance"));
        if (!distance)
            return fail(distance.error());
        outing.distance = *distance;
    }
    for (const usage::Noted& noted : notedPieces()) {
        const std::string option = optionFor(noted);
        if (!call.has(option.c_str()))
            continue;
        const auto count = call.count(option.c_str(), picture::kMostOfADay);
        if (!count)
            return tl::unexpected(count.error());
        outing.*noted.amount = *count;
    }
    return {};
}

Answer<void> readCircumstances(const Call& call, const book::Book& book, usage::Outing& outing) {
    const auto ground = call.oneOf("ground", usage::Ground::Unstated);
    if (!ground)
        return tl::unexpected(ground.error());
    const auto pace = call.oneOf("pace", usage::Pace::Unstated);
    if (!pace)
        return tl::unexpected(pace.error());
    outing.ground = *ground;
    outing.pace = *pace;
    const outlook::Event* event = picture::eventOn(book.ledger(), outing.machine, outing.date);
    if (call.has("event")) {
        const auto named = findEvent(book, call.value("event"));
        if (!named)
            return tl::unexpected(named.error());
        event = *named;
    }
    if (event != nullptr) {
        outing.event = event->id;
        outing.kind =
            event->kind == outlook::EventKind::Race ? usage::OutingKind::Race : usage::OutingKind::Practice;
        for (const outlook::Entry& entry : event->entries)
            if (entry.machine == outing.machine)
                outing.rider = entry.rider;
    }
    if (call.has("race") || call.has("other"))
        outing.kind = call.has("race") ? usage::OutingKind::Race : usage::OutingKind::Other;
    if (!call.has("rider"))
        return {};
    const auto rider = findPerson(book, call.value("rider"));
    if (!rider)
        return tl::unexpected(rider.error());
    outing.rider = (*rider)->id;
    return {};
}

Answer<store::Verb> outingVerb(const Call& call, const book::Book& book, MachineId machine,
                               calendar::Date date) {
    verbs::OutingDraft draft;
    draft.outing.machine = machine;
    draft.outing.date = date;
    draft.outing.note = call.text("note");
    if (auto read = readFigures(call, draft.outing); !read)
        return tl::unexpected(read.error());
    if (auto read = readCircumstances(call, book, draft.outing); !read)
        return tl::unexpected(read.error());
    const auto meter = call.hours("meter");
    if (!meter)
        return tl::unexpected(meter.error());
    const auto wash = readWash(call);
    if (!wash)
        return tl::unexpected(wash.error());
    draft.meterAfter = *meter;
    draft.washed = wash->has_value();
    draft.pressureWashed = wash->value_or(false);
    draft.crashed = call.has("crash");
    draft.handTightSeen = call.has("seen");
    draft.meterIsRight = call.has("meter-is-right");
    return store::Verb(
        [draft](const verbs::VerbContext& context) { return verbs::logOuting(context, draft); });
}

Answer<store::Verb> readingVerb(const Call& call, MachineId machine, calendar::Date date) {
    usage::HourReading reading{};
    reading.machine = machine;
    reading.date = date;
    reading.note = call.text("note");
    const auto shown = call.hours("reading");
    const auto before = call.hours("before");
    const auto rollsAt = call.hours("rolls-at");
    for (const auto* read : {&shown, &before, &rollsAt})
        if (!*read)
            return tl::unexpected(read->error());
    const auto event = call.oneOf("meter-was", usage::MeterEvent::Plain);
    if (!event)
        return tl::unexpected(event.error());
    reading.shown = **shown;
    reading.before = *before;
    reading.rollsAt = *rollsAt;
    reading.event = *event;
    const verbs::ReadingSeen seen{call.has("seen"), call.has("meter-is-right")};
    return store::Verb([reading, seen](const verbs::VerbContext& context) {
        return verbs::logReadingSeen(context, reading, seen);
    });
}

Answer<store::Verb> aloneVerb(const Call& call, MachineId machine, calendar::Date date) {
    if (call.has("reading"))
        return readingVerb(call, machine, date);
    if (call.has("odometer")) {
        usage::DistanceReading reading{};
        reading.machine = machine;
        reading.date = date;
        reading.note = call.text("note");
        const auto shown = units::parseKilometres("odometer", call.text("odometer"));
        if (!shown)
            return fail(shown.error());
        reading.shown = *shown;
        return store::Verb(
            [reading](const verbs::VerbContext& context) { return verbs::logDistance(context, reading); });
    }
    if (call.has("wash")) {
        const auto pressure = readWash(call);
        if (!pressure)
            return tl::unexpected(pressure.error());
        usage::Wash wash{};
        wash.machine = machine;
        wash.date = date;
        wash.pressure = **pressure;
        wash.note = call.text("note");
        return store::Verb(
            [wash](const verbs::VerbContext& context) { return verbs::logWash(context, wash); });
    }
    usage::Crash crash{};
    crash.machine = machine;
    crash.date = date;
    crash.note = call.text("note");
    return store::Verb(
        [crash](const verbs::VerbContext& context) { return verbs::logCrash(context, crash); });
}

Answer<void> checkAsked(const Call& call) {
    if (call.has("outing")) {
        if (call.has("reading") || call.has("odometer"))
            return fail(Exit::Usage, "With --outing the meter is given by --meter, not by --reading.");
        return {};
    }
    const auto given =
        std::count_if(kAlone.begin(), kAlone.end(), [&](const char* it) { return call.has(it); });
    if (given != 1)
        return fail(
            Exit::Usage,
            "Say one thing to log: --outing, --reading, --odometer, --wash or --crash; see witnessmark "
            "log --help.");
    std::vector<std::string> ofAnOuting(kOfAnOuting.begin(), kOfAnOuting.end());
    for (const usage::Noted& noted : notedPieces())
        ofAnOuting.push_back(optionFor(noted));
    for (const std::string& option : ofAnOuting)
        if (call.has(option.c_str()))
            return fail(Exit::Usage, QString("--%1 belongs to an outing: give --outing HOURS as well.")
                                         .arg(QString::fromStdString(option)));
    return {};
}

// Which option answers a question: in the place of its full stop.
void sayHowToAnswer(Failure& failure) {
    const bool isOfMeter = failure.fault == base::Fault::MeterStood;
    if (isOfMeter || failure.fault == base::Fault::MustAnswer)
        failure.words.replace(failure.words.size() - 1, 1, isOfMeter ? " (--meter-is-right)." : " (--seen).");
}

Answer<void> runLog(const Call& call) {
    if (auto asked = checkAsked(call); !asked)
        return asked;
    const auto day = call.day("on");
    if (!day)
        return tl::unexpected(day.error());
    auto garage = Garage::open(call, store::OpenFor::Writing);
    if (!garage)
        return tl::unexpected(garage.error());
    const auto machine = findMachine(garage->book(), call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    const calendar::Date date = day->value_or(garage->today());
    const auto verb = call.has("outing") ? outingVerb(call, garage->book(), (*machine)->id, date)
                                         : aloneVerb(call, (*machine)->id, date);
    if (!verb)
        return tl::unexpected(verb.error());
    auto change = garage->apply(*verb);
    if (!change) {
        sayHowToAnswer(change.error());
        return tl::unexpected(change.error());
    }
    reportWritten(call, *change);
    return {};
}

}  // namespace

VerbSpec logVerb() {
    QList<QCommandLineOption> options{
        machineOption(),
        onOption("The day of it, 2026-05-16; otherwise today."),
        {"outing", "A day's riding: hours as noted, \"1.3\" or \"1,3\", or \"?\" if nobody noted them.",
         "hours"},
        {"race", "It was a race (otherwise what the calendar says, or practice)."},
        {"other", "It was neither practice nor a race."}};
    for (const usage::Noted& noted : notedPieces())
        options.append({QString::fromStdString(optionFor(noted)), fromUtf8(noted.what), "count"});
    options.append(
        {{"ground", "hard, dust, sand, mud or water.", "word"},
         {"pace", "race, hard or easy.", "word"},
         {"distance", "Kilometres ridden.", "km"},
         {"meter", "What the hour meter showed afterwards.", "hours"},
         {"rider", "Who rode.", "name"},
         {"event", "The event it belongs to, if the calendar does not say so.", "name"},
         {"seen", "You have seen the hand-tight list of this machine and rode it all the same."},
         {"meter-is-right", "Far more was noted than the meter ran, and it has not stopped all the same."},
         {"wash", "A wash: pressure or hand; alone or with an outing.", "word"},
         {"crash", "A crash; alone or with an outing."},
         {"reading", "What the hour meter shows, without an outing.", "hours"},
         {"meter-was", "replaced, reset, rolled over, stopped or resumed; with --reading.", "word"},
         {"before", "What the meter showed last before that.", "hours"},
         {"rolls-at", "Where a meter that rolled over begins again.", "hours"},
         {"odometer", "What the odometer shows, without an outing.", "km"},
         {"note", "A note.", "text"},
         jsonOption()});
    return {"log",
            "Log an outing, a meter reading, a wash or a crash.",
            {{"FILE", "The file."}},
            options,
            "  witnessmark log garage.witnessmark --machine \"Heron 250\" --outing 1,3 --race --starts 3 "
            "--ground mud "
            "--meter 62,5 --wash pressure\n"
            "  witnessmark log garage.witnessmark --machine Heron --reading 0.4 --meter-was replaced "
            "--before 61.3\n",
            runLog};
}

}  // namespace wm::app
