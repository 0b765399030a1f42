// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/field_words.h"

#include <algorithm>
#include <array>

#include "ui/words/tr.h"

namespace wm::ui {

namespace {

struct FieldWord {
    std::string_view field;
    const char* words;
};
// Only where the name with blanks for underscores would not be the mechanic's word.
constexpr std::array<FieldWord, 69> kFieldWords{{
    {"", QT_TR_NOOP("entry")},
    {"id", QT_TR_NOOP("card")},
    {"as_new", QT_TR_NOOP("figure as new")},
    {"back_on", QT_TR_NOOP("day on which it is back")},
    {"by_person", QT_TR_NOOP("person")},
    {"comes", QT_TR_NOOP("time of the doing")},
    {"comes_last", QT_TR_NOOP("word whether it comes last")},
    {"cool_minutes", QT_TR_NOOP("time until the engine is cold")},
    {"counter", QT_TR_NOOP("kind of limit")},
    {"cycles", QT_TR_NOOP("number of cycles")},
    {"doings", QT_TR_NOOP("doing")},
    {"due", QT_TR_NOOP("time of the follow-up")},
    {"earlier", QT_TR_NOOP("kind of the earlier act")},
    {"earlier_code", QT_TR_NOOP("earlier act")},
    {"edges", QT_TR_NOOP("order of two acts")},
    {"entered", QT_TR_NOOP("number in the order of entry (“entered”)")},
    {"entries", QT_TR_NOOP("list of entries")},
    {"every", QT_TR_NOOP("interval")},
    {"every_nth", QT_TR_NOOP("count of completions")},
    {"fact", QT_TR_NOOP("entry")},
    {"first", QT_TR_NOOP("first interval")},
    {"frees", QT_TR_NOOP("position that the step frees")},
    {"from_starter", QT_TR_NOOP("word whether it is the starter's")},
    {"hand_tight", QT_TR_NOOP("hand-tight list")},
    {"hands", QT_TR_NOOP("number of hands")},
    {"held", QT_TR_NOOP("part that holds it")},
    {"hours", QT_TR_NOOP("number of hours")},
    {"how_to", QT_TR_NOOP("way to do it")},
    {"in_doubt", QT_TR_NOOP("joint in doubt")},
    {"jobs", QT_TR_NOOP("list of jobs")},
    {"keep", QT_TR_NOOP("amount to keep")},
    {"later", QT_TR_NOOP("kind of the later act")},
    {"later_code", QT_TR_NOOP("later act")},
    {"lead_days", QT_TR_NOOP("number of days until it comes")},
    {"life_high", QT_TR_NOOP("longest that one lasts")},
    {"life_low", QT_TR_NOOP("shortest that one lasts")},
    {"likely", QT_TR_NOOP("seller's figure")},
    {"minutes", QT_TR_NOOP("number of minutes")},
    {"months", QT_TR_NOOP("number of months")},
    {"needs", QT_TR_NOOP("access step")},
    {"not_fitted", QT_TR_NOOP("place where something is missing")},
    {"noted", QT_TR_NOOP("sum of what was noted")},
    {"now", QT_TR_NOOP("figure now")},
    {"nth", QT_TR_NOOP("count of completions")},
    {"nth_of", QT_TR_NOOP("job that is counted")},
    {"off_minutes", QT_TR_NOOP("number of minutes to take it off")},
    {"on_minutes", QT_TR_NOOP("number of minutes to put it back on")},
    {"opened_days", QT_TR_NOOP("days after opening")},
    {"past_best", QT_TR_NOOP("likely past hours")},
    {"past_high", QT_TR_NOOP("most past hours")},
    {"past_low", QT_TR_NOOP("least past hours")},
    {"permille", QT_TR_NOOP("what an hour counts")},
    {"rolls_at", QT_TR_NOOP("count at which the meter rolls over")},
    {"runs", QT_TR_NOOP("word whether the engine is run")},
    {"season_high", QT_TR_NOOP("most hours in a season")},
    {"season_low", QT_TR_NOOP("least hours in a season")},
    {"sends", QT_TR_NOOP("item that is sent away")},
    {"sends_out", QT_TR_NOOP("word whether it is sent away")},
    {"shown", QT_TR_NOOP("meter reading")},
    {"since", QT_TR_NOOP("first day")},
    {"starts", QT_TR_NOOP("number of starts")},
    {"step", QT_TR_NOOP("access step")},
    {"told", QT_TR_NOOP("word whether it was work")},
    {"until", QT_TR_NOOP("day to put it off until")},
    {"until_date", QT_TR_NOOP("day to put it off until")},
    {"until_hours", QT_TR_NOOP("number of machine hours to put it off until")},
    {"used", QT_TR_NOOP("part or fluid")},
    {"uses", QT_TR_NOOP("part or fluid")},
    {"what", QT_TR_NOOP("description")},
}};

// The other fields that an error may name. Read by lupdate alone: their words are the names, with blanks for
// underscores. tests/ui/translation holds it complete.
[[maybe_unused]] constexpr const char* kFieldNames[] = {QT_TR_NOOP("with"),
                                                        QT_TR_NOOP("active"),
                                                        QT_TR_NOOP("again"),
                                                        QT_TR_NOOP("all"),
                                                        QT_TR_NOOP("allowance"),
                                                        QT_TR_NOOP("amount"),
                                                        QT_TR_NOOP("applies"),
                                                        QT_TR_NOOP("before"),
                                                        QT_TR_NOOP("best"),
                                                        QT_TR_NOOP("best before"),
                                                        QT_TR_NOOP("body state"),
                                                        QT_TR_NOOP("break loose"),
                                                        QT_TR_NOOP("by"),
                                                        QT_TR_NOOP("by whom"),
                                                        QT_TR_NOOP("called off"),
                                                        QT_TR_NOOP("cautions"),
                                                        QT_TR_NOOP("checked by"),
                                                        QT_TR_NOOP("code"),
                                                        QT_TR_NOOP("combine"),
                                                        QT_TR_NOOP("condition"),
                                                        QT_TR_NOOP("confirmed"),
                                                        QT_TR_NOOP("consequence"),
                                                        QT_TR_NOOP("count"),
                                                        QT_TR_NOOP("count from"),
                                                        QT_TR_NOOP("crash"),
                                                        QT_TR_NOOP("data"),
                                                        QT_TR_NOOP("date"),
                                                        QT_TR_NOOP("day"),
                                                        QT_TR_NOOP("distance"),
                                                        QT_TR_NOOP("drive"),
                                                        QT_TR_NOOP("ends at"),
                                                        QT_TR_NOOP("event"),
                                                        QT_TR_NOOP("expected"),
                                                        QT_TR_NOOP("extra"),
                                                        QT_TR_NOOP("extra done"),
                                                        QT_TR_NOOP("felt"),
                                                        QT_TR_NOOP("fine"),
                                                        QT_TR_NOOP("first day"),
                                                        QT_TR_NOOP("fits"),
                                                        QT_TR_NOOP("follow ups"),
                                                        QT_TR_NOOP("found within"),
                                                        QT_TR_NOOP("from"),
                                                        QT_TR_NOOP("gone on"),
                                                        QT_TR_NOOP("ground"),
                                                        QT_TR_NOOP("hand tight seen"),
                                                        QT_TR_NOOP("happening"),
                                                        QT_TR_NOOP("hard"),
                                                        QT_TR_NOOP("hazard"),
                                                        QT_TR_NOOP("high"),
                                                        QT_TR_NOOP("hours ago"),
                                                        QT_TR_NOOP("how"),
                                                        QT_TR_NOOP("item"),
                                                        QT_TR_NOOP("job"),
                                                        QT_TR_NOOP("joint"),
                                                        QT_TR_NOOP("joints"),
                                                        QT_TR_NOOP("kind"),
                                                        QT_TR_NOOP("kit"),
                                                        QT_TR_NOOP("label"),
                                                        QT_TR_NOOP("last"),
                                                        QT_TR_NOOP("last day"),
                                                        QT_TR_NOOP("least"),
                                                        QT_TR_NOOP("least good"),
                                                        QT_TR_NOOP("leaves unrideable"),
                                                        QT_TR_NOOP("left hand"),
                                                        QT_TR_NOOP("left within"),
                                                        QT_TR_NOOP("length"),
                                                        QT_TR_NOOP("limits"),
                                                        QT_TR_NOOP("line"),
                                                        QT_TR_NOOP("locking"),
                                                        QT_TR_NOOP("loose before"),
                                                        QT_TR_NOOP("lot"),
                                                        QT_TR_NOOP("low"),
                                                        QT_TR_NOOP("machine"),
                                                        QT_TR_NOOP("maker"),
                                                        QT_TR_NOOP("measured"),
                                                        QT_TR_NOOP("measures"),
                                                        QT_TR_NOOP("meter"),
                                                        QT_TR_NOOP("meter counts"),
                                                        QT_TR_NOOP("meter counts transport"),
                                                        QT_TR_NOOP("meter then"),
                                                        QT_TR_NOOP("model"),
                                                        QT_TR_NOOP("most"),
                                                        QT_TR_NOOP("most good"),
                                                        QT_TR_NOOP("moved count"),
                                                        QT_TR_NOOP("moved degrees"),
                                                        QT_TR_NOOP("name"),
                                                        QT_TR_NOOP("note"),
                                                        QT_TR_NOOP("number"),
                                                        QT_TR_NOOP("only if needed"),
                                                        QT_TR_NOOP("only some models"),
                                                        QT_TR_NOOP("opened"),
                                                        QT_TR_NOOP("origin"),
                                                        QT_TR_NOOP("outing"),
                                                        QT_TR_NOOP("pace"),
                                                        QT_TR_NOOP("pack amount"),
                                                        QT_TR_NOOP("pack price"),
                                                        QT_TR_NOOP("page"),
                                                        QT_TR_NOOP("parent"),
                                                        QT_TR_NOOP("part"),
                                                        QT_TR_NOOP("part number"),
                                                        QT_TR_NOOP("percent"),
                                                        QT_TR_NOOP("picked"),
                                                        QT_TR_NOOP("pinned today"),
                                                        QT_TR_NOOP("place"),
                                                        QT_TR_NOOP("position"),
                                                        QT_TR_NOOP("pressure"),
                                                        QT_TR_NOOP("price"),
                                                        QT_TR_NOOP("reason"),
                                                        QT_TR_NOOP("received"),
                                                        QT_TR_NOOP("record"),
                                                        QT_TR_NOOP("refit"),
                                                        QT_TR_NOOP("renew"),
                                                        QT_TR_NOOP("renews"),
                                                        QT_TR_NOOP("resolution"),
                                                        QT_TR_NOOP("rider"),
                                                        QT_TR_NOOP("separator"),
                                                        QT_TR_NOOP("sequence"),
                                                        QT_TR_NOOP("sequence note"),
                                                        QT_TR_NOOP("sequence step"),
                                                        QT_TR_NOOP("shared from"),
                                                        QT_TR_NOOP("shared to"),
                                                        QT_TR_NOOP("sheet"),
                                                        QT_TR_NOOP("snag"),
                                                        QT_TR_NOOP("source"),
                                                        QT_TR_NOOP("stages"),
                                                        QT_TR_NOOP("started new"),
                                                        QT_TR_NOOP("starter"),
                                                        QT_TR_NOOP("starts at"),
                                                        QT_TR_NOOP("stated"),
                                                        QT_TR_NOOP("stated best"),
                                                        QT_TR_NOOP("stated high"),
                                                        QT_TR_NOOP("stated low"),
                                                        QT_TR_NOOP("steps"),
                                                        QT_TR_NOOP("stock order"),
                                                        QT_TR_NOOP("supersedes"),
                                                        QT_TR_NOOP("target"),
                                                        QT_TR_NOOP("task"),
                                                        QT_TR_NOOP("thread"),
                                                        QT_TR_NOOP("tool"),
                                                        QT_TR_NOOP("tools"),
                                                        QT_TR_NOOP("torque"),
                                                        QT_TR_NOOP("torque high"),
                                                        QT_TR_NOOP("torqued"),
                                                        QT_TR_NOOP("triggers"),
                                                        QT_TR_NOOP("type"),
                                                        QT_TR_NOOP("typed by"),
                                                        QT_TR_NOOP("unit"),
                                                        QT_TR_NOOP("up to"),
                                                        QT_TR_NOOP("valid from"),
                                                        QT_TR_NOOP("value"),
                                                        QT_TR_NOOP("version"),
                                                        QT_TR_NOOP("wash"),
                                                        QT_TR_NOOP("weights"),
                                                        QT_TR_NOOP("why"),
                                                        QT_TR_NOOP("wish"),
                                                        QT_TR_NOOP("worst"),
                                                        QT_TR_NOOP("year")};

bool isPlace(std::string_view field) {
    return field.find_first_of(".[") != std::string_view::npos;
}

// "pastBest", as some forms call their fields, is the field past_best.
std::string asInCore(std::string_view name) {
    std::string words;
    for (const char letter : name) {
        const bool isCapital = letter >= 'A' && letter <= 'Z';
        words += isCapital ? std::string{'_', static_cast<char>(letter - 'A' + 'a')} : std::string(1, letter);
    }
    return words;
}

}  // namespace

std::string_view lastPart(std::string_view place) {
    const std::size_t dot = place.rfind('.');
    const std::string_view last = dot == std::string_view::npos ? place : place.substr(dot + 1);
    return last.substr(0, last.find('['));
}

QString fieldWords(std::string_view field) {
    if (field.starts_with("line "))
        return tr("text on %1").arg(QString::fromUtf8(field.data(), static_cast<qsizetype>(field.size())));
    std::string last = asInCore(lastPart(field));
    const auto known = std::find_if(kFieldWords.begin(), kFieldWords.end(),
                                    [&last](const FieldWord& word) { return word.field == last; });
    std::replace(last.begin(), last.end(), '_', ' ');
    const QString words = tr(known != kFieldWords.end() ? known->words : last.c_str());
    if (!isPlace(field))
        return words;
    return tr("%1 at %2").arg(words, QString::fromUtf8(field.data(), static_cast<qsizetype>(field.size())));
}

}  // namespace wm::ui
