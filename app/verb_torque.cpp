// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/book/stand_figures.h"
#include "core/fastening/lookup.h"
#include "core/units/unit_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"

namespace wm::app {

namespace {

using fastening::Figure;
using nlohmann::ordered_json;

constexpr std::size_t kMostAnswers = 8;

std::string_view kindName(fastening::FigureKind kind) {
    switch (kind) {
        case fastening::FigureKind::Joint:
            return "torque";
        case fastening::FigureKind::Quantity:
            return "quantity";
        case fastening::FigureKind::Limit:
            return "limit";
        case fastening::FigureKind::Setting:
            break;
    }
    return "setting";
}

ordered_json textOrNull(const std::string& text) {
    return text.empty() ? ordered_json(nullptr) : ordered_json(text);
}

ordered_json answerJson(const Figure& figure, std::string_view unit, double score) {
    const auto number = [](const std::optional<units::Decimal>& value) {
        return value ? ordered_json(value->text()) : ordered_json(nullptr);
    };
    return {{"kind", kindName(figure.kind)},
            {"code", figure.code},
            {"name", figure.name},
            {"about", textOrNull(figure.about)},
            {"machine", figure.machineName},
            {"thread", textOrNull(figure.thread)},
            {"low", number(figure.low)},
            {"high", number(figure.high)},
            {"unit", textOrNull(figure.unit)},
            {"reads", textOrNull(fastening::figureText(figure, '.', unit))},
            {"source", textOrNull(figure.source)},
            {"page", textOrNull(figure.page)},
            {"confirmed", figure.confirmed},
            {"score", score}};
}

QString sourceOf(const Figure& figure) {
    QString words = fromUtf8(figure.source);
    if (!figure.page.empty())
        words += ", p. " + fromUtf8(figure.page);
    if (figure.kind == fastening::FigureKind::Setting || (!figure.low && !figure.high))
        return words;
    return figure.confirmed ? words : words + " (NOT CONFIRMED against the service manual)";
}

void printAnswer(QTextStream& out, const Figure& figure, std::string_view unit) {
    const QString reads = fromUtf8(fastening::figureText(figure, ui::decimalMark(), unit));
    const QString printed = fromUtf8(fastening::figureText(figure, ui::decimalMark()));
    out << fromUtf8(figure.name);
    if (!figure.about.empty())
        out << " (" << fromUtf8(figure.about) << ')';
    out << ", " << fromUtf8(figure.machineName) << ": "
        << (reads.isEmpty() ? QString("not typed yet: look it up in the service manual") : reads);
    if (!reads.isEmpty() && reads != printed)
        out << ", as printed " << printed;
    if (!figure.thread.empty())
        out << ", " << fromUtf8(figure.thread);
    const QString source = sourceOf(figure);
    if (!reads.isEmpty() && !source.isEmpty())
        out << ", " << source;
    out << '\n';
}

Answer<void> runTorque(const Call& call) {
    std::optional<std::string_view> unit;
    if (call.has("unit")) {
        unit = units::unitNamed(call.text("unit"));
        if (!unit)
            return fail(base::Error{base::Fault::Unknown, "unit", call.text("unit"),
                                    units::torqueUnits() + ", psi, bar, mm, in, ml"});
    }
    if (call.word(1).trimmed().isEmpty())
        return fail(base::Error{base::Fault::Empty, "query", {}, {}});
    auto garage = Garage::open(call, store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    std::optional<MachineId> machine;
    if (call.has("machine")) {
        const auto found = findMachine(garage->book(), call.value("machine"));
        if (!found)
            return tl::unexpected(found.error());
        machine = (*found)->id;
    }
    const fastening::Lookup lookup(book::figuresOf(garage->book(), machine));
    const auto found = lookup.find(call.word(1).toStdString(), machine, kMostAnswers);
    const std::string_view shown = unit.value_or(found.unit);
    if (call.has("json")) {
        auto answers = ordered_json::array();
        for (const auto& hit : found.hits)
            answers.push_back(answerJson(lookup.figures()[hit.figure], shown, hit.score));
        print(call.console(), answers);
        return {};
    }
    if (found.hits.empty())
        return fail(Exit::Refused, "Nothing is called " + ui::quoted(call.word(1)) +
                                       " here: try another word, a thread like M8, or the job.");
    for (const auto& hit : found.hits)
        printAnswer(call.console().out, lookup.figures()[hit.figure], shown);
    return {};
}

}  // namespace

VerbSpec torqueVerb() {
    return {"torque",
            "Find a figure for the stand: a torque, a quantity, a limit or a setting.",
            {{"FILE", "The file."}, {"QUERY", "What it is called, in quotes: words, a thread, a job."}},
            {{"machine", "Of this machine alone, by its name or a part of it.", "name"},
             {"unit", "Answer in this unit: ft-lb, Nm, psi ...", "unit"},
             jsonOption()},
            "  witnessmark torque garage.witnessmark \"rear axl\" --machine Heron\n"
            "  witnessmark torque garage.witnessmark \"front caliper\" --unit ft-lb --json\n",
            runTorque};
}

}  // namespace wm::app
