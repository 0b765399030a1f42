// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <QFile>
#include <QTemporaryDir>
#include <chrono>
#include <cstdio>
#include <ctime>

#include "core/store/store.h"
#include "tests/bench/generated_garage.h"

// How long the store takes on a file of many facts: `store_bench [YEARS] [FILE]`. With FILE the file is kept,
// so that the time of the sqlite3 shell on its tables can be set beside the reading.

namespace {

using namespace wm;

// Time on the wall, which other work on the machine stretches, and time of the processor.
class Watch {
  public:
    void report(const char* what) {
        const double wall =
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - wall_).count();
        const double processor = 1000.0 * static_cast<double>(std::clock() - processor_) / CLOCKS_PER_SEC;
        std::printf("%-34s %9.1f ms %9.1f ms of the processor\n", what, wall, processor);
        *this = Watch();
    }

  private:
    std::chrono::steady_clock::time_point wall_ = std::chrono::steady_clock::now();
    std::clock_t processor_ = std::clock();
};

int measure(const QString& path, int years) {
    bench::GarageSize size;
    size.years = years;
    const std::vector<picture::Row> rows = bench::generatedGarage(size);
    const calendar::Date today = calendar::makeDate(bench::kLastYear, 12, 31).value();
    {
        auto made = store::File::create(path);
        if (made.file == nullptr)
            return 1;
        Watch watch;
        if (!made.file->apply([&](const verbs::VerbContext&) { return picture::Change{"All", rows}; }, today))
            return 1;
        watch.report("write all in one verb");
        if (!made.file->endUndo())
            return 1;
    }
    Watch watch;
    auto opened = store::File::open(path, store::OpenFor::Writing);
    watch.report("open, check and read");
    if (opened.file == nullptr)
        return 1;
    watch = Watch();
    (void)book::Book(opened.file->ledger(), today);
    watch.report("of a verb: the book");
    const auto wash = [](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        usage::Wash row;
        row.id = WashId{context.newId()};
        row.entered = context.book.ledger().nextEntered();
        row.machine = context.book.ledger().all<items::Machine>().front().id;
        row.note = "after the sand";
        return picture::Change{"Wash", {row}};
    };
    for (const char* what : {"first verb of the day, with copy", "verb", "verb again"}) {
        watch = Watch();
        if (!opened.file->apply(wash, today))
            return 1;
        watch.report(what);
    }
    watch = Watch();
    if (!opened.file->undo())
        return 1;
    watch.report("undo");
    watch = Watch();
    const auto found = opened.file->search("task", 50).size();
    watch.report("search");
    std::printf("%zu rows, %zu found, %lld bytes\n", rows.size(), found,
                static_cast<long long>(QFile(path).size()));
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const QStringList words = QCoreApplication::arguments();
    const int years = words.size() > 1 ? words[1].toInt() : 20;
    const QTemporaryDir folder;
    return measure(words.size() > 2 ? words[2] : folder.filePath(QStringLiteral("bench.wm")), years);
}
