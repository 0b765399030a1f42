// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/tale.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>
#include <stdexcept>

#include "core/verbs/baseline_verb.h"
#include "tests/core/slow/meaning.h"
#include "tests/repository.h"

namespace wm::tale {

using calendar::DayPart;

namespace {

std::string textOf(const Json& fact, const char* key, std::string otherwise = {}) {
    return fact.contains(key) ? fact.at(key).get<std::string>() : std::move(otherwise);
}

std::vector<std::string> splitAt(std::string_view text, std::string_view mark) {
    std::vector<std::string> parts;
    for (;;) {
        const auto at = text.find(mark);
        parts.emplace_back(text.substr(0, at));
        if (at == std::string_view::npos)
            return parts;
        text.remove_prefix(at + mark.size());
    }
}

upkeep::Limit limitOf(const std::string& text) {
    const auto blank = text.find(' ');
    const std::string unit = text.substr(blank + 1);
    upkeep::Limit limit;
    limit.every = std::stoll(text.substr(0, blank));
    for (const auto& counter : upkeep::kCounters)
        if (counter.one == unit || counter.many == unit)
            limit.counter = counter.of;
    limit.every *= upkeep::partsOfOne(limit.counter);
    return limit;
}

// "head nuts: heat, next outing"
upkeep::FollowUpRule ruleOf(const std::string& text) {
    const auto words = splitAt(text, ": ");
    const auto rest = splitAt(words.at(1), ", ");
    upkeep::FollowUpRule rule{.what = words.at(0), .code = rest.at(0)};
    if (rest.at(1) == "next outing")
        rule.when = upkeep::When::NextOuting;
    else if (rest.at(1).starts_with("after "))
        rule = {rule.what, rule.code, upkeep::When::AfterHours, hundredths(splitAt(rest.at(1), " ").at(1))};
    else if (rest.at(1) != "at once")
        throw std::runtime_error("when is " + rest.at(1));
    return rule;
}

units::Decimal decimalOf(const Json& text) {
    return units::parseDecimal("value", text.get<std::string>()).value();
}

upkeep::MeasurePoint pointOf(const Json& text) {
    upkeep::MeasurePoint point;
    point.name = text.at("name").get<std::string>();
    point.unit = "mm";
    if (text.contains("least"))
        point.least = decimalOf(text.at("least"));
    if (text.contains("most"))
        point.most = decimalOf(text.at("most"));
    point.job = textOf(text, "job");
    return point;
}

// Machine and item say in the same words what they had behind them on their first day.
template <class Card>
void sayPast(Card& card, const Json& fact) {
    card.startedNew = fact.contains("new");
    card.since = dayOf(fact.at(card.startedNew ? "new" : "used"));
    if (card.startedNew)
        return;
    const auto ends = splitAt(fact.at("past").get<std::string>(), "..");
    card.pastLow = units::Hours{hundredths(ends.at(0))};
    card.pastBest = units::Hours{hundredths(ends.at(1))};
    if (!ends.at(2).empty())
        card.pastHigh = units::Hours{hundredths(ends.at(2))};
}

class Writer {
  public:
    Tale write(const std::vector<Json>& facts) {
        for (const Json& fact : facts)
            try {
                place_ = placeOf(fact);
                take(fact);
            } catch (const std::exception& fault) {
                throw std::runtime_error(fact.dump() + ": " + fault.what());
            }
        tale_.ledger = picture::Ledger(std::move(rows_));
        std::erase_if(asTold_, [&](const picture::Row& row) {
            return std::holds_alternative<picture::Strike>(row) ||
                   std::visit([&](const auto& each) { return struck_.contains(each.id.value()); }, row);
        });
        tale_.asTold = writtenOut(picture::Ledger(std::move(asTold_)), tale_.meterThen);
        return std::move(tale_);
    }

  private:
    void take(const Json& fact) {
        if (fact.contains("strike"))
            return strike(fact);
        if (fact.contains("task"))
            return task(fact);
        if (fact.contains("machine"))
            return card(fact, items::Machine{}, "machine");
        if (fact.contains("item") && !fact.contains("day"))
            return card(fact, items::Item{}, "item");
        for (const char* kind : {"fit", "remove", "away", "retire"})
            if (fact.contains(kind))
                return move(fact, kind);
        if (fact.contains("joint") && !fact.contains("day"))
            return joint(fact);
        if (fact.contains("step"))
            return step(fact);
        if (fact.contains("tool") || fact.contains("check"))
            return tool(fact);
        if (fact.contains("job"))
            return job(fact);
        if (fact.contains("confirm") || fact.contains("ridden_open") || fact.contains("found"))
            return marks(fact);
        for (const char* kind : {"done", "looked", "baseline"})
            if (fact.contains(kind) && fact.contains("name"))
                return record(fact, kind);
        if (fact.contains("answer"))
            return answer(fact);
        for (const char* kind : {"ride", "reading", "wash", "crash"})
            if (fact.contains(kind))
                return use(fact, kind);
    }

    // The place of the struck fact that it was told instead of, which may have been told instead of another.
    [[nodiscard]] std::optional<std::int64_t> placeOf(const Json& fact) const {
        if (!fact.contains("instead"))
            return std::nullopt;
        const std::string name = fact.at("instead").get<std::string>();
        if (!struck_.contains(tale_.ids.at(name)))
            throw std::runtime_error(name + " was not struck");
        return places_.at(name);
    }
    template <class Row>
    void put(Row row, const std::string& name) {
        row.id = decltype(row.id){++last_};
        if constexpr (requires { row.entered; })
            row.entered = place_.value_or(last_);
        places_[name] = place_.value_or(last_);
        asTold_.emplace_back(row);
        if (!name.empty()) {
            tale_.ids[name] = last_;
            tale_.names[last_] = name;
        }
        rows_.emplace_back(std::move(row));
    }
    template <class Row>
    Row dated(const Json& fact, const char* key) const {
        Row row;
        row.date = dayOf(fact.at("day"));
        if constexpr (requires { row.machine = MachineId{}; })
            if (key != nullptr)
                row.machine = tale_.machine(fact.at(key).get<std::string>());
        if constexpr (requires { row.part; })
            row.part = momentOf(fact).part;
        return row;
    }

    template <class Card>
    void card(const Json& fact, Card card, const char* key) {
        card.name = fact.at(key).get<std::string>();
        if constexpr (requires { card.kind; })
            card.kind = textOf(fact, "kind");
        sayPast(card, fact);
        put(card, card.name);
    }
    void task(const Json& fact) {
        upkeep::TaskVersion version;
        const std::string of = fact.at("of").get<std::string>();
        version.code = version.name = fact.at("task").get<std::string>();
        version.machine = tale_.machine(of);
        version.validFrom = calendar::parseDate("", "2020-01-01").value();
        version.position = textOf(fact, "at");
        version.task = TaskId{++last_};
        if (fact.contains("every"))
            version.limits.push_back(limitOf(fact.at("every").get<std::string>()));
        if (fact.contains("uses"))
            version.kit.push_back({.what = fact.at("uses").get<std::string>()});
        version.renews = fact.value("renews", false);
        version.everyNth = fact.value("every_nth", std::int64_t{0});
        version.extra = textOf(fact, "extra");
        version.nthOf = textOf(fact, "nth_of");
        version.nth = fact.value("nth", std::int64_t{0});
        for (const Json& happening : fact.value("happenings", Json::array()))
            version.triggers.push_back(
                {base::fromName<upkeep::Happening>(happening.get<std::string>()).value(), {}});
        for (const Json& point : fact.value("measures", Json::array()))
            version.measures.push_back(pointOf(point));
        for (const Json& code : fact.value("triggers", Json::array()))
            version.triggers.push_back({upkeep::Happening::Job, code.get<std::string>()});
        for (const Json& joint : fact.value("joints", Json::array()))
            version.joints.push_back({joint.get<std::string>()});
        for (const Json& step : fact.value("steps", Json::array()))
            version.steps.push_back({step.get<std::string>()});
        for (const Json& rule : fact.value("brings", Json::array()))
            version.followUps.push_back(ruleOf(rule.get<std::string>()));
        tale_.tasks[of + "/" + version.code] = version.task;
        versions_[of + "/" + version.code] = VersionId{last_ + 1};
        put(version, {});
    }
    void move(const Json& fact, const std::string& kind) {
        auto move = dated<items::Move>(fact, nullptr);
        move.machine.reset();
        move.item = tale_.item(fact.at(kind).get<std::string>());
        move.kind = kind == "fit"      ? items::MoveKind::Fitted
                    : kind == "remove" ? items::MoveKind::Removed
                    : kind == "away"   ? items::MoveKind::Away
                                       : items::MoveKind::Retired;
        if (kind == "fit") {
            const std::string to = fact.at("to").get<std::string>();
            const auto host = tale_.ids.at(to);
            const bool onMachine = std::any_of(rows_.begin(), rows_.end(), [&](const picture::Row& row) {
                const auto* machine = std::get_if<items::Machine>(&row);
                return machine != nullptr && machine->id.value() == host;
            });
            if (onMachine)
                move.machine = MachineId{host};
            else
                move.parent = ItemId{host};
            move.position = fact.at("at").get<std::string>();
        }
        if (fact.contains("loosens"))
            move.told = fact.at("loosens").get<bool>() ? items::Told::Work : items::Told::AsItWas;
        sayWhere(move, fact);
        put(move, textOf(fact, "name"));
    }
    static void sayWhere(items::Move& move, const Json& fact) {
        move.note = textOf(fact, "where");
        if (fact.contains("back"))
            move.backOn = dayOf(fact.at("back"));
    }
    void joint(const Json& fact) {
        fastening::JointVersion version;
        const std::string of = fact.at("of").get<std::string>();
        version.code = fact.at("joint").get<std::string>();
        version.name = textOf(fact, "called", version.code);
        tale_.jointIn[of + "/" + version.code] = textOf(fact, "in");
        if (!fact.value("in_unsaid", false))
            version.position = textOf(fact, "in");
        version.machine = tale_.machine(of);
        version.validFrom = calendar::parseDate("", "2020-01-01").value();
        version.joint = JointId{++last_};
        if (fact.contains("torque")) {
            const auto parts = splitAt(fact.at("torque").get<std::string>(), " ");
            version.torque = decimalOf(parts.at(0));
            version.source = "made up";
        }
        joints_[of + "/" + version.code] = version.joint;
        put(version, {});
    }
    void step(const Json& fact) {
        weekend::StepVersion version;
        const std::string of = fact.at("of").get<std::string>();
        version.code = version.name = fact.at("step").get<std::string>();
        version.machine = tale_.machine(of);
        version.validFrom = calendar::parseDate("", "2020-01-01").value();
        version.step = StepId{++last_};
        for (const Json& joint : fact.at("joints"))
            version.joints.push_back({joint.get<std::string>()});
        for (const Json& needed : fact.value("needs", Json::array()))
            version.needs.push_back({.code = needed.get<std::string>()});
        if (fact.contains("frees"))
            version.frees.push_back({fact.at("frees").get<std::string>()});
        steps_[of + "/" + version.code] = version;
        put(version, {});
    }
    void tool(const Json& fact) {
        if (fact.contains("tool")) {
            fastening::Tool tool;
            tool.name = fact.at("tool").get<std::string>();
            if (fact.contains("range")) {
                const auto ends = splitAt(fact.at("range").get<std::string>(), "..");
                tool.low = decimalOf(ends.at(0));
                tool.high = decimalOf(ends.at(1));
            }
            return put(tool, tool.name);
        }
        auto check = dated<fastening::Calibration>(fact, nullptr);
        check.tool = ToolId{tale_.ids.at(fact.at("check").get<std::string>())};
        check.foundWithin = check.leftWithin = fact.at("passed").get<bool>();
        put(check, textOf(fact, "name"));
    }
    // As the verb writes it: what the job opened is loosened or, if it was torqued, confirmed alone.
    void job(const Json& fact) {
        auto record = dated<upkeep::Record>(fact, "on");
        const std::string on = fact.at("on").get<std::string>();
        record.what = fact.at("job").get<std::string>();
        record.kind = fact.contains("baseline") ? upkeep::RecordKind::Baseline : upkeep::RecordKind::Done;
        std::vector<std::string> opened;
        for (const Json& code : fact.at("off")) {
            record.steps.push_back({code.get<std::string>()});
            for (const base::Code& joint : steps_.at(on + "/" + record.steps.back().code).joints)
                opened.push_back(joint.code);
        }
        if (fact.contains("meter"))
            record.meter = units::Hours{hundredths(fact.at("meter").get<std::string>())};
        put(record, textOf(fact, "name"));
        const RecordId id{last_};
        noteMeter(record, id);
        const auto torqued = fact.value("torqued", std::vector<std::string>{});
        if (record.kind == upkeep::RecordKind::Baseline)
            return;
        for (const std::string& each : opened)
            if (std::find(torqued.begin(), torqued.end(), each) == torqued.end())
                mark(fact, each, fastening::MarkKind::Loosened, id);
        for (const std::string& each : torqued)
            mark(fact, each, fastening::MarkKind::Confirmed, id);
        if (!fact.contains("sends"))
            return;
        items::Move away{.item = tale_.item(fact.at("sends").get<std::string>()),
                         .date = record.date,
                         .part = record.part,
                         .kind = items::MoveKind::Away,
                         .told = items::Told::AsItWas,
                         .record = id};
        sayWhere(away, fact);
        put(away, {});
        withRecord_[id.value()].push_back(last_);
    }
    void mark(const Json& fact, const std::string& joint, fastening::MarkKind kind,
              std::optional<RecordId> record) {
        auto mark = dated<fastening::JointMark>(fact, nullptr);
        mark.joint = jointOn(fact.at("on").get<std::string>(), joint);
        mark.kind = kind;
        mark.record = record;
        if (fact.contains("item"))
            mark.item = tale_.item(fact.at("item").get<std::string>());
        if (fact.contains("with"))
            mark.tool = ToolId{tale_.ids.at(fact.at("with").get<std::string>())};
        put(mark, record ? std::string{} : textOf(fact, "name"));
        if (record)
            withRecord_[record->value()].push_back(last_);
    }
    // As the verbs write it: the figure of a job is a reading if none was higher until then.
    template <class Fact, class Id>
    void noteMeter(const Fact& fact, Id id, std::optional<units::Hours> shown = {}) {
        if constexpr (requires { fact.meter; })
            shown = fact.meter;
        if (!shown)
            return;
        usage::HourReading reading{.machine = fact.machine, .date = fact.date, .shown = *shown};
        if constexpr (requires { fact.meter; }) {
            for (const picture::Row& row : rows_)
                if (const auto* other = std::get_if<usage::HourReading>(&row);
                    other != nullptr && other->machine == fact.machine && *shown < other->shown &&
                    !struck_.contains(other->id.value()))
                    return;
            reading.part = fact.part;
            reading.record = id;
        } else {
            reading.outing = id;
        }
        put(reading, {});
        withRecord_[id.value()].push_back(last_);
    }
    // What sits in an item that came from elsewhere may be known there alone.
    [[nodiscard]] JointId jointOn(const std::string& machine, const std::string& code) const {
        if (const auto here = joints_.find(machine + "/" + code); here != joints_.end())
            return here->second;
        for (const auto& [key, joint] : joints_)
            if (key.ends_with("/" + code))
                return joint;
        throw std::runtime_error("no joint " + code);
    }
    void marks(const Json& fact) {
        if (fact.contains("found")) {
            const std::string found = fact.at("found").get<std::string>();
            return mark(fact, fact.at("joint").get<std::string>(),
                        found == "moved"         ? fastening::MarkKind::FoundMoved
                        : found == "mark broken" ? fastening::MarkKind::MarkBroken
                                                 : fastening::MarkKind::FoundFine,
                        {});
        }
        const bool torqued = fact.contains("confirm");
        for (const Json& joint : fact.at(torqued ? "confirm" : "ridden_open"))
            mark(fact, joint.get<std::string>(),
                 torqued ? fastening::MarkKind::Confirmed : fastening::MarkKind::RiddenOpen, {});
    }
    void record(const Json& fact, const std::string& kind) {
        auto record = dated<upkeep::Record>(fact, "on");
        record.code = fact.at(kind).get<std::string>();
        record.what = record.code;
        const std::string key = fact.at("on").get<std::string>() + "/" + record.code;
        record.task = tale_.tasks.at(key);
        record.version = versions_.at(key);
        record.kind = kind == "done"     ? upkeep::RecordKind::Done
                      : kind == "looked" ? upkeep::RecordKind::LookedFine
                                         : upkeep::RecordKind::Baseline;
        if (fact.contains("item"))
            record.item = tale_.item(fact.at("item").get<std::string>());
        if (fact.contains("stated"))
            record.statedLow = record.statedBest = record.statedHigh =
                units::Hours{hundredths(fact.at("stated").get<std::string>())};
        record.extraDone = fact.value("extra", false);
        const Json measured = fact.value("measured", Json::object());
        for (const auto& [what, value] : measured.items())
            record.measured.push_back({what, "mm", decimalOf(value)});
        if (fact.contains("meter"))
            record.meter = units::Hours{hundredths(fact.at("meter").get<std::string>())};
        if (fact.contains("meter_then"))
            return remembered(fact, record);
        put(record, fact.at("name").get<std::string>());
        noteMeter(record, RecordId{last_});
    }
    // The program is told it by its verb, on that day and with what was told until then.
    void remembered(const Json& fact, upkeep::Record record) {
        const auto ends = splitAt(fact.at("meter_then").get<std::string>(), "..");
        const MeterThen then{hundredths(ends.at(0)), hundredths(ends.at(1)), record.date};
        const book::Book book(std::make_shared<const picture::Ledger>(rows_), record.date);
        auto newId = last_;
        const auto change =
            verbs::recordBaseline({book, [&newId] { return ++newId; }}, record.machine,
                                  {{.task = *record.task,
                                    .answer = verbs::BaselineAnswer::Serviced,
                                    .meterThen = verbs::Remembered{then.low, std::nullopt, then.high}}});
        if (!change)
            throw std::runtime_error("refused, " + change.error().field.text());
        put(record, fact.at("name").get<std::string>());
        tale_.meterThen[RecordId{last_}] = then;
        for (const picture::Row& row : change->rows)
            if (const auto* said = std::get_if<upkeep::Record>(&row)) {
                auto& known = std::get<upkeep::Record>(rows_.back());
                const auto id = known.id;
                const auto entered = known.entered;
                known = *said;
                known.id = id;
                known.entered = entered;
            }
    }
    void answer(const Json& fact) {
        auto answer = dated<upkeep::FollowUpAnswer>(fact, "on");
        answer.origin = tale_.ids.at(fact.at("from").get<std::string>());
        answer.what = fact.at("answer").get<std::string>();
        put(answer, textOf(fact, "name"));
    }
    void use(const Json& fact, const std::string& kind) {
        const std::string name = textOf(fact, "name");
        if (kind == "wash")
            return put(dated<usage::Wash>(fact, "wash"), name);
        if (kind == "crash")
            return put(dated<usage::Crash>(fact, "crash"), name);
        if (kind == "reading") {
            auto reading = dated<usage::HourReading>(fact, "reading");
            reading.shown = units::Hours{hundredths(fact.at("shows").get<std::string>())};
            return put(reading, name);
        }
        auto outing = dated<usage::Outing>(fact, "ride");
        if (fact.contains("hours"))
            outing.hours = units::Hours{hundredths(fact.at("hours").get<std::string>())};
        outing.ground = base::fromName<usage::Ground>(textOf(fact, "ground", "unstated")).value();
        put(outing, name);
        if (fact.contains("meter"))
            noteMeter(outing, OutingId{last_}, units::Hours{hundredths(fact.at("meter").get<std::string>())});
    }
    // With it what came with it, as the verb does.
    void strike(const Json& fact) {
        const std::int64_t struck = tale_.ids.at(fact.at("strike").get<std::string>());
        auto all = withRecord_[struck];
        all.push_back(struck);
        for (const std::int64_t each : all) {
            picture::Strike strike;
            strike.date = dayOf(fact.at("day"));
            strike.fact = each;
            strike.reason = "told wrongly";
            struck_.insert(each);
            put(strike, {});
        }
    }

    using VersionId = TaskVersionId;
    Tale tale_;
    std::vector<picture::Row> rows_;
    std::map<std::string, TaskVersionId> versions_;
    std::map<std::string, JointId> joints_;
    std::map<std::string, weekend::StepVersion> steps_;
    std::map<std::int64_t, std::vector<std::int64_t>> withRecord_;
    std::vector<picture::Row> asTold_;
    std::set<std::int64_t> struck_;
    std::map<std::string, std::int64_t> places_;  ///< of named facts, in the order of telling
    std::optional<std::int64_t> place_;           ///< of the fact that is being taken, if it stands elsewhere
    std::int64_t last_ = 0;
};

}  // namespace

std::vector<Case> casesIn(const std::string& folder) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry :
         std::filesystem::directory_iterator(test::repositoryPath("tests/data/" + folder)))
        if (entry.path().extension() == ".json")
            files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    std::vector<Case> cases;
    for (const auto& file : files) {
        std::ifstream in(file);
        const Json all = Json::parse(in);
        for (const Json& one : all.at("cases")) {
            Case next{.theme = file.stem().string(),
                      .name = one.at("name").get<std::string>(),
                      .why = one.at("why").get<std::string>()};
            for (const Json* list : {&all.at("garage"), &one.at("facts")})
                next.facts.insert(next.facts.end(), list->begin(), list->end());
            next.asks.assign(one.at("asks").begin(), one.at("asks").end());
            cases.push_back(std::move(next));
        }
    }
    return cases;
}

MachineId Tale::machine(std::string_view name) const {
    const auto found = ids.find(name);
    if (found == ids.end())
        throw std::runtime_error("no machine " + std::string(name));
    return MachineId{found->second};
}

ItemId Tale::item(std::string_view name) const {
    const auto found = ids.find(name);
    if (found == ids.end())
        throw std::runtime_error("no item " + std::string(name));
    return ItemId{found->second};
}

std::string Tale::nameOf(std::int64_t id) const {
    const auto found = names.find(id);
    return found == names.end() ? "#" + std::to_string(id) : found->second;
}

Tale taleOf(const std::vector<Json>& facts) {
    return Writer().write(facts);
}

calendar::Date dayOf(const Json& text) {
    return calendar::parseDate("day", text.get<std::string>()).value();
}

calendar::Moment momentOf(const Json& fact) {
    const std::string part = textOf(fact, "part", "after");
    if (part != "before" && part != "riding" && part != "after")
        throw std::runtime_error("part is " + part);
    return {dayOf(fact.at("day")), part == "before"   ? DayPart::BeforeRiding
                                   : part == "riding" ? DayPart::Riding
                                                      : DayPart::AfterRiding};
}

std::int64_t hundredths(std::string_view text) {
    return std::llround(std::stod(std::string(text)) * 100);
}

}  // namespace wm::tale
