// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/notebook/notebook_bench.h"
#include "tests/repository.h"

#include <array>
#include <fstream>
#include <sstream>

namespace wm::notebook {

std::string notebookFile(const std::string& name) {
    std::ifstream file(test::repositoryPath(std::string("tests/data/notebook/") + name), std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    EXPECT_FALSE(text.str().empty()) << name;
    return text.str();
}

Garage::Garage() {
    today = verbs::day("2026-11-25");
    const auto add = [&](const char* name) {
        must([&](const verbs::VerbContext& context) {
            return verbs::saveMachine(context, {.name = name, .since = today});
        });
        for (const auto& machine : ledger().all<items::Machine>())
            if (machine.name == name)
                return machine.id;
        return MachineId{};
    };
    heron = add("Heron 250");
    sorrel = add("Sorrel 450");
    adopt(heron);
    adopt(sorrel);
}

void Garage::adopt(MachineId machine) {
    const auto task = [](const char* name, const char* code) {
        return upkeep::TaskVersion{.code = code, .name = name, .limits = {{.every = 600}}};
    };
    must([&](const verbs::VerbContext& context) {
        return verbs::adoptSchedule(
            context, machine, "took over a schedule", {}, {},
            {task("Engine oil", "engine-oil"), task("Oil filter", "oil-filter"),
             task("Air filter: swap for an oiled one", "air-filter"),
             task("Linkage bearings: grease", "linkage-grease"),
             task("Swingarm bearings: grease", "swingarm-grease"), task("Fork oil", "fork-oil"),
             task("Valve clearance", "valve-clearance"), task("Front spokes: check", "front-spokes-check"),
             task("Rear spokes: check", "rear-spokes-check"), task("Rear tyre", "rear-tyre"),
             task("Front tyre", "front-tyre"), task("Front brake pads", "front-pads"),
             task("Rear brake pads", "rear-pads"), task("Chain and both sprockets", "chain-kit"),
             task("Front sprocket", "front-sprocket"), task("Chain: clean, lube, slack", "chain-care")});
    });
}

Notebook Garage::read(const std::string& bytes, const ReadingWishes& wishes) const {
    auto table = readTable(bytes);
    if (!table) {
        ADD_FAILURE() << "no table: " << table.error().field;
        return {};
    }
    auto notebook = readNotebook(std::move(*table), book(), wishes);
    if (!notebook) {
        ADD_FAILURE() << "no notebook: " << notebook.error().field;
        return {};
    }
    return std::move(*notebook);
}

std::size_t Garage::take(const std::string& bytes, const Agreement& agreement) {
    std::size_t lines = 0;
    const auto change = say([&](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        const Notebook notebook = read(bytes);
        auto taken = takeNotebook(context, notebook, agreement, "notebook.csv");
        if (!taken)
            return tl::unexpected(taken.error());
        lines = taken->lines;
        return std::move(taken->change);
    });
    if (!change) {
        EXPECT_EQ(change.error().fault, base::Fault::NothingNew)
            << change.error().field << " " << change.error().given << " " << change.error().wanted;
        return 0;
    }
    return lines;
}

const Line& lineOf(const Notebook& notebook, std::size_t number) {
    static const Line kNone{};
    for (const Line& line : notebook.lines)
        if (line.line == number)
            return line;
    ADD_FAILURE() << "no line " << number;
    return kNone;
}

std::string told(const Line& line) {
    constexpr std::array<const char*, 3> kVerdicts{"taken", "doubtful", "refused"};
    std::ostringstream text;
    text << line.line << ' ' << kVerdicts[static_cast<std::size_t>(line.verdict)];
    for (const Remark& remark : line.remarks)
        text << " [" << static_cast<int>(remark.defect) << " \"" << remark.given << "\" -> \""
             << remark.likely << "\"]";
    text << " |";
    for (const std::string& cell : line.cells)
        text << cell << '|';
    return text.str();
}

std::string told(const Notebook& notebook) {
    std::ostringstream text;
    for (const Line& line : notebook.lines)
        if (line.verdict != Verdict::Taken || !line.remarks.empty())
            text << told(line) << '\n';
    return text.str();
}

}  // namespace wm::notebook
