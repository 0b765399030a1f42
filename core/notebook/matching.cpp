// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/matching.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/words/edit_distance.h"
#include "core/words/folding.h"
#include "core/words/synonyms.h"

namespace wm::notebook {

namespace {

constexpr std::size_t kMostMachines = 200;  ///< more names than that are no machines
constexpr std::size_t kOften = 3;           ///< so many lines make a name of its own
constexpr std::size_t kRarePercent = 5;     ///< a spelling in fewer lines of the machine's is a typing error

std::string joined(std::string_view text) {
    std::string plain = words::folded(text);
    std::erase(plain, ' ');
    return plain;
}

std::size_t allowedEdits(std::string_view name) {
    return name.size() < 4 ? 0 : name.size() < 7 ? 1 : 2;
}

// Two names that differ by their figures are two machines: Heron 250 is no typing error for Heron 450.
bool sameFigures(std::string_view a, std::string_view b) {
    const auto figures = [](std::string_view text) {
        std::string out;
        for (const char c : text)
            if (c >= '0' && c <= '9')
                out += c;
        std::sort(out.begin(), out.end());
        return out;
    };
    return figures(a) == figures(b);
}

std::vector<std::string> partsOfCell(std::string_view text) {
    std::string plain(text);
    for (const std::string_view word : {" and ", " und ", " et ", " e ", " y ", " u. ", " with "})
        for (auto at = plain.find(word); at != std::string::npos; at = plain.find(word))
            plain.replace(at, word.size(), "+");
    for (char& c : plain)
        if (c == '/' || c == '&' || c == ',' || c == ';' || c == '|' || c == '\n')
            c = '+';
    return base::split(plain, '+');
}

}  // namespace

struct Names::Spelling {
    std::string text;
    std::string plain;
    std::size_t lines = 0;
};

Names::Guess Names::nearest(const std::string& plain) const {
    Guess guess;
    std::size_t parts = 0;
    std::size_t nearOnes = 0;
    for (std::size_t at = 0; at < machines_.size(); ++at) {
        const std::string name = joined(machines_[at].name);
        if (name == plain)
            return {NameFit::Otherwise, at};
        const bool isPart = plain.size() >= 3 && (name.starts_with(plain) || name.ends_with(plain) ||
                                                  (name.size() >= 3 && plain.starts_with(name)));
        if (isPart) {
            guess = {NameFit::Otherwise, at};
            ++parts;
        }
    }
    if (parts == 1)
        return guess;
    if (parts > 1)
        return {};
    for (std::size_t at = 0; at < machines_.size(); ++at) {
        const std::string name = joined(machines_[at].name);
        const std::size_t most = allowedEdits(name);
        if (most == 0 || words::errorsBetween(name, plain, most) > most || name[0] != plain[0] ||
            (!sameFigures(name, plain) && words::errorsBetween(name, plain, 1) > 0 &&
             name.size() == plain.size()))
            continue;
        guess = {NameFit::Near, at};
        ++nearOnes;
    }
    return nearOnes == 1 ? guess : Guess{};
}

std::vector<std::size_t> Names::severalIn(std::string_view text) const {
    std::vector<std::size_t> several;
    const auto parts = partsOfCell(text);
    if (parts.size() < 2)
        return several;
    for (const std::string& part : parts) {
        const Guess guess = nearest(joined(part));
        if (guess.fit == NameFit::Unknown)
            return {};
        if (std::find(several.begin(), several.end(), guess.machine) == several.end())
            several.push_back(guess.machine);
    }
    return several;
}

std::optional<std::size_t> Names::meantPlace(const std::string& text, const MeantNames& meant) {
    const auto said = meant.find(text);
    if (said == meant.end())
        return std::nullopt;
    const std::string name(base::trimmed(text));
    for (std::size_t at = 0; at < machines_.size(); ++at)
        if (said->second ? machines_[at].id == said->second : machines_[at].name == name)
            return at;
    if (said->second || name.empty())
        return std::nullopt;
    machines_.push_back({name, std::nullopt});
    return machines_.size() - 1;
}

Names::Guess Names::guessOf(const Spelling& spelling) {
    Guess guess = nearest(spelling.plain);
    const bool own = guess.fit == NameFit::Unknown || (guess.fit == NameFit::Near && spelling.lines > 5);
    const std::string_view name = base::trimmed(spelling.text);
    if (own && !spelling.plain.empty() && machines_.size() < kMostMachines) {
        guess = {spelling.lines >= kOften ? NameFit::New : NameFit::Rare, machines_.size()};
        machines_.push_back({std::string(name), std::nullopt});
    }
    if (guess.fit == NameFit::Otherwise && name == machines_[guess.machine].name && name == spelling.text)
        guess.fit = NameFit::Same;
    return guess;
}

const Names::LinesOf& Names::count(std::size_t machine, const Spelling& spelling) {
    LinesOf& lines = linesOf_[machine];
    lines.all += spelling.lines;
    lines.most = std::max(lines.most, spelling.lines);
    return lines;
}

NameReading Names::readingOf(const Spelling& spelling, const MeantNames& meant) {
    if (const auto place = meantPlace(spelling.text, meant)) {
        count(*place, spelling);
        return {NameFit::Same, {*place}};
    }
    if (const auto several = severalIn(spelling.text); several.size() > 1)
        return {NameFit::Two, several};
    Guess guess = guessOf(spelling);
    const LinesOf& of = count(guess.machine, spelling);
    // A spelling that the notebook keeps to is its habit and no typing error.
    const bool rare = spelling.lines * 100 <= of.all * kRarePercent || (spelling.lines == 1 && of.most > 1);
    if (guess.fit == NameFit::Otherwise && !rare)
        guess.fit = NameFit::Same;
    return {guess.fit, {guess.machine}};
}

Names::Names(std::vector<NamedMachine> known, const std::vector<std::string_view>& texts,
             const MeantNames& meant)
    : machines_(std::move(known)) {
    std::map<std::string, std::size_t, std::less<>> lines;
    for (const std::string_view text : texts)
        if (!base::trimmed(text).empty())
            ++lines[std::string(text)];
    std::vector<Spelling> spellings;
    for (const auto& [text, count] : lines)
        spellings.push_back({text, joined(text), count});
    // What was said by hand first, then the commonest: what many lines say is the name, the rest is measured
    // against it.
    std::stable_sort(spellings.begin(), spellings.end(), [&](const Spelling& a, const Spelling& b) {
        const bool aSaid = meant.contains(a.text);
        return aSaid != meant.contains(b.text) ? aSaid : a.lines > b.lines;
    });
    for (const Spelling& spelling : spellings)
        read_.push_back({spelling.text, spelling.lines, readingOf(spelling, meant)});
    std::sort(read_.begin(), read_.end(),
              [](const NameSpelling& a, const NameSpelling& b) { return a.text < b.text; });
}

std::vector<NameSpelling> Names::spellings() const {
    std::vector<NameSpelling> spellings = read_;
    std::stable_sort(spellings.begin(), spellings.end(),
                     [](const NameSpelling& a, const NameSpelling& b) { return a.lines > b.lines; });
    return spellings;
}

NameReading Names::reading(std::string_view text) const {
    const auto found =
        std::lower_bound(read_.begin(), read_.end(), text,
                         [](const NameSpelling& one, std::string_view with) { return one.text < with; });
    return found == read_.end() || found->text != text ? NameReading{} : found->reading;
}

namespace {

// Words that say what was done rather than to what, and small words.
constexpr std::array<std::string_view, 58> kIdle{
    "and",     "the",         "a",       "of",         "for",      "with",     "both",      "new",
    "done",    "swap",        "swapped", "change",     "changed",  "replace",  "replaced",  "renew",
    "renewed", "fitted",      "fit",     "set",        "clean",    "cleaned",  "check",     "checked",
    "look",    "looked",      "measure", "measured",   "kit",      "one",      "oiled",     "to",
    "on",      "in",          "an",      "feel",       "adjusted", "adjust",   "tightened", "job",
    "und",     "neu",         "neue",    "gewechselt", "wechsel",  "geprueft", "gepruft",   "gereinigt",
    "gemacht", "eingestellt", "send",    "out",        "service",  "serviced", "pair",      "it",
    "de",      "der"};

std::set<std::string> stemsOf(std::string_view text) {
    std::set<std::string> stems;
    for (const std::string& word : words::wordsOf(text)) {
        if (std::find(kIdle.begin(), kIdle.end(), word) != kIdle.end())
            continue;
        for (std::string& stem : words::meantBy(word))
            stems.insert(std::move(stem));
    }
    return stems;
}

struct TaskWords {
    const upkeep::TaskVersion* task = nullptr;
    std::set<std::string> all{};   ///< of name and code
    std::set<std::string> name{};  ///< of the name alone
};

bool within(const std::set<std::string>& part, const std::set<std::string>& whole) {
    return std::includes(whole.begin(), whole.end(), part.begin(), part.end());
}

// How much of a task's name the words leave unsaid; less is better. Words of the parts that were used speak
// for a task, and the plain oil of an engine or gearbox is meant before any other.
int unsaid(const std::set<std::string>& said, const std::set<std::string>& context, const TaskWords& words) {
    int score = 0;
    for (const std::string& word : words.name) {
        if (said.contains(word))
            continue;
        score += context.contains(word) ? 1 : 3;
    }
    const bool drive = words.task->code == "engine-oil" || words.task->code == "gearbox-oil";
    return score - (drive && said.contains("oil") ? 2 : 0);
}

bool onlySidesDiffer(const TaskWords& a, const TaskWords& b) {
    const auto without = [](std::set<std::string> words) {
        words.erase("front");
        words.erase("rear");
        return words;
    };
    return a.all != b.all && without(a.name) == without(b.name);
}

TaskList meant(const std::set<std::string>& said, const std::set<std::string>& context,
               const std::vector<TaskWords>& tasks) {
    std::vector<std::pair<int, const TaskWords*>> fits;
    if (said.empty())
        return {};
    for (const TaskWords& words : tasks)
        if (within(said, words.all))
            fits.emplace_back(unsaid(said, context, words), &words);
    std::stable_sort(fits.begin(), fits.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    if (fits.empty())
        return {};
    TaskList best{fits[0].second->task};
    for (std::size_t at = 1; at < fits.size() && fits[at].first == fits[0].first; ++at) {
        if (!onlySidesDiffer(*fits[0].second, *fits[at].second))
            return {};
        best.push_back(fits[at].second->task);
    }
    return best;
}

}  // namespace

TaskList tasksMeant(std::string_view job, std::string_view used, const TaskList& tasks) {
    std::vector<TaskWords> words;
    for (const upkeep::TaskVersion* task : tasks) {
        TaskWords one{task, stemsOf(task->name), {}};
        one.name = one.all;
        one.all.merge(stemsOf(task->code));
        words.push_back(std::move(one));
    }
    std::set<std::string> context = stemsOf(used);
    context.merge(stemsOf(job));
    const TaskList whole = meant(stemsOf(job), context, words);
    TaskList together;
    for (const std::string& part : partsOfCell(job)) {
        const TaskList of = meant(stemsOf(part), context, words);
        if (of.empty())
            return whole;
        for (const auto* task : of)
            if (std::find(together.begin(), together.end(), task) == together.end())
                together.push_back(task);
    }
    // "oil and filter" are two jobs; commas stand in the names of single ones too.
    const bool listed = job.find(',') != std::string_view::npos && !whole.empty();
    return listed || together.size() < whole.size() ? whole : together;
}

}  // namespace wm::notebook
