// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/lookup.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <map>
#include <tuple>

#include "core/base/text.h"
#include "core/units/convert.h"
#include "core/units/unit_words.h"
#include "core/words/search_words.h"
#include "core/words/synonyms.h"

namespace wm::fastening {

using words::Letters;
using words::lettersOf;
using words::likeness;
using words::SameThing;
using words::sameThings;
using words::searchWords;

namespace {

// What a word is worth by where it stands.
constexpr float kInName = 1.0F;
constexpr float kInAbout = 0.95F;
constexpr float kInThread = 1.0F;
constexpr float kOtherWord = 0.92F;  // a synonym, of what it stands for
constexpr float kInMachine = 0.8F;
constexpr float kAlongside = 0.45F;

constexpr std::size_t kLongestQuery = 160;
constexpr std::size_t kMostTokens = 10;
constexpr std::uint32_t kHalf = 16;  // bits for the name, and for what it is about
constexpr std::size_t kShortestJoined = 6;
constexpr double kSurelyJoined = 0.75;
constexpr double kForTheRest = 0.25;  // of a score, for how much of the name was said
constexpr double kLeastScore = 0.3;
constexpr double kLeastOfBest = 0.5;

// Of two that are found alike the fastener is meant: at the stand that is the question.
double priorOf(const Figure& figure) {
    switch (figure.kind) {
        case FigureKind::Joint:
            return 1;
        case FigureKind::Quantity:
            return figure.unit == "pcs" ? 0.84 : 0.95;
        case FigureKind::Limit:
            return 0.96;
        case FigureKind::Setting:
            break;
    }
    return 0.94;
}

struct Query {
    std::vector<std::string> words{};
    std::optional<FigureKind> kind{};
    std::string_view unit{};
    std::optional<units::Measure> measure{};
};

std::optional<units::Measure> measureOf(std::string_view symbol) {
    for (const units::UnitOf& unit : units::knownUnits())
        if (unit.symbol == symbol)
            return unit.measure;
    return std::nullopt;
}

// "ft lb", "foot pounds", "kgf m": up to three words that name a unit together. Alone "in", "l" and "g" are
// rather the beginning of a word.
std::size_t unitAt(const std::vector<std::string>& typed, std::size_t at, Query& query) {
    std::string joined;
    std::size_t taken = 0;
    for (std::size_t next = at; next < std::min(typed.size(), at + 3); ++next) {
        joined += typed[next];
        if (joined.size() < 2 || joined == "in" || joined == "cm" || joined == "kg")
            continue;
        if (const auto unit = units::unitNamed(joined)) {
            query.unit = *unit;
            taken = next - at + 1;
        }
    }
    return taken;
}

// What a word says about the kind of figure that is wanted, if anything.
std::optional<FigureKind> kindMeantBy(std::string_view searchWord) {
    struct Meaning {
        std::string_view word;
        FigureKind kind;
    };
    static constexpr std::array kMeanings{
        Meaning{"torque", FigureKind::Joint},      Meaning{"tighten", FigureKind::Joint},
        Meaning{"tight", FigureKind::Joint},       Meaning{"amount", FigureKind::Quantity},
        Meaning{"quantity", FigureKind::Quantity}, Meaning{"capacity", FigureKind::Quantity},
        Meaning{"volume", FigureKind::Quantity},   Meaning{"much", FigureKind::Quantity},
        Meaning{"many", FigureKind::Quantity},     Meaning{"limit", FigureKind::Limit},
        Meaning{"spec", FigureKind::Limit},        Meaning{"setting", FigureKind::Setting},
        Meaning{"click", FigureKind::Setting},     Meaning{"clicker", FigureKind::Setting},
    };
    const auto found = std::find_if(kMeanings.begin(), kMeanings.end(),
                                    [&](const Meaning& meaning) { return meaning.word == searchWord; });
    if (found == kMeanings.end())
        return std::nullopt;
    return found->kind;
}

Query read(std::string_view text) {
    Query query;
    std::vector<std::string> typed;
    for (std::string& word : base::split(base::lowered(text.substr(0, kLongestQuery)), ' '))
        if (!word.empty())
            typed.push_back(std::move(word));
    std::string rest;
    for (std::size_t at = 0; at < typed.size();) {
        const std::size_t taken = unitAt(typed, at, query);
        // A bar is a pressure and a handlebar.
        if (taken == 0 || typed[at] == "bar")
            rest += typed[at] + ' ';
        at += std::max<std::size_t>(taken, 1);
    }
    query.measure = measureOf(query.unit);
    for (std::string& word : searchWords(rest)) {
        if (const auto kind = kindMeantBy(word))
            query.kind = kind;
        else if (query.words.size() < kMostTokens)
            query.words.push_back(std::move(word));
    }
    return query;
}

// Figures and questions agree in kind or in what is measured, or they don't.
double suits(const Figure& figure, const Query& query) {
    double factor = priorOf(figure);
    if (query.kind)
        factor *= *query.kind == figure.kind ? 1.2 : 0.9;
    if (query.measure)
        factor *= measureOf(figure.unit) == query.measure ||
                          (figure.kind == FigureKind::Joint && query.measure == units::Measure::Torque)
                      ? 1.2
                      : 0.9;
    return factor;
}

}  // namespace

// Gathers the words of all figures and where they lead.
class Lookup::Index {
  public:
    explicit Index(Lookup& lookup) : lookup_(lookup) {}

    void add(std::uint32_t at, const Figure& figure) {
        own_.clear();
        std::uint32_t name = 0;
        name |= take(searchWords(figure.name), kInName, 0);
        if (figure.kind != FigureKind::Joint)
            name |= take(searchWords(figure.about), kInAbout, kHalf);
        addOtherWords();
        for (const std::string& word : searchWords(figure.thread))
            put(word, {at, kInThread, 0});
        for (const std::string& word : searchWords(figure.machineName))
            put(word, {at, kInMachine, 0});
        for (const std::string& word : searchWords(figure.alongside))
            put(word, {at, kAlongside, 0});
        for (const auto& [word, lead] : own_)
            put(word, {at, lead.weight, lead.covers});
        lookup_.names_.push_back(name);
    }

    void finish() {
        lookup_.words_.reserve(all_.size());
        for (auto& [word, leads] : all_) {
            const auto joined = joined_.find(word);
            const std::size_t least = joined == joined_.end() ? 0 : joined->second + 2;
            lookup_.words_.push_back({word, {}, least, std::move(leads)});
        }
        for (Word& word : lookup_.words_)
            word.letters = lettersOf(word.text);
    }

  private:
    std::uint32_t take(const std::vector<std::string>& words, float weight, std::uint32_t from) {
        std::uint32_t covered = 0;
        for (std::uint32_t at = 0; at < words.size() && at < kHalf; ++at) {
            const std::uint32_t bit = 1U << (from + at);
            // A word that the name has already adds nothing to what must be covered.
            if (!own_.contains(words[at]))
                covered |= bit;
            offer(words[at], {0, weight, bit});
            // "spark plug" is found by "sparkplug".
            if (at > 0) {
                const std::string both = words[at - 1] + words[at];
                offer(both, {0, weight, bit | (bit >> 1U)});
                joined_.emplace(both, words[at - 1].size());
            }
        }
        return covered;
    }

    void offer(const std::string& word, Lead lead) {
        Lead& kept = own_[word];
        if (kept.weight > 0 && lead.weight < kept.weight)
            return;
        kept.weight = lead.weight;
        kept.covers |= lead.covers;
    }

    void addOtherWords() {
        std::vector<std::pair<std::string, Lead>> found;
        for (const SameThing& thing : sameThings())
            for (const auto& phrase : thing.phrases)
                if (const auto whole = coveredBy(phrase))
                    for (const auto& other : thing.phrases)
                        addPhrase(other, *whole, found);
        for (const auto& [word, lead] : found)
            offer(word, lead);
    }

    // The words of a phrase share out what it stands for, first to first and last to last: "plug" alone is
    // not the whole of an oil drain bolt, though "sump plug" is.
    void addPhrase(const std::vector<std::string>& phrase, const Lead& whole,
                   std::vector<std::pair<std::string, Lead>>& found) const {
        std::vector<std::uint32_t> bits;
        for (std::uint32_t rest = whole.covers; rest != 0; rest &= rest - 1)
            bits.push_back(rest & (~rest + 1));
        for (std::size_t at = 0; at < phrase.size(); ++at) {
            if (own_.contains(phrase[at]))
                continue;
            const std::size_t first = at * bits.size() / phrase.size();
            const std::size_t last = std::max(first + 1, (at + 1) * bits.size() / phrase.size());
            std::uint32_t covers = 0;
            for (std::size_t bit = first; bit < std::min(last, bits.size()); ++bit)
                covers |= bits[bit];
            found.emplace_back(phrase[at], Lead{0, whole.weight * kOtherWord, covers});
        }
    }

    [[nodiscard]] std::optional<Lead> coveredBy(const std::vector<std::string>& phrase) const {
        Lead whole{0, 1, 0};
        for (const std::string& word : phrase) {
            const auto at = own_.find(word);
            if (at == own_.end())
                return std::nullopt;
            whole.weight = std::min(whole.weight, at->second.weight);
            whole.covers |= at->second.covers;
        }
        return whole;
    }

    void put(const std::string& word, const Lead& lead) {
        auto& leads = all_[word];
        if (leads.empty() || leads.back().figure != lead.figure) {
            leads.push_back(lead);
            return;
        }
        leads.back().weight = std::max(leads.back().weight, lead.weight);
        leads.back().covers |= lead.covers;
    }

    Lookup& lookup_;
    std::map<std::string, Lead> own_;
    std::map<std::string, std::size_t> joined_;  ///< to the size of the first of the two
    std::map<std::string, std::vector<Lead>> all_;
};

// How well each word of a query fits each figure so far.
struct Lookup::Tally {
    std::size_t slots = 0;      ///< one for each word of the query
    std::vector<float> best{};  ///< how well the word fits: figure after figure, its slots in a row
    std::vector<std::uint32_t> covers{};
    std::vector<float> says{};  ///< how much a slot's word counts
};

Lookup::Lookup(std::vector<Figure> figures) : figures_(std::move(figures)) {
    Index index(*this);
    for (std::size_t at = 0; at < figures_.size(); ++at)
        index.add(static_cast<std::uint32_t>(at), figures_[at]);
    index.finish();
}

void Lookup::follow(std::string_view typed, double least, std::size_t slot, Tally& tally) const {
    const Letters letters = lettersOf(typed);
    for (const Word& word : words_) {
        if (typed.size() < word.least)
            continue;
        const double alike = likeness(letters, word.letters);
        if (alike <= least)
            continue;
        for (const Lead& lead : word.leads) {
            const float worth = static_cast<float>(alike) * lead.weight;
            float& best = tally.best[lead.figure * tally.slots + slot];
            best = std::max(best, worth);
            if (worth > 0.55F)
                tally.covers[lead.figure] |= lead.covers;
        }
    }
}

Lookup::Tally Lookup::tally(const std::vector<std::string>& words) const {
    const std::size_t slots = words.size();
    Tally tally{slots, std::vector<float>(figures_.size() * slots),
                std::vector<std::uint32_t>(figures_.size()), std::vector<float>(slots)};
    for (std::size_t slot = 0; slot < slots; ++slot)
        follow(words[slot], 0, slot, tally);
    // "swing arm" is one word, and the space bar is hit or missed like any other key.
    for (std::size_t slot = 0; slot + 1 < slots; ++slot) {
        const std::string both = words[slot] + words[slot + 1];
        if (both.size() < kShortestJoined)
            continue;
        follow(both, kSurelyJoined, slot, tally);
        follow(both, kSurelyJoined, slot + 1, tally);
    }
    // A word that few figures have says more than one that many have.
    const auto all = static_cast<float>(figures_.size());
    for (std::size_t slot = 0; slot < slots; ++slot) {
        float many = 0;
        for (std::size_t at = slot; at < tally.best.size(); at += slots)
            many += tally.best[at] > 0.5F ? 1.0F : 0.0F;
        tally.says[slot] = 0.5F + std::log((1 + all) / (1 + many)) / std::log(2 + all);
    }
    return tally;
}

double Lookup::scoreOf(std::size_t figure, const Tally& tally) const {
    float found = 0;
    float all = 0;
    for (std::size_t slot = 0; slot < tally.slots; ++slot) {
        found += tally.says[slot] * tally.best[figure * tally.slots + slot];
        all += tally.says[slot];
    }
    const auto countOf = [](std::uint32_t covered) {
        return 2 * std::popcount(covered & 0xFFFFU) + std::popcount(covered >> kHalf);
    };
    const int whole = countOf(names_[figure]);
    const int covered = countOf(tally.covers[figure] & names_[figure]);
    const double share = whole == 0 ? 0.0 : static_cast<double>(covered) / whole;
    return static_cast<double>(found / all) * (1 - kForTheRest + kForTheRest * share);
}

Found Lookup::find(std::string_view text, std::optional<MachineId> machine, std::size_t most) const {
    const Query query = read(text);
    Found found{{}, query.unit};
    if (query.words.empty())
        return found;
    const Tally tallied = tally(query.words);
    for (std::size_t at = 0; at < figures_.size(); ++at) {
        if (machine && figures_[at].machine != *machine)
            continue;
        const double score = scoreOf(at, tallied) * suits(figures_[at], query);
        if (score > kLeastScore)
            found.hits.push_back({at, score});
    }
    const auto orderOf = [this](const Found::Hit& hit) {
        const Figure& figure = figures_[hit.figure];
        // Scores that differ by rounding alone are the same.
        return std::tuple(-std::llround(hit.score * 1e6), figure.kind, std::string_view(figure.machineName),
                          std::string_view(figure.name), hit.figure);
    };
    const std::size_t shown = std::min(most, found.hits.size());
    std::partial_sort(found.hits.begin(), found.hits.begin() + static_cast<std::ptrdiff_t>(shown),
                      found.hits.end(),
                      [&](const Found::Hit& a, const Found::Hit& b) { return orderOf(a) < orderOf(b); });
    found.hits.resize(shown);
    if (!found.hits.empty())
        std::erase_if(found.hits, [best = found.hits.front().score](const Found::Hit& hit) {
            return hit.score < best * kLeastOfBest;
        });
    return found;
}

}  // namespace wm::fastening
