// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/mark_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <array>

#include "core/book/drawer_of_book.h"
#include "core/verbs/verbs.h"
#include "ui/entry/last_used.h"
#include "ui/entry/tool_names.h"
#include "ui/words/drawer_words.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using fastening::MarkKind;

namespace {

QString titleOf(const Workbench& workbench, JointId joint) {
    const auto* version = workbench.book()->joint(joint);
    return version == nullptr ? tr("joint") : text(version->name);
}

// Below the function with a text: lupdate takes the "std" of a constant above it for the context.
constexpr std::int64_t kMostDegrees = 3600;

}  // namespace

MarkForm::MarkForm(Workbench& workbench, JointId joint, MarkKind first)
    : EntryForm(workbench, titleOf(workbench, joint)), joint_(joint) {
    setSubject(QStringLiteral("%1/%2").arg(joint.value()).arg(static_cast<int>(first)));
    what_ = addChoice(QStringLiteral("kind"), tr("it was"),
                      {{MarkKind::Confirmed, tr("torqued and marked")},
                       {MarkKind::FoundFine, tr("found fine")},
                       {MarkKind::FoundMoved, tr("found moved")},
                       {MarkKind::MarkBroken, tr("found with its mark broken")},
                       {MarkKind::Loosened, tr("loosened")}},
                      first);
    tool_ = addSuggested(QStringLiteral("tool"), tr("with"), QString(), toolNames(book()), 16);
    count_ = addText(QStringLiteral("moved_count"), tr("how many moved"), QString(), 4);
    degrees_ = addText(QStringLiteral("moved_degrees"), tr("how far, degrees"), QString(), 5);
    again_ = addTick(QStringLiteral("again"), tr("torqued again at once"), false);
    by_ = addPerson(QStringLiteral("by_person"), tr("by"), lastMechanic(book()));
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    note_ = addText(QStringLiteral("note"), tr("note"), QString(), 20);
    const auto* version = book().joint(joint);
    if (version != nullptr) {
        if (const auto* usual = book::usualTool(book(), *version))
            tool_->setText(text(usual->name));
        const auto* machine = book().ledger().find<items::Machine>(version->machine);
        addNote(machine == nullptr ? text(version->name)
                                   : tr("%1 on %2").arg(text(version->name), text(machine->name)));
    }
    connect(what_, &QComboBox::currentIndexChanged, this, &MarkForm::follow);
    startAt(what_);
    follow();
}

MarkKind MarkForm::kind() const {
    return chosenOf<MarkKind>(*what_);
}

void MarkForm::follow() {
    const bool moved = kind() == MarkKind::FoundMoved || kind() == MarkKind::MarkBroken;
    for (QWidget* field : std::initializer_list<QWidget*>{count_, degrees_, again_})
        field->setEnabled(moved);
    tool_->setEnabled(kind() != MarkKind::Loosened);
}

base::Result<std::optional<ToolId>> MarkForm::toolIn() const {
    return toolNamed(book(), kind() == MarkKind::Loosened ? QString() : tool_->text());
}

tl::expected<store::Verb, Faults> MarkForm::verb() {
    Answers read;
    fastening::JointMark mark;
    mark.joint = joint_;
    mark.kind = kind();
    mark.date = read(dayIn(date_, Lean::Past));
    mark.by = read(personIn(by_));
    mark.tool = read(toolIn());
    mark.note = typed(note_);
    if (count_->isEnabled() && !count_->text().trimmed().isEmpty())
        mark.movedCount = read(units::parseCount("moved_count", typed(count_), 1000));
    if (degrees_->isEnabled() && !degrees_->text().trimmed().isEmpty())
        mark.movedDegrees = read(units::parseCount("moved_degrees", typed(degrees_), kMostDegrees));
    std::vector<fastening::JointMark> marks{mark};
    if (again_->isEnabled() && again_->isChecked()) {
        fastening::JointMark tight = mark;
        tight.kind = MarkKind::Confirmed;
        tight.movedCount = tight.movedDegrees = std::nullopt;
        tight.note.clear();
        marks.push_back(tight);
    }
    return std::move(read).answer(
        [marks](const verbs::VerbContext& context) { return verbs::markJoints(context, marks); });
}

}  // namespace wm::ui
