// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/cell_words.h"

#include <algorithm>
#include <array>
#include <span>

#include "core/base/text.h"
#include "core/words/folding.h"

namespace wm::notebook {

namespace {

using Words = std::span<const std::string_view>;

bool has(Words words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// Any word of the cell, or the beginning of one for the longer stems.
bool says(std::string_view cell, Words stems) {
    for (const std::string& word : words::wordsOf(cell))
        for (const std::string_view stem : stems)
            if (word == stem || (stem.size() > 4 && word.starts_with(stem)))
                return true;
    return false;
}

constexpr std::array kHard{
    std::string_view("hard"),     std::string_view("hardpack"), std::string_view("hart"),
    std::string_view("dry"),      std::string_view("trocken"),  std::string_view("dur"),
    std::string_view("duro"),     std::string_view("asphalt"),  std::string_view("tarmac"),
    std::string_view("stone"),    std::string_view("rock"),     std::string_view("rocks"),
    std::string_view("schotter"), std::string_view("gravel")};
constexpr std::array kDust{std::string_view("dust"),      std::string_view("dusty"),
                           std::string_view("staub"),     std::string_view("staubig"),
                           std::string_view("poussiere"), std::string_view("polvere"),
                           std::string_view("polvo")};
constexpr std::array kSand{std::string_view("sand"),  std::string_view("sandy"),  std::string_view("sandig"),
                           std::string_view("sable"), std::string_view("sabbia"), std::string_view("arena")};
constexpr std::array kMud{std::string_view("mud"),     std::string_view("muddy"),  std::string_view("wet"),
                          std::string_view("schlamm"), std::string_view("matsch"), std::string_view("nass"),
                          std::string_view("boue"),    std::string_view("fango"),  std::string_view("barro")};
constexpr std::array kWater{std::string_view("water"), std::string_view("wasser"), std::string_view("eau"),
                            std::string_view("acqua"), std::string_view("agua"),   std::string_view("river")};

constexpr std::array kRace{
    std::string_view("race"), std::string_view("rennen"),  std::string_view("course"),
    std::string_view("gara"), std::string_view("carrera"), std::string_view("event"),
    std::string_view("lauf"), std::string_view("meeting"), std::string_view("competition")};
constexpr std::array kPractice{
    std::string_view("practice"),     std::string_view("training"),    std::string_view("train"),
    std::string_view("entrainement"), std::string_view("allenamento"), std::string_view("entrenamiento"),
    std::string_view("practise"),     std::string_view("test"),        std::string_view("ride")};
constexpr std::array kOther{std::string_view("trail"),  std::string_view("other"),
                            std::string_view("run in"), std::string_view("transfer"),
                            std::string_view("tour"),   std::string_view("sonst")};
constexpr std::array kMeter{std::string_view("meter"),         std::string_view("zahler"),
                            std::string_view("compteur"),      std::string_view("contaore"),
                            std::string_view("stundenzahler"), std::string_view("betriebsstundenzahler"),
                            std::string_view("hourmeter"),     std::string_view("horometro"),
                            std::string_view("contador")};
constexpr std::array kNew{
    std::string_view("new"),      std::string_view("replaced"),   std::string_view("reset"),
    std::string_view("neu"),      std::string_view("neuer"),      std::string_view("getauscht"),
    std::string_view("nouveau"),  std::string_view("nuovo"),      std::string_view("nuevo"),
    std::string_view("changed"),  std::string_view("swapped"),    std::string_view("fitted"),
    std::string_view("remplace"), std::string_view("gewechselt"), std::string_view("zero")};
constexpr std::array kReading{std::string_view("reading"), std::string_view("stand"),
                              std::string_view("releve"),  std::string_view("lettura"),
                              std::string_view("lectura"), std::string_view("read")};
constexpr std::array kWash{
    std::string_view("wash"),     std::string_view("washed"),    std::string_view("waschen"),
    std::string_view("wasche"),   std::string_view("gewaschen"), std::string_view("lavage"),
    std::string_view("lavaggio"), std::string_view("lavado"),    std::string_view("cleaned"),
    std::string_view("hose"),     std::string_view("bucket"),    std::string_view("hand")};
constexpr std::array kPressure{std::string_view("pressure"), std::string_view("jet"),
                               std::string_view("karcher"),  std::string_view("hochdruck"),
                               std::string_view("pression"), std::string_view("pressione"),
                               std::string_view("presion"),  std::string_view("hd"),
                               std::string_view("lance"),    std::string_view("dampfstrahler")};
constexpr std::array kCrash{std::string_view("crash"),  std::string_view("crashed"),
                            std::string_view("sturz"),  std::string_view("chute"),
                            std::string_view("caduta"), std::string_view("caida")};
constexpr std::array kYes{std::string_view("yes"), std::string_view("y"),    std::string_view("x"),
                          std::string_view("1"),   std::string_view("ja"),   std::string_view("j"),
                          std::string_view("oui"), std::string_view("si"),   std::string_view("true"),
                          std::string_view("ok"),  std::string_view("done"), std::string_view("xx")};
constexpr std::array kNo{std::string_view("no"),   std::string_view("n"),   std::string_view("0"),
                         std::string_view("nein"), std::string_view("non"), std::string_view("false"),
                         std::string_view("none"), std::string_view("not")};
constexpr std::array kTotal{
    std::string_view("total"),    std::string_view("sum"),      std::string_view("summe"),
    std::string_view("gesamt"),   std::string_view("somme"),    std::string_view("totale"),
    std::string_view("totals"),   std::string_view("suma"),     std::string_view("average"),
    std::string_view("subtotal"), std::string_view("ubertrag"), std::string_view("schnitt")};

}  // namespace

std::optional<usage::Ground> groundNamed(std::string_view cell) {
    using usage::Ground;
    // The wettest word counts: "hard, later mud" was a mud day.
    if (says(cell, kMud))
        return Ground::Mud;
    if (says(cell, kWater))
        return Ground::Water;
    if (says(cell, kSand))
        return Ground::Sand;
    if (says(cell, kDust))
        return Ground::Dust;
    if (says(cell, kHard))
        return Ground::Hard;
    return std::nullopt;
}

std::optional<Doing> doingNamed(std::string_view cell) {
    if (says(cell, kMeter) && says(cell, kNew))
        return Doing::NewMeter;
    if (says(cell, kRace))
        return Doing::Race;
    if (says(cell, kPractice))
        return Doing::Practice;
    if (says(cell, kMeter) || says(cell, kReading))
        return Doing::Reading;
    if (says(cell, kCrash))
        return Doing::Crash;
    if (says(cell, kPressure) || says(cell, kWash))
        return Doing::Wash;
    if (says(cell, kOther))
        return Doing::Other;
    return std::nullopt;
}

std::optional<Washing> washingNamed(std::string_view cell) {
    if (says(cell, kPressure))
        return Washing::Pressure;
    if (says(cell, kWash))
        return Washing::ByHand;
    if (const auto yes = yesOrNo(cell))
        return *yes ? Washing::ByHand : Washing::None;
    return std::nullopt;
}

std::optional<bool> yesOrNo(std::string_view cell) {
    const std::string word = words::folded(cell);
    if (word.empty() || has(kNo, word))
        return false;
    if (has(kYes, word))
        return true;
    return std::nullopt;
}

bool saysNewMeter(std::string_view note) {
    return says(note, kMeter) && says(note, kNew);
}

bool saysTotal(std::string_view cell) {
    const auto words = words::wordsOf(cell);
    return !words.empty() && words.size() <= 3 && has(kTotal, words.front());
}

bool saysUnknown(std::string_view cell) {
    const std::string_view text = base::trimmed(cell);
    constexpr std::array<std::string_view, 9> kUnknown{"?", "-", "--", "–", "—", "n/a", "??", "???", "x"};
    return has(kUnknown, text);
}

bool saysSame(std::string_view cell) {
    const std::string_view text = base::trimmed(cell);
    constexpr std::array<std::string_view, 9> kSame{"\"",  "''",    "\"\"", "”", "″",
                                                    "do.", "ditto", "dito", "〃"};
    return has(kSame, text);
}

}  // namespace wm::notebook
