// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/fields/draft.h"

#include <type_traits>
#include <utility>

#include "ui/entry/day_words.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"
#include "ui/words/weight_words.h"

namespace wm::ui {

namespace {

using base::Fault;
using upkeep::Counter;

constexpr std::int64_t kMostPieces = 1'000'000'000;
constexpr std::int64_t kMostPermille = 10'000;

// What an amount without a unit of its own counts: said by the field before it (a limit's counter, the time
// of a follow-up).
enum class Scale : std::uint8_t { Pieces, Hours, Kilometres, Factor };

Scale scaleOf(Counter counter) {
    return counter == Counter::Hours    ? Scale::Hours
           : counter == Counter::Metres ? Scale::Kilometres
                                        : Scale::Pieces;
}
Scale scaleOf(upkeep::When when) {
    return when == upkeep::When::AfterHours ? Scale::Hours : Scale::Pieces;
}
template <class E>
Scale scaleOf(E /*another choice*/) {
    return Scale::Pieces;
}

// An interval, or what an hour counts, that is left blank was forgotten; any other count is none.
bool mustBeTyped(std::string_view field) {
    return field == "every" || field == "permille";
}

base::Result<std::int64_t> permilleIn(const std::string& typed) {
    const auto factor = units::parseDecimal({}, typed);
    if (!factor)
        return tl::unexpected(factor.error());
    if (*factor > units::Decimal{kMostPermille, 3})
        return base::refuse(Fault::TooLarge, {}, typed, "10");
    const std::int64_t permille = factor->scaledTo(3);
    return permille > 0 ? base::Result<std::int64_t>(permille) : base::refuse(Fault::NotPositive, {}, typed);
}

// A weight says by its name what it is.
Scale scaleOf(std::string_view field, Scale said) {
    return field == "permille" ? Scale::Factor : said;
}

QString amountText(std::int64_t amount, Scale scale) {
    switch (scale) {
        case Scale::Hours:
            return text(units::hoursText(units::Hours{amount}, decimalMark()));
        case Scale::Kilometres:
            return text(units::kilometresText(units::Metres{amount}, decimalMark()));
        case Scale::Factor:
            return factorText(amount);
        case Scale::Pieces:
            break;
    }
    return QString::number(amount);
}

base::Result<std::int64_t> amountIn(const std::string& typed, Scale scale) {
    switch (scale) {
        case Scale::Hours:
            return units::parseHours({}, typed).map([](units::Hours hours) { return hours.count(); });
        case Scale::Kilometres:
            return units::parseKilometres({}, typed).map([](units::Metres metres) { return metres.count(); });
        case Scale::Factor:
            return permilleIn(typed);
        case Scale::Pieces:
            break;
    }
    return units::parseCount({}, typed, kMostPieces);
}

// Version -> fields, by the version's own list of fields.
struct Spelling {
    DraftRow& row;
    std::map<std::string, std::vector<DraftRow>>* lists = nullptr;
    Scale scale = Scale::Pieces;

    void operator()(const char* name, const std::string& words) { row[name] = text(words); }
    void operator()(const char* name, bool ticked) { row[name] = ticked ? kTicked : QString(); }
    void operator()(const char* name, std::int64_t amount) {
        row[name] = amount == 0 ? QString() : amountText(amount, scaleOf(name, scale));
    }
    void operator()(const char* name, const std::optional<std::int64_t>& amount) {
        row[name] = amount ? amountText(*amount, scale) : QString();
    }
    void operator()(const char* name, const std::optional<units::Decimal>& figure) {
        row[name] = figure ? text(figure->text(decimalMark())) : QString();
    }
    void operator()(const char* name, units::Minutes minutes) { (*this)(name, minutes.count()); }
    void operator()(const char* name, const calendar::Date& /*of the old version*/) {
        row[name] = ui::tr("today");
    }
    template <class E>
    requires std::is_enum_v<E>
    void operator()(const char* name, E value) {
        scale = scaleOf(value);
        row[name] = text(std::string(base::nameOf(value)));
    }
    template <class E>
    requires std::is_enum_v<E>
    void operator()(const char* name, const std::optional<E>& value) {
        row[name] = value ? text(std::string(base::nameOf(*value))) : QString();
    }
    template <class Tag>
    void operator()(const char* name, const std::optional<base::Id<Tag>>& id) {
        row[name] = id ? QString::number(id->value()) : QString();
    }
    template <class Tag>
    void operator()(const char* /*name*/, const base::Id<Tag>& /*no field*/) {}
    template <class Child>
    void operator()(const char* name, const std::vector<Child>& children) {
        auto& rows = (*lists)[name];
        for (const Child& child : children) {
            DraftRow of;
            Child::fields(child, Spelling{of});
            rows.push_back(std::move(of));
        }
    }
};

// Fields -> version; what is not among the fields stays as it is.
struct Reading {
    const DraftRow& row;
    Answers& read;
    calendar::Date today;
    base::Place around{};
    const std::map<std::string, std::vector<DraftRow>>* lists = nullptr;
    Scale scale = Scale::Pieces;

    [[nodiscard]] const QString* typed(const char* name) const {
        const auto at = row.find(name);
        return at == row.end() ? nullptr : &at->second;
    }
    [[nodiscard]] base::Place place(const char* name) const { return base::Place(name).within(around); }
    // What a field answers, its fault at its place.
    template <class T>
    T answer(const char* name, base::Result<T> result) {
        if (!result)
            result.error().field = place(name);
        return read(std::move(result));
    }

    void operator()(const char* name, std::string& words) {
        if (const auto* it = typed(name))
            words = it->trimmed().toStdString();
    }
    void operator()(const char* name, bool& ticked) {
        if (const auto* it = typed(name))
            ticked = !it->isEmpty();
    }
    void operator()(const char* name, std::int64_t& amount) {
        std::optional<std::int64_t> given = amount;
        (*this)(name, given);
        if (!given && mustBeTyped(name))
            read.fault({Fault::Empty, place(name), {}, {}});
        amount = given.value_or(0);
    }
    void operator()(const char* name, std::optional<std::int64_t>& amount) {
        const auto* it = typed(name);
        if (it == nullptr)
            return;
        if (it->trimmed().isEmpty())
            amount.reset();
        else
            amount = answer(name, amountIn(it->trimmed().toStdString(), scaleOf(name, scale)));
    }
    void operator()(const char* name, std::optional<units::Decimal>& figure) {
        const auto* it = typed(name);
        if (it == nullptr)
            return;
        if (it->trimmed().isEmpty())
            figure.reset();
        else
            figure = answer(name, units::parseDecimal({}, it->toStdString()));
    }
    void operator()(const char* name, units::Minutes& minutes) {
        std::int64_t count = minutes.count();
        (*this)(name, count);
        minutes = units::Minutes{count};
    }
    void operator()(const char* name, calendar::Date& date) {
        if (const auto* it = typed(name))
            date = answer(name, parseDay({}, *it, today, Lean::Past));
    }
    template <class E>
    requires std::is_enum_v<E>
    void operator()(const char* name, std::optional<E>& value) {
        if (const auto* it = typed(name))
            value = it->isEmpty() ? std::nullopt
                                  : std::optional(base::fromName<E>(it->toStdString()).value_or(E{}));
    }
    template <class E>
    requires std::is_enum_v<E>
    void operator()(const char* name, E& value) {
        if (const auto* it = typed(name))
            value = base::fromName<E>(it->toStdString()).value_or(value);
        scale = scaleOf(value);
    }
    template <class Tag>
    void operator()(const char* name, std::optional<base::Id<Tag>>& id) {
        const auto* it = typed(name);
        if (it == nullptr)
            return;
        id = it->isEmpty() ? std::nullopt : std::optional(base::Id<Tag>{it->toLongLong()});
    }
    template <class Tag>
    void operator()(const char* /*name*/, base::Id<Tag>& /*no field*/) {}
    template <class Child>
    void operator()(const char* name, std::vector<Child>& children) {
        const auto at = lists->find(name);
        if (at == lists->end())
            return;
        children.assign(at->second.size(), Child{});
        for (std::size_t each = 0; each < children.size(); ++each)
            Child::fields(children[each],
                          Reading{at->second[each], read, today, base::Place(name).line(each)});
    }
};

}  // namespace

template <class V>
Draft draftOf(const V& version) {
    Draft draft;
    V::fields(version, Spelling{draft.fields, &draft.lists});
    for (const char* noField : {"entered", "code"})
        draft.fields.erase(noField);
    return draft;
}

template <class V>
tl::expected<V, Faults> versionFrom(const Draft& draft, V base, calendar::Date today) {
    Answers read;
    V::fields(base, Reading{draft.fields, read, today, {}, &draft.lists});
    if (!read.isFine())
        return tl::unexpected<Faults>(std::move(read).faults());
    return base;
}

template Draft draftOf(const upkeep::TaskVersion&);
template Draft draftOf(const weekend::StepVersion&);
template tl::expected<upkeep::TaskVersion, Faults> versionFrom(const Draft&, upkeep::TaskVersion,
                                                               calendar::Date);
template tl::expected<weekend::StepVersion, Faults> versionFrom(const Draft&, weekend::StepVersion,
                                                                calendar::Date);

}  // namespace wm::ui
