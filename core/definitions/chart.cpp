// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/definitions/chart.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/base/cells.h"
#include "core/base/text.h"
#include "core/fastening/inside.h"
#include "core/fastening/kind_words.h"
#include "core/fastening/stages.h"
#include "core/picture/checks.h"
#include "core/units/unit_words.h"

namespace wm::definitions {

using base::Error;
using base::Fault;
using book::Book;
using fastening::JointVersion;
using picture::sameName;

namespace {

constexpr std::int64_t kMostPieces = 200;

struct Heading {
    std::string_view word;
    ChartColumn column;
};
constexpr std::array<Heading, 27> kHeadings{
    {{"joint", ChartColumn::Joint},         {"name", ChartColumn::Joint},
     {"fastener", ChartColumn::Joint},      {"item", ChartColumn::Joint},
     {"thread", ChartColumn::Thread},       {"size", ChartColumn::Thread},
     {"count", ChartColumn::Count},         {"pieces", ChartColumn::Count},
     {"qty", ChartColumn::Count},           {"quantity", ChartColumn::Count},
     {"torque", ChartColumn::Torque},       {"value", ChartColumn::Torque},
     {"n·m", ChartColumn::Torque},          {"nm", ChartColumn::Torque},
     {"unit", ChartColumn::Unit},           {"stages", ChartColumn::Stages},
     {"condition", ChartColumn::Condition}, {"thread condition", ChartColumn::Condition},
     {"locking", ChartColumn::Locking},     {"locker", ChartColumn::Locking},
     {"renew", ChartColumn::Renew},         {"new each time", ChartColumn::Renew},
     {"page", ChartColumn::Page},           {"source", ChartColumn::Source},
     {"manual", ChartColumn::Source},       {"checked", ChartColumn::Checked},
     {"confirmed", ChartColumn::Checked}}};

std::optional<ChartColumn> headingOf(std::string_view cell) {
    const std::string word = base::lowered(cell);
    for (const Heading& heading : kHeadings)
        if (heading.word == word)
            return heading.column;
    return std::nullopt;
}

// The order of columns that a line of headings says; nothing if it is no such line.
std::optional<std::vector<std::optional<ChartColumn>>> orderIn(const std::vector<std::string>& cells) {
    std::vector<std::optional<ChartColumn>> order;
    bool namesJoint = false;
    for (const std::string& cell : cells) {
        order.push_back(headingOf(cell));
        namesJoint = namesJoint || order.back() == ChartColumn::Joint;
    }
    const auto known = std::count_if(order.begin(), order.end(), [](const auto& c) { return c.has_value(); });
    return namesJoint && (known >= 2 || cells.size() == 1) ? std::optional(order) : std::nullopt;
}

// The cells of one row while they are read into a version.
class RowReader {
  public:
    RowReader(const ChartRow& row, std::size_t at, Chart& into) : row_(row), at_(at), into_(into) {}

    [[nodiscard]] std::string cell(ChartColumn column) const {
        return std::string(base::trimmed(row_.at(static_cast<std::size_t>(column))));
    }
    void fault(ChartColumn column, Error error) {
        into_.faults.push_back({at_, column, std::move(error)});
        isFine_ = false;
    }
    [[nodiscard]] bool isFine() const { return isFine_; }

    void text(ChartColumn column, std::string_view field, std::string& into) {
        const std::string typed = cell(column);
        if (typed.empty())
            return;
        if (auto name = base::parseName(field, typed); name)
            into = *name;
        else
            fault(column, name.error());
    }
    void count(JointVersion& joint) {
        const std::string typed = cell(ChartColumn::Count);
        if (typed.empty())
            return;
        const auto count = units::parseCount("count", typed, kMostPieces);
        if (!count)
            fault(ChartColumn::Count, count.error());
        else if (*count == 0)
            fault(ChartColumn::Count, {Fault::NotPositive, "count", typed, {}});
        else
            joint.count = *count;
    }
    void stages(JointVersion& joint) {
        text(ChartColumn::Stages, "stages", joint.stages);
        if (cell(ChartColumn::Stages).empty())
            return;
        if (const auto stages = fastening::parseStages(joint.stages); !stages)
            fault(ChartColumn::Stages, stages.error());
    }
    // Stages that no cell says follow the torque.
    void followTorque(JointVersion& joint, const JointVersion& stood) {
        if (!isFine_ || !cell(ChartColumn::Stages).empty())
            return;
        auto followed = fastening::stagesAfter(stood, joint);
        if (!followed)
            return fault(ChartColumn::Stages, followed.error());
        const bool isNew = *followed != joint.stages;
        joint.stages = std::move(*followed);
        if (const auto stages = fastening::parseStages(joint.stages); isNew && !stages)
            fault(ChartColumn::Stages, stages.error());
    }
    // A unit may stand behind the figure, in its own column, or be the one from before (N·m).
    void torque(JointVersion& joint) {
        const std::string typed = cell(ChartColumn::Torque);
        const std::string unit = cell(ChartColumn::Unit);
        const auto named = units::unitNamed(unit);
        const auto known = named ? base::fromName<units::TorqueUnit>(*named) : std::nullopt;
        if (!unit.empty() && !known)
            fault(ChartColumn::Unit, {Fault::Unknown, "unit", unit, units::torqueUnits()});
        if (typed.empty())
            return;
        const auto range = units::parseTorqueRange("torque", typed);
        if (!range) {
            fault(ChartColumn::Torque, range.error());
            return;
        }
        if (range->unit && known && *range->unit != *known)
            fault(ChartColumn::Unit,
                  {Fault::WrongUnit, "unit", unit, std::string(base::nameOf(*range->unit))});
        joint.torque = range->low;
        joint.torqueHigh = range->high;
        joint.unit = range->unit ? *range->unit : known.value_or(joint.unit);
    }
    void checked(JointVersion& joint) {
        static constexpr std::array<std::string_view, 4> kYes{"yes", "y", "x", "1"};
        static constexpr std::array<std::string_view, 3> kNo{"no", "n", "0"};
        const std::string word = base::lowered(cell(ChartColumn::Checked));
        const auto isIn = [&](const auto& words) {
            return std::find(words.begin(), words.end(), word) != words.end();
        };
        if (isIn(kYes))
            joint.confirmed = true;
        else if (word.empty() || isIn(kNo))
            joint.confirmed = false;
        else
            fault(ChartColumn::Checked, {Fault::Malformed, "confirmed", word, "yes, no"});
    }

  private:
    const ChartRow& row_;
    std::size_t at_;
    Chart& into_;
    bool isFine_ = true;
};

JointVersion knownOrNew(const Book& book, MachineId machine, const std::string& name) {
    for (const JointVersion* joint : book.joints(machine))
        if (sameName(joint->name, name) || sameName(joint->code, name))
            return *joint;
    JointVersion joint;
    joint.machine = machine;
    joint.name = name;
    joint.kind = fastening::kindByName(name);
    if (const auto usual = fastening::usualPosition(joint.kind))
        joint.position = std::string(*usual);
    return joint;
}

bool isBlank(const ChartRow& row) {
    return std::all_of(row.begin(), row.end(), [](const auto& cell) { return base::trimmed(cell).empty(); });
}

// What the row makes of the joint. `source` is the one of the rows above, and becomes this row's own.
void takeRow(RowReader& read, JointVersion& joint, std::string& source, calendar::Date today) {
    const JointVersion stood = joint;
    read.text(ChartColumn::Thread, "thread", joint.thread);
    read.count(joint);
    read.torque(joint);
    read.stages(joint);
    read.followTorque(joint, stood);
    read.text(ChartColumn::Condition, "condition", joint.condition);
    read.text(ChartColumn::Locking, "locking", joint.locking);
    read.text(ChartColumn::Renew, "renew", joint.renew);
    read.text(ChartColumn::Page, "page", joint.page);
    const bool hasFigure = !read.cell(ChartColumn::Torque).empty();
    if (hasFigure && !source.empty())
        joint.source = source;
    read.text(ChartColumn::Source, "source", joint.source);
    if (!read.cell(ChartColumn::Source).empty())
        source = joint.source;
    if (hasFigure || !read.cell(ChartColumn::Checked).empty())
        read.checked(joint);
    if (joint.torque && joint.source.empty())
        read.fault(ChartColumn::Source, {Fault::Empty, "source", {}, {}});
    if (read.isFine())
        joint.validFrom = today;
}

bool isUnchanged(JointVersion joint, const Book& book) {
    const auto* known = joint.joint.value() == 0 ? nullptr : book.joint(joint.joint);
    if (known == nullptr)
        return false;
    joint.validFrom = known->validFrom;
    return joint == *known;
}

}  // namespace

std::vector<ChartRow> readChart(std::string_view text) {
    const char mark = text.find('\t') != std::string_view::npos ? '\t' : ';';
    std::vector<ChartRow> rows;
    std::optional<std::vector<std::optional<ChartColumn>>> order;
    bool isFirst = true;
    for (base::CellReader reader(text, mark); !reader.atEnd();) {
        const auto cells = reader.next().cells;
        if (base::areBlank(cells))
            continue;
        if (std::exchange(isFirst, false) && (order = orderIn(cells)))
            continue;
        ChartRow row;
        for (std::size_t at = 0; at < cells.size(); ++at) {
            if (order ? at < order->size() && (*order)[at].has_value() : at < kChartColumns)
                row.at(order ? static_cast<std::size_t>(*(*order)[at]) : at) = cells[at];
        }
        if (!isBlank(row))
            rows.push_back(std::move(row));
    }
    return rows;
}

Chart checkChart(const Book& book, MachineId machine, const std::vector<ChartRow>& rows) {
    Chart chart;
    std::string source;
    std::vector<std::string> names;
    for (std::size_t at = 0; at < rows.size(); ++at) {
        if (isBlank(rows[at]))
            continue;
        RowReader read(rows[at], at, chart);
        std::string name;
        if (read.cell(ChartColumn::Joint).empty())
            read.fault(ChartColumn::Joint, {Fault::Empty, "name", {}, {}});
        read.text(ChartColumn::Joint, "name", name);
        JointVersion joint = knownOrNew(book, machine, name);
        const bool twice = std::any_of(names.begin(), names.end(),
                                       [&](const auto& other) { return sameName(other, joint.name); });
        if (twice && !name.empty())
            read.fault(ChartColumn::Joint, {Fault::Duplicate, "name", name, {}});
        names.push_back(joint.name);
        takeRow(read, joint, source, book.today());
        if (!read.isFine())
            continue;
        if (joint.torque && !read.cell(ChartColumn::Torque).empty())
            if (const auto doubt = fastening::doubtAbout(*joint.torque, joint.unit, joint.kind, joint.thread))
                chart.doubts.push_back({at, *doubt});
        if (isUnchanged(joint, book))
            ++chart.unchanged;
        else
            chart.versions.push_back(std::move(joint));
    }
    return chart;
}

}  // namespace wm::definitions
