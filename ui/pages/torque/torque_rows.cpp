// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/torque_rows.h"

#include <algorithm>

#include "core/book/drawer_of_book.h"
#include "core/sheet/sheet_words.h"
#include "ui/words/figures.h"
#include "ui/words/speech.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using fastening::JointMark;
using fastening::MarkKind;

QString decimalWords(const units::Decimal& value) {
    return QString::fromStdString(value.text(decimalMark()));
}

QString unitWords(units::TorqueUnit unit) {
    const auto name = base::nameOf(unit);
    return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

QString sourceWords(const fastening::JointVersion& joint) {
    if (!joint.torque)
        return tr("not typed yet");
    QString words = text(joint.source);
    if (!joint.page.empty())
        words += tr(", p. %1").arg(text(joint.page));
    return joint.confirmed ? words : tr("%1, not confirmed").arg(words);
}

QString markWords(MarkKind kind) {
    switch (kind) {
        case MarkKind::Loosened:
            return tr("loosened");
        case MarkKind::Confirmed:
            return tr("torqued");
        case MarkKind::FoundFine:
            return tr("found fine");
        case MarkKind::MarkBroken:
            return tr("mark broken");
        case MarkKind::RiddenOpen:
            return tr("ridden open");
        case MarkKind::FoundMoved:
            break;
    }
    return tr("found moved");
}

std::vector<const JointMark*> marksOf(const book::Book& book, JointId joint) {
    std::vector<const JointMark*> marks;
    for (const JointMark& mark : book.ledger().all<JointMark>())
        if (mark.joint == joint)
            marks.push_back(&mark);
    std::sort(marks.begin(), marks.end(), [](const JointMark* a, const JointMark* b) {
        return std::pair(b->date, b->entered) < std::pair(a->date, a->entered);
    });
    return marks;
}

TableRow jointRow(const book::Book& book, const items::Machine& card, const fastening::JointVersion& joint,
                  const std::vector<book::OpenJoint>& open) {
    const bool handTight = std::any_of(open.begin(), open.end(),
                                       [&](const auto& entry) { return entry.joint->joint == joint.joint; });
    const auto marks = marksOf(book, joint.joint);
    const QString last = marks.empty() ? QString()
                                       : tr("%1 %2").arg(markWords(marks.front()->kind),
                                                         dayWords(marks.front()->date, book.today()));
    return {.id = joint.joint.value(),
            .cells = {
                {.text = text(joint.name)},
                {.text = text(card.name), .pencil = true},
                {.text = torqueWords(joint), .figure = true, .unconfirmed = joint.torque && !joint.confirmed},
                {.text = text(joint.thread), .pencil = true},
                {.text = text(joint.condition)},
                {.text = sourceWords(joint), .pencil = true},
                {.text = handTight ? tr("HAND-TIGHT") : last, .pencil = !handTight}}};
}

QString sequenceWords(const fastening::JointVersion& joint) {
    using fastening::Sequence;
    const QString note = text(joint.sequenceNote);
    switch (joint.sequence) {
        case Sequence::CrissCross:
            return note.isEmpty() ? tr("criss-cross") : tr("criss-cross: %1").arg(note);
        case Sequence::Spiral:
            return note.isEmpty() ? tr("in a spiral") : tr("in a spiral: %1").arg(note);
        case Sequence::EveryNth:
            return tr("every %1th, small steps%2")
                .arg(joint.sequenceStep)
                .arg(note.isEmpty() ? note : ": " + note);
        case Sequence::Listed:
        case Sequence::Any:
            break;
    }
    return note;
}

}  // namespace

QString torqueWords(const fastening::JointVersion& joint) {
    if (!joint.torque)
        return {};
    const QString low = decimalWords(*joint.torque);
    const QString value = joint.torqueHigh ? tr("%1 to %2").arg(low, decimalWords(*joint.torqueHigh)) : low;
    // A no-break space: the figure and its unit are one word.
    return value + QChar(0x00A0) + unitWords(joint.unit);
}

std::vector<TableRow> jointRows(const book::Book& book, std::optional<MachineId> machine) {
    std::vector<TableRow> rows;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        const auto open = book.handTight(card->id);
        for (const fastening::JointVersion* joint : book.joints(card->id))
            rows.push_back(jointRow(book, *card, *joint, open));
    }
    return rows;
}

std::vector<TableRow> foundRows(const book::Book& book, const fastening::Lookup& lookup,
                                const fastening::Found& found) {
    std::vector<TableRow> rows;
    for (const auto& hit : found.hits) {
        const fastening::Figure& figure = lookup.figures()[hit.figure];
        const auto* card = book.ledger().find<items::Machine>(figure.machine);
        const auto* joint =
            figure.kind == fastening::FigureKind::Joint ? book.joint(JointId(figure.id)) : nullptr;
        if (joint != nullptr && card != nullptr) {
            TableRow row = jointRow(book, *card, *joint, book.handTight(card->id));
            row.cells[2].text = text(fastening::figureText(figure, decimalMark(), found.unit));
            rows.push_back(std::move(row));
            continue;
        }
        const bool noted = figure.kind == fastening::FigureKind::Setting;
        const QString words = text(fastening::figureText(figure, decimalMark(), found.unit));
        rows.push_back({.id = -1 - static_cast<std::int64_t>(hit.figure),
                        .cells = {{.text = figure.about.empty() ? text(figure.name)
                                                                : text(figure.name) + QStringLiteral(" · ") +
                                                                      text(figure.about)},
                                  {.text = text(figure.machineName), .pencil = true},
                                  {.text = words,
                                   .figure = true,
                                   .unconfirmed = !noted && !words.isEmpty() && !figure.confirmed},
                                  {},
                                  {},
                                  {.text = text(figure.source), .pencil = true},
                                  {}}});
    }
    return rows;
}

QString handTightWords(const book::Book& book, std::optional<MachineId> machine) {
    constexpr qsizetype kMostNamed = 4;
    QStringList names;
    for (const items::Machine* card : book.machines())
        if (!machine || *machine == card->id)
            for (const book::OpenJoint& open : book.handTight(card->id))
                names << (machine ? text(open.joint->name)
                                  : tr("%1 (%2)").arg(text(open.joint->name), text(card->name)));
    if (names.isEmpty())
        return {};
    const QString named = names.mid(0, kMostNamed).join(QStringLiteral(", "));
    return names.size() <= kMostNamed
               ? tr("HAND-TIGHT: %1").arg(named)
               : tr("HAND-TIGHT: %1 and %2 more").arg(named, QString::number(names.size() - kMostNamed));
}

QString openWords(const book::Book& book, const fastening::JointVersion& joint) {
    for (const book::OpenJoint& open : book.handTight(joint.machine))
        if (open.joint->joint == joint.joint)
            return tr("HAND-TIGHT since %1: %2")
                .arg(dayWords(open.state.since, book.today()), markWords(open.state.why));
    return {};
}

QString lastWords(const book::Book& book, JointId joint) {
    for (const JointMark* mark : marksOf(book, joint)) {
        if (mark->kind != MarkKind::Confirmed)
            continue;
        QString words = tr("last torqued %1").arg(dayWords(mark->date, book.today()));
        if (const auto* person = mark->by ? book.ledger().find<items::Person>(*mark->by) : nullptr)
            words += tr(", by %1").arg(text(person->name));
        if (const auto* tool = mark->tool ? book.ledger().find<fastening::Tool>(*mark->tool) : nullptr)
            words += tr(", with %1").arg(text(tool->name));
        return words;
    }
    return {};
}

QString wrenchWords(const book::Book& book, const fastening::JointVersion& joint) {
    if (!joint.torque || book::drawerOf(book).empty())
        return {};
    const auto* tool = book::usualTool(book, joint);
    if (tool == nullptr)
        return tr("wrench: none in the drawer reaches this");
    const QString unit = QChar(0x00A0) + unitWords(tool->unit);
    return tr("wrench: %1, %2 to %3")
        .arg(text(tool->name), decimalWords(tool->low), decimalWords(tool->high) + unit);
}

JobJoints jobOf(const book::Book& book, const fastening::JointVersion& joint) {
    const upkeep::TaskVersion* best = nullptr;
    for (const upkeep::TaskVersion* task : book.tasks(joint.machine)) {
        const bool has = std::any_of(task->joints.begin(), task->joints.end(),
                                     [&](const base::Code& each) { return each.code == joint.code; });
        if (has && task->joints.size() > 1 && (best == nullptr || task->joints.size() < best->joints.size()))
            best = task;
    }
    JobJoints job;
    if (best == nullptr)
        return job;
    job.job = text(best->name);
    for (const base::Code& each : best->joints)
        if (const auto* other = book.joint(joint.machine, each.code))
            job.joints.push_back(other->joint);
    return job;
}

std::vector<QString> jointNotes(const fastening::JointVersion& joint) {
    std::vector<QString> notes;
    const auto add = [&](const QString& words) {
        if (!words.isEmpty())
            notes.push_back(words);
    };
    if (joint.count > 1)
        add(tr("%n piece(s)", nullptr, static_cast<int>(joint.count)));
    add(text(joint.thread));
    if (joint.leftHand)
        add(tr("LEFT-HAND THREAD"));
    add(text(joint.condition));
    add(joint.stages.empty() ? QString() : tr("in stages: %1").arg(text(joint.stages)));
    add(sequenceWords(joint));
    add(text(joint.locking));
    add(text(sheet::renewText(joint.renew, speech())));
    return notes;
}

std::vector<TableRow> markRows(const book::Book& book, JointId joint) {
    std::vector<TableRow> rows;
    for (const JointMark* mark : marksOf(book, joint)) {
        const auto* person = mark->by ? book.ledger().find<items::Person>(*mark->by) : nullptr;
        const auto* record = mark->record ? book.ledger().find<upkeep::Record>(*mark->record) : nullptr;
        const QString torque =
            mark->torque ? decimalWords(*mark->torque) + QChar(0x00A0) + unitWords(mark->unit) : QString();
        rows.push_back(
            {.id = mark->id.value(),
             .cells = {{.text = dayWords(mark->date, book.today()), .sort = mark->date.daysSinceEpoch()},
                       {.text = markWords(mark->kind)},
                       {.text = torque, .figure = true},
                       {.text = person == nullptr ? QString() : text(person->name), .pencil = true},
                       {.text = record == nullptr ? text(mark->note) : text(record->what), .pencil = true}}});
    }
    return rows;
}

}  // namespace wm::ui
