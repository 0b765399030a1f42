// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/stand_figures.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/units/unit_words.h"
#include "core/upkeep/sources.h"

namespace wm::book {

namespace {

using fastening::Figure;
using fastening::FigureKind;

bool names(const std::vector<base::Code>& codes, std::string_view code) {
    return std::any_of(codes.begin(), codes.end(), [&](const base::Code& each) { return each.code == code; });
}

// The figures of one machine, in the order of the book.
class Gathering {
  public:
    Gathering(const Book& book, const items::Machine& machine, std::vector<Figure>& into)
        : book_(book),
          machine_(machine),
          tasks_(book.tasks(machine.id)),
          steps_(book.steps(machine.id)),
          into_(into) {}

    void joints() {
        for (const auto* joint : book_.joints(machine_.id)) {
            Figure figure = begin(FigureKind::Joint, joint->joint.value(), joint->code, joint->name);
            figure.thread = joint->thread;
            figure.low = joint->torque;
            figure.high = joint->torqueHigh;
            figure.unit = base::nameOf(joint->unit);
            figure.source = joint->source;
            figure.page = joint->page;
            figure.confirmed = joint->confirmed;
            figure.alongside = std::string(base::nameOf(joint->kind)) + ' ' + joint->condition + ' ' +
                               joint->locking + ' ' + joint->renew;
            for (const auto* task : tasks_)
                if (names(task->joints, joint->code))
                    figure.alongside += ' ' + task->name;
            for (const auto* step : steps_)
                if (names(step->joints, joint->code))
                    figure.alongside += ' ' + step->name;
            into_.push_back(std::move(figure));
        }
    }

    void jobs() {
        for (const auto* task : tasks_) {
            for (const upkeep::KitLine& line : task->kit)
                quantity(*task, line);
            for (const upkeep::MeasurePoint& point : task->measures)
                limit(*task, point);
        }
    }

    void settings() {
        std::map<std::tuple<std::optional<ItemId>, std::string>, const items::Setting*> last;
        for (const auto& setting : book_.ledger().all<items::Setting>()) {
            if (setting.machine != machine_.id || setting.date > book_.today())
                continue;
            const items::Setting*& kept = last[{setting.item, setting.name}];
            if (kept == nullptr ||
                std::pair(kept->date, kept->entered) <= std::pair(setting.date, setting.entered))
                kept = &setting;
        }
        for (const auto& [key, setting] : last)
            add(*setting);
    }

  private:
    Figure begin(FigureKind kind, std::int64_t id, std::string code, std::string name) {
        return {.kind = kind,
                .id = id,
                .code = std::move(code),
                .machine = machine_.id,
                .machineName = machine_.name,
                .name = std::move(name)};
    }

    void quantity(const upkeep::TaskVersion& task, const upkeep::KitLine& line) {
        Figure figure =
            begin(FigureKind::Quantity, task.task.value(), task.code + '/' + line.what, line.what);
        figure.about = task.name;
        figure.low = units::Decimal{line.amount, 0};
        figure.unit = line.unit == upkeep::Unit::Millilitre ? "ml"
                      : line.unit == upkeep::Unit::Gram     ? "g"
                                                            : "pcs";
        figure.source = upkeep::sourceOf(task, line);
        figure.page = line.page;
        figure.confirmed = line.confirmed;
        figure.alongside = task.position;
        if (const auto* stock = line.line ? book_.ledger().find<stock::StockLine>(*line.line) : nullptr)
            figure.alongside += ' ' + stock->name + ' ' + stock->partNumber;
        into_.push_back(std::move(figure));
    }

    void limit(const upkeep::TaskVersion& task, const upkeep::MeasurePoint& point) {
        Figure figure = begin(FigureKind::Limit, task.task.value(), task.code + '/' + point.name, point.name);
        figure.about = task.name;
        figure.low = point.least;
        figure.high = point.most;
        figure.unit = point.unit;
        figure.source = point.source;
        figure.page = point.page;
        figure.confirmed = point.confirmed;
        figure.alongside = task.position;
        into_.push_back(std::move(figure));
    }

    void add(const items::Setting& setting) {
        Figure figure = begin(FigureKind::Setting, setting.id.value(), setting.name, setting.name);
        const auto* item = setting.item ? book_.ledger().find<items::Item>(*setting.item) : nullptr;
        if (item != nullptr)
            figure.about = item->name;
        // "0.85 bar" can be had in psi; "third clip" is what it is.
        const auto measured = units::parseMeasured("value", setting.value);
        if (measured && !measured->unit.empty()) {
            figure.low = measured->value;
            figure.unit = measured->unit;
        } else {
            figure.words = setting.value;
        }
        figure.source = "noted " + setting.date.iso();
        figure.alongside = setting.note;
        into_.push_back(std::move(figure));
    }

    const Book& book_;
    const items::Machine& machine_;
    std::vector<const upkeep::TaskVersion*> tasks_;
    std::vector<const weekend::StepVersion*> steps_;
    std::vector<Figure>& into_;
};

}  // namespace

std::vector<Figure> figuresOf(const Book& book, std::optional<MachineId> machine) {
    std::vector<Figure> figures;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        Gathering gathering(book, *card, figures);
        gathering.joints();
        gathering.jobs();
        gathering.settings();
    }
    return figures;
}

}  // namespace wm::book
