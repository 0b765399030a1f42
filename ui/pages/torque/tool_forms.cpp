// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/tool_forms.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>

#include "core/verbs/verbs.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using fastening::ToolType;
using units::TorqueUnit;

namespace {

constexpr std::int64_t kMostMillimetres = 10'000;
constexpr std::int64_t kMostMonths = 120;
constexpr std::int64_t kMostCycles = 1'000'000;

template <class E>
std::vector<Choice<E>> byName() {
    return eachOf<E>([](E value) { return nameWords(value); });
}

enum class Found : std::uint8_t { Within, PutRight, LeftOut };

base::Result<std::optional<units::Decimal>> figureIn(const QLineEdit* field) {
    if (field->text().trimmed().isEmpty())
        return std::optional<units::Decimal>();
    return units::parseDecimal(field->objectName().toStdString(), field->text().toStdString())
        .map([](units::Decimal value) { return std::optional(value); });
}

base::Result<units::Decimal> needFigureIn(const QLineEdit* field) {
    return units::parseDecimal(field->objectName().toStdString(), field->text().toStdString());
}

base::Result<std::optional<std::int64_t>> wholeIn(const QLineEdit* field, std::int64_t most) {
    if (field->text().trimmed().isEmpty())
        return std::optional<std::int64_t>();
    return units::parseCount(field->objectName().toStdString(), field->text().toStdString(), most)
        .map([](std::int64_t count) { return std::optional(count); });
}

template <class T>
QString shown(const std::optional<T>& value) {
    return value ? QString::number(*value) : QString();
}

QString shown(const units::Decimal& value) {
    return text(value.text(decimalMark()));
}

}  // namespace

ToolForm::ToolForm(Workbench& workbench, const fastening::Tool* tool)
    : EntryForm(workbench, tool == nullptr ? tr("torque tool") : tr("torque tool, changed")) {
    if (tool != nullptr)
        tool_ = *tool;
    setSubject(QString::number(tool_.id.value()));
    name_ = addText(QStringLiteral("name"), tr("what you call it"), QString(), 18);
    low_ = addText(QStringLiteral("low"), tr("from"), QString(), 6);
    high_ = addText(QStringLiteral("high"), tr("to"), QString(), 6);
    unit_ = addChoice(QStringLiteral("unit"), tr("unit"), byName<TorqueUnit>(), TorqueUnit{});
    step_ = addText(QStringLiteral("resolution"), tr("step of its scale"), QString(), 6);
    drive_ = addText(QStringLiteral("drive"), tr("drive"), QString(), 6);
    type_ = addChoice(QStringLiteral("type"), tr("ISO 6789 type"), byName<ToolType>(), ToolType{});
    length_ = addText(QStringLiteral("length"), tr("grip to drive, mm"), QString(), 6);
    months_ = addText(QStringLiteral("months"), tr("check every, months"), QString(), 5);
    cycles_ = addText(QStringLiteral("cycles"), tr("or cycles"), QString(), 7);
    months_->setPlaceholderText(QString::number(12));
    cycles_->setPlaceholderText(QString::number(5000));
    away_ = addTick(QStringLiteral("active"), tr("out of the drawer"), false);
    note_ = addText(QStringLiteral("note"), tr("note"), QString(), 20);
    type_->setToolTip(
        tr("Type II A is the usual click wrench with a scale; I A a bar, I B a dial, I C an "
           "electronic one. It decides how far off it may be; but for II A that figure is from memory of "
           "ISO 6789."));
    startAt(name_);
    if (!tool_.id.isNothing())
        fill();
}

void ToolForm::fill() {
    name_->setText(text(tool_.name));
    low_->setText(shown(tool_.low));
    high_->setText(shown(tool_.high));
    chooseIn(*unit_, tool_.unit);
    step_->setText(tool_.resolution ? shown(*tool_.resolution) : QString());
    drive_->setText(text(tool_.drive));
    chooseIn(*type_, tool_.type);
    length_->setText(shown(tool_.length));
    months_->setText(shown(tool_.months));
    cycles_->setText(shown(tool_.cycles));
    away_->setChecked(!tool_.active);
    note_->setText(text(tool_.note));
}

tl::expected<store::Verb, Faults> ToolForm::verb() {
    Answers read;
    fastening::Tool tool = tool_;
    tool.name = typed(name_);
    tool.low = read(needFigureIn(low_));
    tool.high = read(needFigureIn(high_));
    tool.unit = chosenOf<TorqueUnit>(*unit_);
    tool.resolution = read(figureIn(step_));
    tool.drive = typed(drive_);
    tool.type = chosenOf<ToolType>(*type_);
    tool.length = read(wholeIn(length_, kMostMillimetres));
    tool.months = read(wholeIn(months_, kMostMonths));
    tool.cycles = read(wholeIn(cycles_, kMostCycles));
    tool.active = !away_->isChecked();
    tool.note = typed(note_);
    return std::move(read).answer(
        [tool](const verbs::VerbContext& context) { return verbs::saveTool(context, tool); });
}

CalibrationForm::CalibrationForm(Workbench& workbench, const fastening::Tool& tool)
    : EntryForm(workbench, tr("check of %1").arg(text(tool.name))), tool_(tool.id) {
    setSubject(QString::number(tool.id.value()));
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    found_ = addChoice(QStringLiteral("left_within"), tr("it was found"),
                       {{Found::Within, tr("within tolerance")},
                        {Found::PutRight, tr("out of it, and put right")},
                        {Found::LeftOut, tr("out of it, and left so")}},
                       Found::Within);
    worst_ = addText(QStringLiteral("worst"), tr("worst deviation, %"), QString(), 6);
    byWhom_ = addText(QStringLiteral("by_whom"), tr("by whom"), QString(), 20);
    months_ = addText(QStringLiteral("months"), tr("next after months"), QString(), 5);
    cycles_ = addText(QStringLiteral("cycles"), tr("or cycles"), QString(), 7);
    note_ = addText(QStringLiteral("note"), tr("note"), QString(), 20);
    addNote(
        tr("Found out of tolerance: every joint torqued with it since its last good check is listed to be "
           "re-checked. Leave the next one empty for 12 months or 5000 cycles (from memory of ISO 6789)."));
    startAt(found_);
}

tl::expected<store::Verb, Faults> CalibrationForm::verb() {
    Answers read;
    fastening::Calibration calibration;
    calibration.tool = tool_;
    calibration.date = read(dayIn(date_, Lean::Past));
    const auto found = chosenOf<Found>(*found_);
    calibration.foundWithin = found == Found::Within;
    calibration.leftWithin = found != Found::LeftOut;
    calibration.worst = read(figureIn(worst_));
    calibration.byWhom = typed(byWhom_);
    calibration.months = read(wholeIn(months_, kMostMonths));
    calibration.cycles = read(wholeIn(cycles_, kMostCycles));
    calibration.note = typed(note_);
    return std::move(read).answer([calibration](const verbs::VerbContext& context) {
        return verbs::recordCalibration(context, calibration);
    });
}

}  // namespace wm::ui
