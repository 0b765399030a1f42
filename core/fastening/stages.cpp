// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/stages.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "core/base/text.h"

namespace wm::fastening {

using base::Fault;
using base::refuse;
using base::Result;

namespace {

constexpr std::int64_t kMostDegrees = 720;

bool isNumeral(char c) {
    return c >= '0' && c <= '9';
}

// A comma between two digits is a decimal comma, any other ends a stage; a plus begins the angle.
std::vector<std::string_view> partsOf(std::string_view text) {
    std::vector<std::string_view> parts;
    std::size_t begin = 0;
    for (std::size_t at = 0; at <= text.size(); ++at) {
        const char c = at < text.size() ? text[at] : ';';
        const bool decimal =
            c == ',' && at > 0 && at + 1 < text.size() && isNumeral(text[at - 1]) && isNumeral(text[at + 1]);
        if (c != ';' && c != '+' && (c != ',' || decimal))
            continue;
        parts.push_back(base::trimmed(text.substr(begin, at - begin)));
        begin = at + 1;
    }
    return parts;
}

Result<std::int64_t> wholeDegrees(std::string_view figure, std::string_view part) {
    const auto value = units::parseDecimal("stages", figure);
    if (!value || value->scaledTo(0) * 1'000'000 != value->scaledTo(6))
        return refuse(Fault::Malformed, "stages", std::string(part));
    if (*value <= units::Decimal{})
        return refuse(Fault::NotPositive, "stages", std::string(part));
    if (*value > units::Decimal{kMostDegrees, 0})
        return refuse(Fault::TooLarge, "stages", std::string(part), std::to_string(kMostDegrees));
    return value->scaledTo(0);
}

// "90 deg", "90\u00B0", "1/4 turn", "1 turn"; nothing if the text says no angle.
std::optional<Result<std::int64_t>> angleOf(std::string_view text, std::string_view part) {
    static constexpr std::array<std::pair<std::string_view, std::int64_t>, 5> kTurns{
        {{"1/4", 90}, {"1/2", 180}, {"3/4", 270}, {"1", 360}, {"2", 720}}};
    for (const std::string_view word : {"degrees", "deg", "\u00B0"})
        if (text.ends_with(word))
            return wholeDegrees(base::trimmed(text.substr(0, text.size() - word.size())), part);
    for (const std::string_view word : {"turns", "turn"}) {
        if (!text.ends_with(word))
            continue;
        const std::string_view much = base::trimmed(text.substr(0, text.size() - word.size()));
        for (const auto& [figure, degrees] : kTurns)
            if (much == figure)
                return Result<std::int64_t>(degrees);
        return Result<std::int64_t>(refuse(Fault::Malformed, "stages", std::string(part)));
    }
    return std::nullopt;
}

Result<Stage> angleStage(StageKind kind, const Result<std::int64_t>& degrees) {
    if (!degrees)
        return tl::unexpected(degrees.error());
    return Stage{.kind = kind, .degrees = *degrees};
}

Result<Stage> torqueStage(std::string_view figure, std::string_view part) {
    const auto value = units::parseDecimal("stages", figure);
    if (!value)
        return refuse(Fault::Malformed, "stages", std::string(part));
    if (*value <= units::Decimal{})
        return refuse(Fault::NotPositive, "stages", std::string(part));
    return Stage{.kind = StageKind::Torque, .torque = *value};
}

Result<Stage> stageOf(std::string_view part) {
    static constexpr std::array<std::pair<std::string_view, StageKind>, 8> kWords{
        {{"snug", StageKind::Snug},
         {"finger-tight", StageKind::Snug},
         {"by hand", StageKind::Snug},
         {"half", StageKind::Half},
         {"full", StageKind::Full},
         {"loosen", StageKind::Loosen},
         {"back off", StageKind::Loosen},
         {"release", StageKind::Loosen}}};
    for (const auto& [word, kind] : kWords)
        if (part == word)
            return Stage{.kind = kind};
    if (part.starts_with("lock to lock"))
        return Stage{.kind = StageKind::Settle};
    for (const std::string_view word : {"loosen ", "back off "})
        if (part.starts_with(word)) {
            const auto angle = angleOf(base::trimmed(part.substr(word.size())), part);
            return angle ? angleStage(StageKind::Loosen, *angle)
                         : Result<Stage>(refuse(Fault::Malformed, "stages", std::string(part)));
        }
    if (const auto angle = angleOf(part, part))
        return angleStage(StageKind::Angle, *angle);
    for (const std::string_view word : {"snug ", "seat ", "set ", "to "})
        if (part.starts_with(word))
            return torqueStage(base::trimmed(part.substr(word.size())), part);
    return torqueStage(part, part);
}

// Torques rise, unless the joint was loosened between; an angle goes on from one; the end is tight.
Result<void> checkOrder(const std::vector<Stage>& stages) {
    const Stage* before = nullptr;
    bool isTight = false;
    for (const Stage& stage : stages) {
        if (stage.kind == StageKind::Angle && !isTight)
            return refuse(Fault::Inconsistent, "stages", stageText(stage));
        if (stage.kind == StageKind::Torque) {
            if (before != nullptr && stage.torque < before->torque)
                return refuse(Fault::OutOfOrder, "stages", stage.torque.text(), before->torque.text());
            before = &stage;
        }
        if (stage.kind == StageKind::Loosen)
            before = nullptr;
        if (stage.kind != StageKind::Settle)
            isTight = stage.kind != StageKind::Loosen;
    }
    if (!stages.empty() && !isTight)
        return refuse(Fault::Inconsistent, "stages", stageText(stages.back()));
    return {};
}

// Which of the two ends of a torque, as it stands now, takes the place of the figure `stage`; nothing if the
// stage is neither end of the torque that stood there.
std::optional<Result<units::Decimal>> inPlaceOf(const units::Decimal& stage, const JointVersion& stood,
                                                const JointVersion& read) {
    const bool isHigh = stood.torqueHigh == stage;
    if (!isHigh && stood.torque != stage)
        return std::nullopt;
    if (!stood.torqueHigh && read.torqueHigh)
        return Result<units::Decimal>(refuse(Fault::Inconsistent, "stages", stood.stages));
    return Result<units::Decimal>(isHigh ? read.torqueHigh.value_or(*read.torque) : *read.torque);
}

// The text with another figure for the torque of one part; the rest stays as it was typed.
std::string withFigure(const std::string& text, std::string_view part, const units::Decimal& torque) {
    const std::string_view figure = part.substr(part.find_last_not_of("0123456789.,") + 1);
    const auto begin = static_cast<std::size_t>(figure.data() - text.data());
    const char mark = figure.find(',') != std::string_view::npos ? ',' : '.';
    return text.substr(0, begin) + torque.text(mark) + text.substr(begin + figure.size());
}

bool isSameTorque(const JointVersion& a, const JointVersion& b) {
    return a.torque == b.torque && a.torqueHigh == b.torqueHigh && a.unit == b.unit;
}

}  // namespace

Result<std::string> stagesAfter(const JointVersion& stood, const JointVersion& read) {
    const auto stages = parseStages(stood.stages);
    if (read.stages != stood.stages || !stages || !read.torque || isSameTorque(stood, read))
        return read.stages;
    const auto isTorque = [](const Stage& stage) { return stage.kind == StageKind::Torque; };
    const auto last = std::find_if(stages->rbegin(), stages->rend(), isTorque);
    if (last == stages->rend())
        return read.stages;
    const auto unclear = [&] { return refuse(Fault::Inconsistent, "stages", stood.stages); };
    const auto torques = std::count_if(stages->begin(), stages->end(), isTorque);
    if (stood.torque && read.unit != stood.unit && torques > 1)
        return unclear();
    const auto now = inPlaceOf(last->torque, stood, read);
    if (!now)
        return stood.torque && read.unit != stood.unit ? Result<std::string>(unclear()) : read.stages;
    if (!*now)
        return tl::unexpected(now->error());
    if (**now == last->torque)
        return read.stages;
    if (std::count_if(stages->begin(), stages->end(), [&](const Stage& stage) {
            return isTorque(stage) && stage.torque == last->torque;
        }) > 1)
        return unclear();
    const auto part = partsOf(stood.stages).at(static_cast<std::size_t>(stages->rend() - last - 1));
    return withFigure(stood.stages, part, **now);
}

Result<std::vector<Stage>> parseStages(std::string_view text) {
    std::vector<Stage> stages;
    if (base::trimmed(text).empty())
        return stages;
    for (const std::string_view part : partsOf(text)) {
        const auto stage = stageOf(base::lowered(part));
        if (!stage)
            return tl::unexpected(stage.error());
        stages.push_back(*stage);
    }
    if (const auto order = checkOrder(stages); !order)
        return tl::unexpected(order.error());
    return stages;
}

std::string stageText(const Stage& stage, char mark) {
    switch (stage.kind) {
        case StageKind::Snug:
            return "snug";
        case StageKind::Half:
            return "half";
        case StageKind::Full:
            return "full";
        case StageKind::Loosen:
            return stage.degrees == 0 ? "loosen" : fmt::format("loosen {}\u00B0", stage.degrees);
        case StageKind::Settle:
            return "lock to lock";
        case StageKind::Angle:
            return fmt::format("{}\u00B0 further", stage.degrees);
        case StageKind::Torque:
            break;
    }
    return fmt::format("to {}", stage.torque.text(mark));
}

}  // namespace wm::fastening
