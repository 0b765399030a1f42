// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "ui/print/sheet_sections.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using sheet::LineKind;

Group safeStopGroup(const sheet::SheetLine& line, double width) {
    Group group;
    Row rule;
    rule.addRule(0, width, 6, true);
    rule.growTo(11);
    group.rows.push_back(std::move(rule));
    const QString text = fromCore(line.text);
    const qsizetype end = text.indexOf(QLatin1String(". "));
    group.addText(text.left(end < 0 ? text.size() : end + 1), paperFont(kStepSize, true), 0, width);
    if (end >= 0)
        group.addText(text.mid(end + 2), paperFont(kNoteSize + 1), 0, width);
    group.addSpace(10);
    return group;
}

QString heading(const QString& what, std::size_t stage, std::size_t stages) {
    return stages == 1 ? what : tr("%1, stage %2 of %3").arg(what).arg(stage).arg(stages);
}

QString workHeading() {
    return tr("Work");
}

QString putBackHeading() {
    return tr("Put back");
}

// The teardown of a stage and its refit are two sections that would best share a page.
class Work {
  public:
    Work(std::size_t stages, double width) : stages_(stages), width_(width) {}

    void add(const sheet::SheetLine& line) {
        if (opens_)
            begin(workHeading(), stage_++ == 0 ? Start::NewPage : Start::Whole);
        if (line.kind == LineKind::On && !refits_) {
            if (!opens_)
                sections_.back().with = 1;
            begin(putBackHeading(), Start::Lower);
            refits_ = true;
        }
        opens_ = false;
        auto& groups = sections_.back().groups;
        if (line.kind == LineKind::SafeStop) {
            groups.back().keepWithNext = true;
            groups.push_back(safeStopGroup(line, width_));
            opens_ = true;
            refits_ = false;
        } else {
            groups.push_back(stepGroup(line, width_, said_));
        }
    }

    std::vector<Section> take() { return std::move(sections_); }

  private:
    void begin(const QString& what, Start start) {
        sections_.push_back({start, {headingGroup(heading(what, stage_, stages_), width_, false)}});
    }

    std::size_t stages_;
    double width_;
    std::vector<Section> sections_;
    std::set<upkeep::Hazard> said_;
    std::size_t stage_ = 0;
    bool opens_ = true;
    bool refits_ = false;
};

}  // namespace

std::vector<Section> workSections(const sheet::JobSheet& sheet, double width) {
    const auto stages = static_cast<std::size_t>(
        std::count_if(sheet.lines.begin(), sheet.lines.end(),
                      [](const sheet::SheetLine& line) { return line.kind == LineKind::SafeStop; }));
    Work work(stages, width);
    for (const sheet::SheetLine& line : sheet.lines)
        work.add(line);
    return work.take();
}

}  // namespace wm::ui
