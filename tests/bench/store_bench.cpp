// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <QFile>
#include <QTemporaryDir>
#include <chrono>
#include <cstdio>

#include "core/store/store.h"
#include "tests/bench/generated_garage.h"

// How long the store takes on a file of many facts: `store_bench [YEARS] [FILE]`. With FILE the file is kept,
// so that the time of the sqlite3 shell on its tables can be set beside the reading.

namespace {

using namespace wm;
using Clock = std::chrono::steady_clock;

double millisecondsSince(Clock::time_point start) {
    return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

void report(const char* what, double milliseconds) {
    std::printf("%-34s %9.1f ms\n", what, milliseconds);
}

int measure(const QString& path, int years) {
    bench::GarageSize size;
    size.years = years;
    const std::vector<ledger::Row> rows = bench::generatedGarage(size);
    const calendar::Date today = calendar::makeDate(bench::kLastYear, 12, 31).value();
    {
        auto made = store::File::create(path);
        if (made.file == nullptr)
            return 1;
        const auto start = Clock::now();
        if (!made.file->apply([&](const ledger::Pen&) { return ledger::Change{"All", rows}; }, today))
            return 1;
        report("write all in one verb", millisecondsSince(start));
        if (!made.file->endUndo())
            return 1;
    }
    auto start = Clock::now();
    auto opened = store::File::open(path, store::OpenFor::Writing);
    report("open, check and read", millisecondsSince(start));
    if (opened.file == nullptr)
        return 1;
    start = Clock::now();
    (void)ledger::Book(opened.file->ledger(), today);
    report("of a verb: the book", millisecondsSince(start));
    const auto wash = [](const ledger::Pen& pen) -> base::Result<ledger::Change> {
        usage::Wash row;
        row.id = WashId{pen.newId()};
        row.entered = pen.book.ledger().nextEntered();
        row.machine = pen.book.ledger().all<items::Machine>().front().id;
        row.note = "after the sand";
        return ledger::Change{"Wash", {row}};
    };
    for (const char* what : {"first verb of the day, with copy", "verb", "verb again"}) {
        start = Clock::now();
        if (!opened.file->apply(wash, today))
            return 1;
        report(what, millisecondsSince(start));
    }
    start = Clock::now();
    if (!opened.file->undo())
        return 1;
    report("undo", millisecondsSince(start));
    start = Clock::now();
    const auto found = opened.file->search("oil", 50).size();
    report("search", millisecondsSince(start));
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
