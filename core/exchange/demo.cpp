// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/demo.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <tuple>

#include "core/exchange/demo_stage.h"

namespace wm::exchange {

using base::Error;
using base::Fault;
using base::refuse;
using base::Result;

namespace {

struct DemoFile {
    std::string_view name;
    DemoAct act;
};

// Of one day, the lines of the first file are said first.
constexpr std::array<DemoFile, 29> kFiles{
    {{"people.csv", sayPerson}, {"shelf.csv", sayShelfLine},    {"kits.csv", sayKit},
     {"tools.csv", sayTool},    {"machines.csv", sayMachine},   {"items.csv", sayItem},
     {"joints.csv", sayJoint},  {"intervals.csv", sayInterval}, {"limits.csv", sayLimit},
     {"events.csv", sayEvent},  {"stock.csv", sayStock},        {"outings.csv", sayOuting},
     {"washes.csv", sayWash},   {"readings.csv", sayReading},   {"odometer.csv", sayOdometer},
     {"moves.csv", sayMove},    {"snags.csv", saySnag},         {"jobs.csv", sayJob},
     {"ends.csv", saySnagEnd},  {"marks.csv", sayMark},         {"calibrations.csv", sayCalibration},
     {"checks.csv", sayCheck},  {"settings.csv", saySetting},   {"deferrals.csv", sayDeferral},
     {"orders.csv", sayOrder},  {"windows.csv", sayWindow},     {"picks.csv", sayPick},
     {"sheets.csv", saySheet},  {"gone.csv", sayGone}}};
constexpr std::string_view kGarage = "garage.csv";
constexpr std::string_view kWithoutDays = "kits.csv";
constexpr std::string_view kMachines = "machines.csv";

Error placed(Error error, std::string_view file, std::size_t line) {
    error.field = fmt::format("{} line {}{}{}", file, line, error.field == base::Place{} ? "" : ", ",
                              error.field.text());
    return error;
}

Result<CsvTable> tableOf(const DemoText& text, std::string_view name) {
    const auto file = text.files.find(name);
    if (file == text.files.end())
        return refuse(Fault::Inconsistent, std::string(name), {}, "this file");
    auto table = readCsv(file->second);
    if (!table) {
        Error error = table.error();
        error.field = fmt::format("{} {}", name, error.field.text());
        return tl::unexpected(std::move(error));
    }
    return table;
}

struct Garage {
    std::string name{};
    calendar::Date pinned{};
};

Result<Garage> garageOf(const DemoText& text) {
    const auto table = tableOf(text, kGarage);
    if (!table)
        return tl::unexpected(table.error());
    if (table->rows.size() != 1)
        return refuse(Fault::Malformed, std::string(kGarage), std::to_string(table->rows.size()), "1");
    DemoLine line(table->columns, table->rows.front(), calendar::Date{});
    const auto today = line.taken(calendar::parseDate("today", line.text("today")));
    Garage garage{line.text("name"), today.value_or(calendar::Date{})};
    if (line.fault())
        return tl::unexpected(placed(*line.fault(), kGarage, line.number()));
    return garage;
}

// A line and its turn. What is said of the time before the file was begun, or before a machine came into it,
// is typed in on its first day, or on the day on which the machine came.
struct Turn {
    calendar::Date day{};
    std::size_t rank = 0;  ///< of its file; moves made before riding go just before the outings
    std::size_t file = 0;
    std::size_t row = 0;

    friend bool operator<(const Turn& a, const Turn& b) {
        return std::tie(a.day, a.rank, a.row) < std::tie(b.day, b.rank, b.row);
    }
};

std::size_t rankOf(std::string_view file, bool early) {
    const auto at = std::find_if(kFiles.begin(), kFiles.end(), [&](const DemoFile& each) {
        return each.name == (early ? "outings.csv" : file);
    });
    return 2 * static_cast<std::size_t>(at - kFiles.begin()) + (early ? 0 : 1);
}

class Building {
  public:
    Building(const DemoText& text, Garage garage, std::vector<Starter> starters)
        : text_(text), garage_(std::move(garage)), stage_(std::move(starters)) {}

    Result<picture::Ledger> build() {
        return readTables()
            .and_then([&] { return readTurns(); })
            .and_then([&] { return nameIt(); })
            .and_then([&] { return sayAll(); })
            .map([&] { return stage_.giveUp(); });
    }

  private:
    Result<void> readTables() {
        for (const DemoFile& file : kFiles) {
            auto table = tableOf(text_, file.name);
            if (!table)
                return tl::unexpected(table.error());
            tables_.push_back(std::move(*table));
        }
        if (text_.files.size() != kFiles.size() + 1)
            return refuse(Fault::Inconsistent, "files", std::to_string(text_.files.size()),
                          std::to_string(kFiles.size() + 1));
        if (tables_.front().rows.empty())
            return refuse(Fault::Empty, std::string(kFiles.front().name));
        return {};
    }

    Result<void> readTurns() {
        if (const auto read = readArrivals(); !read)
            return read;
        for (std::size_t file = 0; file < tables_.size(); ++file) {
            const std::string_view name = kFiles[file].name;
            for (std::size_t row = 0; row < tables_[file].rows.size(); ++row) {
                DemoLine line(tables_[file].columns, tables_[file].rows[row], garage_.pinned);
                const bool early = name == "moves.csv" && line.text("part") == "before riding";
                const calendar::Date day = name == kWithoutDays ? first_ : line.day("day");
                if (line.fault())
                    return tl::unexpected(placed(*line.fault(), name, line.number()));
                if (file == 0 && row == 0)
                    first_ = day;
                turns_.push_back(
                    {std::max({day, first_, arrivalOf(file, row)}), rankOf(name, early), file, row});
            }
        }
        std::sort(turns_.begin(), turns_.end());
        return {};
    }

    Result<void> readArrivals() {
        const auto file = static_cast<std::size_t>(
            std::find_if(kFiles.begin(), kFiles.end(),
                         [](const DemoFile& each) { return each.name == kMachines; }) -
            kFiles.begin());
        for (const CsvRow& row : tables_[file].rows) {
            DemoLine line(tables_[file].columns, row, garage_.pinned);
            arrivals_.emplace(line.text("name"), line.day("day"));
            if (line.fault())
                return tl::unexpected(placed(*line.fault(), kMachines, line.number()));
        }
        return {};
    }

    // When the machine that a line is about came into the file, if it is about one that the garage knows.
    [[nodiscard]] calendar::Date arrivalOf(std::size_t file, std::size_t row) const {
        const auto& columns = tables_[file].columns;
        const auto at = std::find(columns.begin(), columns.end(), "machine");
        if (at == columns.end() || kFiles[file].name == kWithoutDays)
            return first_;
        const auto found =
            arrivals_.find(tables_[file].rows[row].cells[static_cast<std::size_t>(at - columns.begin())]);
        return found == arrivals_.end() ? first_ : found->second;
    }

    Result<void> nameIt() {
        stage_.setDay(first_);
        DemoLine line(tables_.front().columns, tables_.front().rows.front(), garage_.pinned);
        stage_.say(line, [&](const verbs::VerbContext& context) {
            return verbs::nameGarage(context, garage_.name, garage_.pinned);
        });
        if (line.fault())
            return tl::unexpected(placed(*line.fault(), kGarage, 1));
        return {};
    }

    Result<void> sayAll() {
        for (const Turn& turn : turns_) {
            stage_.setDay(turn.day);
            const CsvTable& table = tables_[turn.file];
            DemoLine line(table.columns, table.rows[turn.row], garage_.pinned);
            kFiles[turn.file].act(stage_, line);
            if (line.fault())
                return tl::unexpected(placed(*line.fault(), kFiles[turn.file].name, line.number()));
        }
        return {};
    }

    const DemoText& text_;
    Garage garage_;
    DemoStage stage_;
    calendar::Date first_{};
    std::vector<CsvTable> tables_;
    std::map<std::string, calendar::Date> arrivals_;
    std::vector<Turn> turns_;
};

}  // namespace

std::vector<std::string> demoFiles() {
    std::vector<std::string> names{std::string(kGarage)};
    for (const DemoFile& file : kFiles)
        names.emplace_back(file.name);
    return names;
}

Result<picture::Ledger> buildDemo(const DemoText& text) {
    const auto garage = garageOf(text);
    if (!garage)
        return tl::unexpected(garage.error());
    std::vector<Starter> starters;
    for (std::size_t at = 0; at < text.starters.size(); ++at) {
        auto starter = readStarter(text.starters[at]);
        if (!starter) {
            Error error = starter.error();
            error.field = fmt::format("starters[{}] {}", at, error.field.text());
            return tl::unexpected(std::move(error));
        }
        starters.push_back(std::move(*starter));
    }
    return Building(text, *garage, std::move(starters)).build();
}

}  // namespace wm::exchange
