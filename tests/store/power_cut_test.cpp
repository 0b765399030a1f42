// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <random>
#include <set>

#include "tests/store/faulty_vfs.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

using picture::Row;
using sample::FaultyVfs;
using sample::Folder;

// A verb of many rows in many tables, each of which carries the verb's number.
Verb bigVerb(int number) {
    const std::int64_t base = 10'000 + number * 100;
    const MachineId machine{sample::kMachine};
    const std::string tag = std::to_string(number);
    std::vector<Row> rows;
    upkeep::Record record;
    record.id = RecordId{base};
    record.machine = machine;
    record.what = "gear oil";
    record.uses = {{StockLineId{6}, {}, 800}, {StockLineId{6}, {}, 20}};
    record.note = tag + std::string(1500, 'n');
    rows.emplace_back(record);
    rows.emplace_back(stock::StockMove{StockMoveId{base + 1},
                                       0,
                                       StockLineId{6},
                                       {},
                                       sample::kToday,
                                       -820,
                                       stock::StockWhy::Used,
                                       record.id,
                                       {},
                                       {},
                                       tag});
    for (int i = 2; i < 12; ++i)
        rows.emplace_back(usage::Wash{WashId{base + i}, 0, machine, sample::kToday, true, {}, tag});
    outlook::Event event;
    event.id = EventId{77};
    event.name = "Round " + tag;
    event.place = tag;
    event.entries = {{machine, {}}, {machine, {}}};
    rows.emplace_back(event);
    return sample::writing("Verb " + tag, rows);
}

// What stands in a file: each verb's number, once if the whole verb is there. Half a verb gives its own mark.
std::set<std::string> standing(const picture::Ledger& ledger) {
    std::map<std::string, int> parts;
    for (const auto& row : ledger.all<upkeep::Record>())
        parts[row.note.substr(0, row.note.find('n'))] += row.uses.size() == 2 ? 1 : 100;
    for (const auto& row : ledger.all<stock::StockMove>())
        ++parts[row.note];
    for (const auto& row : ledger.all<usage::Wash>())
        ++parts[row.note];
    std::set<std::string> whole;
    for (const auto& [tag, count] : parts)
        whole.insert(count == 12 ? tag : "half of " + tag);
    for (const auto& event : ledger.all<outlook::Event>())
        whole.insert("event of " + event.place);
    return whole;
}

struct Story {
    std::set<std::string> before;  ///< what was acknowledged
    std::set<std::string> after;   ///< the same if the last call still got through
    int changes = 0;
};

// Writes, takes back and says again, until the power goes or all is said.
Story play(FaultyVfs& vfs, const QString& path, Durability durability, int cutAt) {
    Options options;
    options.vfs = vfs.name();
    options.durability = durability;
    options.dailyBackup = false;
    const int before = vfs.changes();
    vfs.cutAt(cutAt);
    Story story;
    auto opened = File::open(path, OpenFor::Writing, options);
    if (opened.file == nullptr)
        return story;
    File& file = *opened.file;
    const auto known = [&file] { return standing(*file.ledger()); };
    for (int number = 1; number <= 6 && !vfs.isOff(); ++number) {
        story.before = known();
        story.after = story.before;
        if (number > 1)
            story.after.erase("event of " + std::to_string(number - 1));
        story.after.insert(std::to_string(number));
        story.after.insert("event of " + std::to_string(number));
        if (!file.apply(bigVerb(number), sample::kToday))
            break;
        story.before = known();
        if (number == 3 && durability != Durability::NoTransaction) {
            // Undo leads to the picture before the verb, redo back to this one.
            const auto full = known();
            story.after = {"1", "2", "event of 2"};
            if (!file.undo())
                break;
            story.before = known();
            story.after = full;
            if (!file.redo())
                break;
            story.before = known();
        }
        story.after = story.before;
    }
    story.changes = vfs.changes() - before;
    return story;
}

class PowerCut {
  public:
    PowerCut() { sample::fileWith(template_, sample::oneMachine()); }

    /// How many of `cuts` cuts left something other than what was acknowledged.
    int losses(Durability durability, int cuts) {
        const int changes = uncut(durability);
        EXPECT_GT(changes, 50) << "there is nothing to cut";
        int losses = 0;
        for (int seed = 1; seed <= cuts; ++seed)
            losses += loses(durability, seed, changes) ? 1 : 0;
        return losses;
    }
    [[nodiscard]] const std::string& lastLoss() const { return lastLoss_; }

  private:
    int uncut(Durability durability) {
        const QString path = copy("uncut.wm");
        FaultyVfs vfs("uncut");
        vfs.holdWrites();
        return play(vfs, path, durability, std::numeric_limits<int>::max() / 2).changes;
    }

    bool loses(Durability durability, int seed, int changes) {
        std::mt19937 chance(static_cast<std::mt19937::result_type>(seed));
        const QString path = copy(QStringLiteral("cut%1.wm").arg(seed));
        FaultyVfs vfs("cut");
        vfs.holdWrites();
        const Story story = play(vfs, path, durability, std::uniform_int_distribution(1, changes)(chance));
        vfs.settle(chance);
        const auto again = File::open(path, OpenFor::Writing);
        const std::string seen = "seed " + std::to_string(seed) + ": ";
        if (again.file == nullptr) {
            lastLoss_ = seen + again.report.detail.toStdString();
            return true;
        }
        const auto now = standing(*again.file->ledger());
        const std::vector<QString> damage = again.file->check();
        const bool isWhole = (now == story.before || now == story.after) && damage.empty();
        if (!isWhole)
            lastLoss_ = seen + testing::PrintToString(now) + " for " + testing::PrintToString(story.before) +
                        " " + (damage.empty() ? "" : damage.front().toStdString());
        return !isWhole;
    }

    QString copy(const QString& name) const {
        const QString path = folder_.path(name);
        EXPECT_TRUE(QFile::copy(template_, path));
        return path;
    }

    Folder folder_;
    QString template_ = folder_.path("template.wm");
    std::string lastLoss_;
};

TEST(LongPowerCutTest, LosesNothingThatWasAcknowledged) {
    PowerCut cut;
    EXPECT_EQ(cut.losses(Durability::Full, 200), 0) << cut.lastLoss();
}

// The same test must see what goes wrong, or it would prove nothing.
TEST(LongPowerCutTest, NoticesWritesWithoutATransaction) {
    PowerCut cut;
    EXPECT_GT(cut.losses(Durability::NoTransaction, 40), 0);
}

TEST(LongPowerCutTest, NoticesWritesThatAreNotSynced) {
    PowerCut cut;
    EXPECT_GT(cut.losses(Durability::NoSync, 40), 0);
}

}  // namespace
}  // namespace wm::store
