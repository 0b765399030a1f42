// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Writes a generated garage to a new file, for timing the whole program on it.
#include <QCoreApplication>
#include <cstdio>

#include "core/store/store.h"
#include "core/verbs/verbs.h"
#include "tests/bench/generated_garage.h"

int main(int argc, char* argv[]) {
    const QCoreApplication application(argc, argv);
    if (argc != 2) {
        std::fputs("make_garage FILE: writes 12 machines with 80 tasks over 20 years to a new file\n",
                   stderr);
        return 2;
    }
    const auto made = wm::store::File::create(QString::fromLocal8Bit(argv[1]));
    if (!made.file)
        return 4;
    const auto day = *wm::calendar::makeDate(wm::bench::kLastYear, 1, 1);
    const auto done = made.file->apply(
        [](const wm::verbs::VerbContext& context) {
            return wm::verbs::adoptAll(context, wm::bench::generatedGarage({}));
        },
        day);
    if (!done)
        std::fprintf(stderr, "not written: field %s\n", done.error().error.field.text().c_str());
    return done ? 0 : 5;
}
