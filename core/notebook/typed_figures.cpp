// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/typed_figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "core/base/text.h"
#include "core/words/folding.h"

namespace wm::notebook {

namespace {

constexpr int kFirstYear = 1970;
constexpr int kFirstSerial = 25'569;  // 1970-01-01
constexpr int kLastSerial = 73'050;   // 2099-12-31

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

bool allDigits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), isDigit);
}

int number(std::string_view digits) {
    int value = 0;
    for (const char c : digits.substr(0, 9))
        value = value * 10 + (c - '0');
    return value;
}

// The beginnings of the names of months, folded.
constexpr std::array<std::array<std::string_view, 5>, 12> kMonths{{{"jan", "jan", "janv", "gen", "ene"},
                                                                   {"feb", "feb", "fev", "feb", "feb"},
                                                                   {"mar", "maer", "mars", "mar", "mar"},
                                                                   {"apr", "apr", "avr", "apr", "abr"},
                                                                   {"may", "mai", "mai", "mag", "may"},
                                                                   {"jun", "jun", "juin", "giu", "jun"},
                                                                   {"jul", "jul", "juil", "lug", "jul"},
                                                                   {"aug", "aug", "aou", "ago", "ago"},
                                                                   {"sep", "sep", "sep", "set", "sep"},
                                                                   {"oct", "okt", "oct", "ott", "oct"},
                                                                   {"nov", "nov", "nov", "nov", "nov"},
                                                                   {"dec", "dez", "dec", "dic", "dic"}}};

std::optional<int> monthNamed(const std::string& word) {
    if (word.size() < 3 || isDigit(word[0]))
        return std::nullopt;
    for (std::size_t month = 0; month < kMonths.size(); ++month)
        for (const std::string_view beginning : kMonths[month])
            if (word.starts_with(beginning))
                return static_cast<int>(month) + 1;
    return std::nullopt;
}

std::optional<calendar::Date> dayOf(int year, int month, int day) {
    if (year < 100)
        year += year < 70 ? 2000 : 1900;
    if (year < kFirstYear)
        return std::nullopt;
    const auto date = calendar::makeDate(year, month, day);
    return date ? std::optional(*date) : std::nullopt;
}

// The cell without the time of day that spreadsheets put behind a date, and without a weekday before it.
std::string_view dayPart(std::string_view cell) {
    cell = base::trimmed(cell);
    if (const auto colon = cell.find(':'); colon != std::string_view::npos) {
        const auto blank = cell.find_last_of(" T", colon);
        if (blank == std::string_view::npos)
            return {};
        cell = base::trimmed(cell.substr(0, blank));
    }
    std::size_t letters = 0;
    while (letters < cell.size() && !isDigit(cell[letters]))
        ++letters;
    const std::string before = words::folded(cell.substr(0, letters));
    if (letters > 0 && letters < cell.size() && !monthNamed(before))
        cell.remove_prefix(letters);
    return cell;
}

std::optional<ReadDate> namedMonth(std::string_view cell, std::optional<int> year) {
    std::optional<int> month;
    std::vector<int> numbers;
    for (const std::string& word : words::wordsOf(cell)) {
        if (const auto named = monthNamed(word); named && !month) {
            month = named;
            continue;
        }
        std::size_t digits = 0;
        while (digits < word.size() && isDigit(word[digits]))
            ++digits;
        // "7th" is a number, "de" nothing, anything else no date.
        if (digits > 0 && word.size() - digits <= 2)
            numbers.push_back(number(word.substr(0, digits)));
        else if (word.size() > 2)
            return std::nullopt;
    }
    if (!month || numbers.empty() || numbers.size() > 2 || (numbers.size() == 1 && !year))
        return std::nullopt;
    ReadDate read{.form = DateForm::DayFirst, .yearAdded = numbers.size() == 1};
    const bool yearLeads = numbers.size() == 2 && numbers[0] > 31;
    const int day = yearLeads ? numbers[1] : numbers[0];
    const auto date = dayOf(numbers.size() == 1 ? *year : yearLeads ? numbers[0] : numbers[1], *month, day);
    if (!date)
        return std::nullopt;
    read.date = *date;
    return read;
}

std::optional<ReadDate> ofNumbers(const std::vector<std::string>& parts, DateForm form,
                                  std::optional<int> year) {
    if (parts.size() == 3 && parts[0].size() == 4) {
        const auto date = dayOf(number(parts[0]), number(parts[1]), number(parts[2]));
        return date ? std::optional(ReadDate{*date, DateForm::YearFirst}) : std::nullopt;
    }
    if (parts.size() == 2 && !year)
        return std::nullopt;
    const int a = number(parts[0]);
    const int b = number(parts[1]);
    const int ofYear = parts.size() == 3 ? number(parts[2]) : *year;
    if (parts.size() == 3 && parts[2].size() != 2 && parts[2].size() != 4)
        return std::nullopt;
    const auto dayFirst = dayOf(ofYear, b, a);
    const auto monthFirst = dayOf(ofYear, a, b);
    if (!dayFirst && !monthFirst)
        return std::nullopt;
    const bool wantsMonth = form == DateForm::MonthFirst;
    const bool takesMonth = monthFirst && (wantsMonth || !dayFirst);
    ReadDate read{.date = takesMonth ? *monthFirst : *dayFirst,
                  .form = takesMonth ? DateForm::MonthFirst : DateForm::DayFirst,
                  .bothWays = dayFirst && monthFirst && a != b,
                  .yearAdded = parts.size() == 2};
    return read;
}

std::optional<ReadDate> written(std::string_view cell, DateForm form, std::optional<int> year) {
    const std::string_view day = dayPart(cell);
    std::vector<std::string> parts(1);
    for (const char c : day) {
        if (isDigit(c))
            parts.back() += c;
        else if (c == '.' || c == '/' || c == '-' || c == ' ') {
            if (!parts.back().empty())
                parts.emplace_back();
            else if (c != ' ')
                return namedMonth(day, year);
        } else
            return namedMonth(day, year);
    }
    if (parts.back().empty())
        parts.pop_back();
    const bool fits =
        (parts.size() == 2 || parts.size() == 3) && parts[0].size() <= 4 && parts[1].size() <= 2;
    // 1.5 is a number before it is the first of May.
    if (!fits || (parts.size() == 2 && day.back() != '.' && day.find('/') == std::string_view::npos))
        return std::nullopt;
    return ofNumbers(parts, form, year);
}

}  // namespace

std::optional<ReadDate> readDate(std::string_view cell, DateForm form, std::optional<int> year) {
    const std::string_view text = base::trimmed(cell);
    if (text.size() == 5 && allDigits(text) && number(text) >= kFirstSerial && number(text) <= kLastSerial)
        return ReadDate{calendar::Date{number(text) - kFirstSerial}, DateForm::Serial};
    if (text.size() == 8 && allDigits(text))
        if (const auto date =
                dayOf(number(text.substr(0, 4)), number(text.substr(4, 2)), number(text.substr(6))))
            return ReadDate{*date, DateForm::YearFirst};
    return written(text, form, year);
}

bool looksLikeDate(std::string_view cell) {
    return cell.size() > 5 && cell.size() < 40 && !allDigits(cell) &&
           readDate(cell, DateForm::DayFirst).has_value();
}

std::string dateText(calendar::Date date, DateForm form) {
    switch (form) {
        case DateForm::DayFirst:
            return fmt::format("{:02}.{:02}.{}", date.day(), date.month(), date.year());
        case DateForm::MonthFirst:
            return fmt::format("{:02}/{:02}/{}", date.month(), date.day(), date.year());
        case DateForm::YearFirst:
        case DateForm::Serial:
            break;
    }
    return date.iso();
}

namespace {

// A blank, an apostrophe or the other mark, with figures still to come.
bool partsThousands(std::string_view text, std::size_t at, char other) {
    const char c = text[at];
    const bool mark = c == other || c == ' ' || c == '\'' || text.substr(at, 2) == "\xC2\xA0" || c == '\xA0';
    return mark && isDigit(text.back());
}

}  // namespace

std::optional<std::int64_t> readNumber(std::string_view cell, char decimal, int places) {
    std::string digits;
    int decimals = -1;
    std::string_view text = base::trimmed(cell);
    const bool negative = text.starts_with('-');
    if (negative || text.starts_with('+'))
        text.remove_prefix(1);
    // A single mark that is not the notebook's own is a decimal mark all the same, unless three digits
    // follow.
    const char other = decimal == ',' ? '.' : ',';
    const auto mark = text.find(decimal);
    const auto strange = text.find(other);
    const bool strangeIsDecimal = mark == std::string_view::npos && strange != std::string_view::npos &&
                                  text.find(other, strange + 1) == std::string_view::npos &&
                                  text.size() - strange != 4;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (isDigit(c)) {
            digits += c;
            decimals += decimals >= 0 ? 1 : 0;
        } else if ((c == decimal || (c == other && strangeIsDecimal)) && decimals < 0) {
            decimals = 0;
        } else if (partsThousands(text, at, other) && decimals < 0 && !digits.empty()) {
            continue;
        } else {
            return std::nullopt;
        }
    }
    if (digits.empty() || digits.size() > 15)
        return std::nullopt;
    for (decimals = std::max(decimals, 0); decimals > places; --decimals) {
        if (digits.back() != '0')
            return std::nullopt;
        digits.pop_back();
    }
    digits.append(static_cast<std::size_t>(places - decimals), '0');
    std::int64_t value = 0;
    for (const char c : digits)
        value = value * 10 + (c - '0');
    return negative ? -value : value;
}

bool isPlainNumber(std::string_view cell) {
    return readNumber(cell, '.', 9).has_value();
}

namespace {

// Up to four decimals are kept by spreadsheets that divided something; hours are hundredths here.
std::optional<units::Hours> hundredths(std::string_view cell, char decimal) {
    if (const auto exact = readNumber(cell, decimal, 2))
        return units::Hours{*exact};
    if (const auto fine = readNumber(cell, decimal, 12); fine && std::abs(*fine) < 1'000'000'000'000'000)
        return units::Hours{static_cast<std::int64_t>(std::llround(static_cast<double>(*fine) / 1e10))};
    return std::nullopt;
}

// 1:30, 01:30:00
std::optional<units::Hours> clock(std::string_view text) {
    const auto parts = base::split(text, ':');
    if (parts.size() < 2 || parts.size() > 3)
        return std::nullopt;
    for (const std::string& part : parts)
        if (!allDigits(part) || part.size() > 4)
            return std::nullopt;
    const int minutes = number(parts[1]);
    const int seconds = parts.size() == 3 ? number(parts[2]) : 0;
    if (parts[1].size() != 2 || minutes > 59 || seconds > 59)
        return std::nullopt;
    const std::int64_t all = std::int64_t{number(parts[0])} * 3600 + minutes * 60 + seconds;
    return units::Hours{(all + 18) / 36};
}

bool meansHours(const std::string& unit) {
    constexpr std::array<std::string_view, 12> kWords{
        "h", "hr", "hrs", "hour", "hours", "std", "stunden", "stunde", "heures", "ore", "horas", "timmar"};
    return std::find(kWords.begin(), kWords.end(), unit) != kWords.end();
}

bool meansMinutes(const std::string& unit) {
    constexpr std::array<std::string_view, 6> kWords{"m", "min", "mins", "minutes", "minuten", "minuti"};
    return std::find(kWords.begin(), kWords.end(), unit) != kWords.end();
}

// "2 h", "1h30", "1 h 30 min", "90 min", "90'"
std::optional<ReadHours> withUnit(std::string_view text, char decimal) {
    std::vector<std::pair<std::string, std::string>> parts;
    for (const char c : text) {
        const bool figure = isDigit(c) || c == ',' || c == '.';
        if (figure && (parts.empty() || !parts.back().second.empty()))
            parts.emplace_back();
        if (parts.empty())
            return std::nullopt;
        (figure ? parts.back().first : parts.back().second) += c == '\'' ? 'm' : c;
    }
    std::int64_t sum = 0;
    bool hours = false;
    bool minutes = false;
    for (std::size_t at = 0; at < parts.size(); ++at) {
        const std::string unit = words::folded(parts[at].second);
        const auto value = readNumber(parts[at].first, decimal, 2);
        if (!value)
            return std::nullopt;
        if (meansHours(unit) && !hours && !minutes) {
            sum += *value;
            hours = true;
        } else if (!minutes && (meansMinutes(unit) || (unit.empty() && hours))) {
            sum += (*value + 30) / 60;
            minutes = true;
        } else {
            return std::nullopt;
        }
    }
    if (!hours && !minutes)
        return std::nullopt;
    const HoursForm form = !hours ? HoursForm::Minutes : minutes ? HoursForm::Clock : HoursForm::WithUnit;
    return ReadHours{units::Hours{sum}, form};
}

}  // namespace

std::optional<ReadHours> readHours(std::string_view cell, char decimal) {
    std::string_view text = base::trimmed(cell);
    bool about = false;
    for (const std::string_view word : {"ca.", "ca", "~", "approx.", "about", "circa", "etwa", "env."})
        if (text.starts_with(word)) {
            text = base::trimmed(text.substr(word.size()));
            about = true;
            break;
        }
    std::optional<ReadHours> read;
    if (const auto plain = hundredths(text, decimal))
        read = ReadHours{*plain, HoursForm::Number};
    else if (const auto time = clock(text))
        read = ReadHours{*time, HoursForm::Clock};
    else
        read = withUnit(text, decimal);
    if (read && about)
        read->form = HoursForm::About;
    return read;
}

std::string hoursIn(units::Hours hours, char decimal) {
    return units::hoursText(hours, decimal);
}

bool isFormula(std::string_view cell) {
    if (cell.size() > 1 && cell[0] == '=')
        return true;
    constexpr std::array<std::string_view, 8> kFailed{"#REF!", "#VALUE!", "#DIV/0!", "#NAME?",
                                                      "#N/A",  "#NUM!",   "#NULL!",  "#####"};
    return std::any_of(kFailed.begin(), kFailed.end(),
                       [cell](std::string_view word) { return cell.starts_with(word); });
}

}  // namespace wm::notebook
