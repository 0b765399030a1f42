// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/checks.h"

#include <algorithm>

#include "core/base/text.h"

namespace wm::picture {

using base::Fault;

namespace {

bool isOfBounds(Fault fault) {
    return fault == Fault::Negative || fault == Fault::NotPositive || fault == Fault::TooLarge ||
           fault == Fault::TooLong || fault == Fault::NotADate || fault == Fault::OutOfOrder;
}

}  // namespace

Checks Checks::ofStored() {
    Checks checks;
    checks.stored_ = true;
    return checks;
}

void Checks::that(bool holds, Fault fault, const base::Place& field, std::string given, std::string wanted) {
    if (!holds && !error_ && (!stored_ || isOfBounds(fault)))
        error_ = base::Error{fault, field.within(prefix_), std::move(given), std::move(wanted)};
}

void Checks::take(const base::Result<void>& result) {
    if (!result && !error_) {
        error_ = result.error();
        error_->field = error_->field.within(prefix_);
    }
}

void Checks::takeMeter(base::Result<void> result) {
    if (!result && result.error().field == "shown")
        result.error().field = "meter";
    take(result);
}

// What was read as something harmless takes up to three bytes for one.
void Checks::length(const base::Place& field, std::string_view text, std::size_t most) {
    static constexpr std::string_view kInPlace = "\uFFFD";
    if (text.size() <= most)
        return;
    std::size_t size = text.size();
    for (auto at = text.find(kInPlace); at != std::string_view::npos; at = text.find(kInPlace, at + 1))
        size -= kInPlace.size() - 1;
    that(size <= most, Fault::TooLong, field, {}, std::to_string(most));
}

void Checks::name(const base::Place& field, std::string& text) {
    if (stored_)
        return length(field, text, base::kLongestName);
    auto name = base::parseName({}, text);
    if (name)
        text = std::move(*name);
    else
        that(false, name.error().fault, field, name.error().given, name.error().wanted);
}

void Checks::word(const base::Place& field, std::string& text) {
    if (!stored_ && base::trimmed(text).empty())
        text.clear();
    else
        name(field, text);
}

void Checks::shortWord(const base::Place& field, std::string& text, std::size_t most) {
    word(field, text);
    const auto inside = [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; };
    const auto characters =
        text.size() - static_cast<std::size_t>(std::count_if(text.begin(), text.end(), inside));
    that(characters <= most, Fault::TooLong, field, {}, std::to_string(most));
}

void Checks::note(const base::Place& field, std::string& text) {
    if (stored_)
        return length(field, text, base::kLongestNote);
    auto note = base::parseNote({}, text);
    if (note)
        text = std::move(*note);
    else
        that(false, note.error().fault, field, note.error().given, note.error().wanted);
}

void Checks::words(const base::Place& field, std::string& text) {
    note(field, text);
    if (!stored_)
        that(!base::trimmed(text).empty(), Fault::Empty, field);
}

void Checks::code(const base::Place& field, std::string& text) {
    name(field, text);
    if (!stored_)
        that(text.find_first_of(" /") == std::string::npos, Fault::Malformed, field, text,
             base::codeFromName(text));
}

void Checks::fromZero(const base::Place& field, std::int64_t value, std::int64_t most) {
    if (0 <= value && value <= most)
        return;
    that(value >= 0, Fault::Negative, field, std::to_string(value));
    that(value <= most, Fault::TooLarge, field, std::to_string(value), std::to_string(most));
}

void Checks::fromOne(const base::Place& field, std::int64_t value, std::int64_t most) {
    if (1 <= value && value <= most)
        return;
    that(value >= 1, Fault::NotPositive, field, std::to_string(value));
    that(value <= most, Fault::TooLarge, field, std::to_string(value), std::to_string(most));
}

void Checks::hours(const base::Place& field, const std::optional<units::Hours>& value) {
    if (!value || (0 <= value->count() && value->count() <= kMostHours))
        return;
    that(value->count() >= 0, Fault::Negative, field, units::hoursText(*value));
    that(value->count() <= kMostHours, Fault::TooLarge, field, units::hoursText(*value),
         units::hoursText(units::Hours{kMostHours}));
}

void Checks::metres(const base::Place& field, const std::optional<units::Metres>& value) {
    if (!value || (0 <= value->count() && value->count() <= kMostMetres))
        return;
    that(value->count() >= 0, Fault::Negative, field, units::kilometresText(*value));
    that(value->count() <= kMostMetres, Fault::TooLarge, field, units::kilometresText(*value),
         units::kilometresText(units::Metres{kMostMetres}));
}

void Checks::minutes(const base::Place& field, const std::optional<units::Minutes>& value) {
    if (value)
        fromZero(field, value->count(), kMostMinutes);
}

void Checks::money(const base::Place& field, const std::optional<units::Money>& value) {
    if (value)
        fromZero(field, value->count(), kMostMoney);
}

void Checks::decimal(const base::Place& field, const std::optional<units::Decimal>& value) {
    if (!value)
        return;
    const bool fits = value->places() >= 0 && value->places() <= units::kMostPlaces &&
                      value->digits() <= units::kMostDigits && value->digits() >= -units::kMostDigits;
    if (!fits)
        that(false, Fault::TooLarge, field, std::to_string(value->digits()),
             std::to_string(units::kMostDigits));
}

void Checks::date(const base::Place& field, const std::optional<calendar::Date>& value) {
    if (!value)
        return;
    static constexpr std::int32_t kFirst = -25'567;  // 1900-01-01
    static constexpr std::int32_t kLast = 84'005;    // 2199-12-31
    const std::int32_t day = value->daysSinceEpoch();
    if (day < kFirst || day > kLast)
        that(false, Fault::NotADate, field, std::to_string(day));
}

void Checks::ordered(const base::Place& field, calendar::Date first, calendar::Date last) {
    date(field, first);
    date(field, last);
    if (!failed())
        that(first <= last, Fault::OutOfOrder, field, last.iso(), first.iso());
}

bool sameName(std::string_view a, std::string_view b) {
    return base::lowered(base::trimmed(a)) == base::lowered(base::trimmed(b));
}

std::string shortened(std::string_view text) {
    static constexpr std::size_t kMost = 60;
    const std::string_view line = text.substr(0, text.find('\n'));
    if (line.size() <= kMost)
        return std::string(base::trimmed(line)) + (line.size() < text.size() ? "…" : "");
    std::size_t end = kMost;
    while (end > 0 && (static_cast<unsigned char>(line[end]) & 0xC0U) == 0x80U)
        --end;
    return std::string(base::trimmed(line.substr(0, end))) + "…";
}

}  // namespace wm::picture
