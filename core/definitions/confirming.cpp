// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/definitions/confirming.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "core/base/text.h"
#include "core/definitions/printed_words.h"
#include "core/definitions/sharing.h"
#include "core/upkeep/sources.h"

// Which figures of a machine a manual prints, and in which order they are leafed through.

namespace wm::definitions {

using book::Book;

namespace {

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

// The number that begins at `at`, without zeros in front; it may be longer than any type holds.
std::string_view digitsAt(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && isDigit(text[end]))
        ++end;
    while (at + 1 < end && text[at] == '0')
        ++at;
    return text.substr(at, end - at);
}

// Pages as they follow each other: numbers by their value, the rest by its letters.
bool pageBefore(std::string_view a, std::string_view b) {
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < a.size() && j < b.size()) {
        if (isDigit(a[i]) && isDigit(b[j])) {
            const auto x = digitsAt(a, i);
            const auto y = digitsAt(b, j);
            if (x != y)
                return x.size() != y.size() ? x.size() < y.size() : x < y;
            i = static_cast<std::size_t>(x.data() + x.size() - a.data());
            j = static_cast<std::size_t>(y.data() + y.size() - b.data());
        } else {
            if (a[i] != b[j])
                return a[i] < b[j];
            ++i;
            ++j;
        }
    }
    return a.size() - i < b.size() - j;
}

struct Leaf {
    Printed printed;
    std::string page;    // "2-31", without the letters in front of it
    std::string system;  // where on the machine
};

// "p. 2-31" and "page 2-31" are on the same page as "2-31".
std::string bareOf(const std::string& page) {
    const std::string low = base::lowered(page);
    const auto first = low.find_first_of("0123456789");
    if (first == std::string::npos)
        return low;
    const std::string_view front = base::trimmed(std::string_view(low).substr(0, first));
    return front == "p." || front == "p" || front == "page" ? low.substr(first) : low;
}

bool leafBefore(const Leaf& a, const Leaf& b) {
    if (a.printed.key.kind != b.printed.key.kind)
        return a.printed.key.kind < b.printed.key.kind;
    if (a.page.empty() != b.page.empty())
        return b.page.empty();
    if (a.page != b.page)
        return pageBefore(a.page, b.page) || (!pageBefore(b.page, a.page) && a.page < b.page);
    return std::tie(a.system, a.printed.about, a.printed.name, a.printed.key) <
           std::tie(b.system, b.printed.about, b.printed.name, b.printed.key);
}

class Leaves {
  public:
    Leaves(const Book& book, MachineId machine, char mark) : book_(book), machine_(machine), mark_(mark) {}

    std::vector<Leaf> gather() {
        for (const upkeep::TaskVersion* task : book_.tasks(machine_)) {
            interval(*task);
            for (std::size_t at = 0; at < task->kit.size(); ++at)
                quantity(*task, at);
            for (std::size_t at = 0; at < task->measures.size(); ++at)
                limit(*task, at);
        }
        for (const fastening::JointVersion* joint : book_.joints(machine_))
            torque(*joint);
        return std::move(leaves_);
    }

  private:
    void add(Printed printed, const std::string& system) {
        Leaf leaf{std::move(printed), {}, system};
        leaf.page = bareOf(leaf.printed.page);
        leaves_.push_back(std::move(leaf));
    }

    void interval(const upkeep::TaskVersion& task) {
        if (task.limits.empty() && task.nth == 0)
            return;
        add({.key = {PrintedKind::Interval, task.task.value(), 0},
             .name = task.name,
             .about = task.position,
             .figure = printedInterval(task, mark_),
             .aside = task.nth == 0 ? std::string{} : fmt::format("every so many times: {}", task.nthOf),
             .source = task.source,
             .page = task.page,
             .confirmed = task.confirmed},
            task.position);
    }

    void quantity(const upkeep::TaskVersion& task, std::size_t at) {
        const upkeep::KitLine& line = task.kit[at];
        add({.key = {PrintedKind::Quantity, task.task.value(), at},
             .name = line.what,
             .about = task.name,
             .figure = printedAmount(line),
             .aside = line.onlyIfNeeded ? "only if needed" : "",
             .source = upkeep::sourceOf(task, line),
             .page = line.page,
             .confirmed = line.confirmed},
            task.position);
    }

    void limit(const upkeep::TaskVersion& task, std::size_t at) {
        const upkeep::MeasurePoint& point = task.measures[at];
        add({.key = {PrintedKind::Limit, task.task.value(), at},
             .name = point.name,
             .about = task.name,
             .figure = printedLimit(point, mark_),
             .source = point.source,
             .page = point.page,
             .confirmed = point.confirmed},
            task.position);
    }

    void torque(const fastening::JointVersion& joint) {
        Printed printed{.key = {PrintedKind::Torque, joint.joint.value(), 0},
                        .name = joint.name,
                        .about = std::string(base::nameOf(joint.kind)),
                        .figure = printedTorque(joint, mark_),
                        .aside = joint.stages,
                        .source = joint.source,
                        .page = joint.page,
                        .confirmed = joint.confirmed};
        if (joint.sharedFrom && joint.sharedTo)
            if (const auto* card = book_.ledger().find<items::Machine>(machine_))
                printed.sharedWith = sharedText(*card, {*joint.sharedFrom, *joint.sharedTo});
        // Kinds in the order of the enumeration: from the brakes to the covers.
        add(std::move(printed), std::string(1, static_cast<char>('a' + static_cast<int>(joint.kind))));
    }

    const Book& book_;
    MachineId machine_;
    char mark_;
    std::vector<Leaf> leaves_;
};

}  // namespace

std::vector<Printed> printedFigures(const Book& book, MachineId machine, char mark) {
    std::vector<Leaf> leaves = Leaves(book, machine, mark).gather();
    std::sort(leaves.begin(), leaves.end(), leafBefore);
    std::vector<Printed> figures;
    figures.reserve(leaves.size());
    for (Leaf& leaf : leaves)
        figures.push_back(std::move(leaf.printed));
    return figures;
}

ConfirmedCount confirmedCount(const std::vector<Printed>& figures) {
    const auto confirmed =
        std::count_if(figures.begin(), figures.end(), [](const Printed& figure) { return figure.confirmed; });
    return {static_cast<std::size_t>(confirmed), figures.size()};
}

std::string manualOf(const Book& book, MachineId machine) {
    std::string manual = "service manual";
    base::Entered last = 0;
    const auto take = [&](bool confirmed, base::Entered entered, const std::string& source) {
        if (confirmed && entered > last && !source.empty()) {
            last = entered;
            manual = source;
        }
    };
    for (const fastening::JointVersion* joint : book.joints(machine))
        take(joint->confirmed, joint->entered, joint->source);
    for (const upkeep::TaskVersion* task : book.tasks(machine)) {
        for (const upkeep::KitLine& line : task->kit)
            take(line.confirmed, task->entered, line.source);
        for (const upkeep::MeasurePoint& point : task->measures)
            // Without a page of its own the source of a limit holds both, in one text.
            take(point.confirmed && !point.page.empty(), task->entered, point.source);
        take(task->confirmed, task->entered, task->source);
    }
    return manual;
}

}  // namespace wm::definitions
