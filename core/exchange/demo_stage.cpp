// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/demo_stage.h"

#include <algorithm>

#include "core/calendar/in_force.h"

namespace wm::exchange {

using base::Error;
using base::Fault;

namespace {

// Ids that look random and are always the same: the n-th number through the finaliser of splitmix64 (Steele,
// Lea, Flood 2014), 63 bits of it. Every verb gets a copy of the source, so the count is shared.
base::IdSource countedIds() {
    return [count = std::make_shared<std::uint64_t>(0)] {
        std::uint64_t z = ++*count * 0x9E3779B97F4A7C15U;
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
        z ^= z >> 31U;
        return static_cast<std::int64_t>(z >> 1U) | 1;
    };
}

template <class R>
const R* named(const picture::Ledger& ledger, std::string_view name) {
    for (const R& row : ledger.all<R>())
        if (row.name == name)
            return &row;
    return nullptr;
}

void unknown(DemoLine& line, std::string_view column, std::string_view given) {
    line.fail(Error{Fault::Unknown, std::string(column), std::string(given), {}});
}

template <class R>
std::optional<decltype(R::id)> idIf(const picture::Ledger& ledger, DemoLine& line, std::string_view column) {
    const std::string name = line.text(column);
    if (name.empty())
        return std::nullopt;
    const R* row = named<R>(ledger, name);
    if (row == nullptr)
        unknown(line, column, name);
    return row == nullptr ? std::nullopt : std::optional(row->id);
}

template <class V>
V inForce(const picture::Ledger& ledger, MachineId machine, std::string_view code, calendar::Date on) {
    const V* version = calendar::inForce(
        ledger.all<V>(), on, [&](const V& each) { return each.machine == machine && each.code == code; });
    return version == nullptr ? V{} : *version;
}

}  // namespace

DemoStage::DemoStage(std::vector<Starter> starters)
    : ledger_(std::make_shared<const picture::Ledger>()),
      newId_(countedIds()),
      starters_(std::move(starters)) {}

MachineId DemoStage::machine(DemoLine& line, std::string_view column) {
    const auto machine = idIf<items::Machine>(*ledger_, line, column);
    if (!machine)
        line.fail(Error{Fault::Empty, std::string(column), {}, {}});
    return machine.value_or(MachineId{});
}

std::optional<MachineId> DemoStage::machineNamed(std::string_view name) const {
    const auto* machine = named<items::Machine>(*ledger_, name);
    return machine == nullptr ? std::nullopt : std::optional(machine->id);
}

std::optional<PersonId> DemoStage::person(DemoLine& line, std::string_view column) {
    return idIf<items::Person>(*ledger_, line, column);
}

std::optional<ItemId> DemoStage::item(DemoLine& line, std::string_view column) {
    return idIf<items::Item>(*ledger_, line, column);
}

std::optional<EventId> DemoStage::event(DemoLine& line, std::string_view column) {
    return idIf<outlook::Event>(*ledger_, line, column);
}

std::optional<ToolId> DemoStage::tool(DemoLine& line, std::string_view column) {
    return idIf<fastening::Tool>(*ledger_, line, column);
}

StockLineId DemoStage::shelfLine(DemoLine& line, std::string_view name) const {
    const auto* found = named<stock::StockLine>(*ledger_, name);
    if (found == nullptr)
        unknown(line, "line", name);
    return found == nullptr ? StockLineId{} : found->id;
}

std::optional<LotId> DemoStage::container(DemoLine& line, StockLineId of, std::string_view label) const {
    for (const auto& lot : ledger_->all<stock::Lot>())
        if (lot.line == of && lot.label == label)
            return lot.id;
    unknown(line, "container", label);
    return std::nullopt;
}

std::optional<SnagId> DemoStage::openSnag(DemoLine& line, MachineId machine, std::string_view what) const {
    for (const auto& snag : ledger_->all<upkeep::Snag>())
        if (snag.machine == machine && snag.what == what)
            return snag.id;
    unknown(line, "snag", what);
    return std::nullopt;
}

upkeep::TaskVersion DemoStage::task(DemoLine& line, MachineId machine, std::string_view code) const {
    auto version = inForce<upkeep::TaskVersion>(*ledger_, machine, code, day_);
    if (version.code.empty())
        unknown(line, "task", code);
    return version;
}

fastening::JointVersion DemoStage::joint(DemoLine& line, MachineId machine, std::string_view code) const {
    auto version = inForce<fastening::JointVersion>(*ledger_, machine, code, day_);
    if (version.code.empty())
        unknown(line, "joint", code);
    return version;
}

const Starter* DemoStage::starter(std::string_view name) const {
    const auto found = std::find_if(starters_.begin(), starters_.end(),
                                    [name](const Starter& starter) { return starter.name == name; });
    return found == starters_.end() ? nullptr : &*found;
}

const book::Book& DemoStage::book() {
    if (!book_)
        book_.emplace(ledger_, day_);
    else if (&book_->ledger() != ledger_.get() || book_->today() != day_)
        book_ = book::Book(ledger_, day_, *book_);
    return *book_;
}

}  // namespace wm::exchange
