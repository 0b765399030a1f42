# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The windows of one machine's 80 tasks by plain simulation in numpy (python3-numpy), to hold against
`windowsOfAMachine` in core_bench. The same rider, the same limits; 10,000 futures give a chance to within half a
point (one standard error), which is the error that tests/core/outlook allows the quick reckoning.

    python3 tests/bench/outlook_peer.py && build/release/tests/bench/core_bench --benchmark_filter=windowsOfAMachine
"""
import time

import numpy as np

FUTURES = 10_000
DAYS = 730


def windows(random):
    rate = random.gamma(1.2 * 20 + 0.5, 1 / 20, (FUTURES, 1)) / 7
    shape = 1 / 0.4**2
    mean = 1.8 * 24 * shape / random.gamma(24 * shape, 1, (FUTURES, 1))
    washed = random.beta(0.8 * 30 + 0.5, 0.2 * 30 + 0.5, (FUTURES, 1))
    outings = random.poisson(np.broadcast_to(rate, (FUTURES, DAYS)))
    hours = np.cumsum(random.gamma(shape * outings + 1e-300) * (outings > 0) * mean / shape, axis=1)
    washes = np.cumsum(random.binomial(outings, washed), axis=1)
    result = []
    for task in range(80):
        due = hours >= left(task) / 100
        if task % 3 == 0:
            due |= washes >= 8 + task % 7
        day = np.where(due[:, -1], due.argmax(axis=1) + 1, DAYS + 1)
        result.append(np.quantile(day, [0.1, 0.5, 0.9]))
    return result


def left(task):
    return 500 + 50 * task


if __name__ == "__main__":
    generator = np.random.default_rng(1)
    windows(generator)
    wall, cpu = time.perf_counter(), time.process_time()
    answer = windows(generator)
    print(f"numpy, one machine, 80 tasks, {FUTURES} futures: {1000 * (time.perf_counter() - wall):.0f} ms "
          f"({1000 * (time.process_time() - cpu):.0f} ms of the processor)")
    for task in (0, 1, 40, 79):
        print(f"  task {task}: days {answer[task]}")
