# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""The clock of the computer jumps by years. The newest backups stay whatever it shows, a new day gets its backup, all
that was answered is in the file, and a day that can't be is named. Needs Debian's faketime."""
import re
import shutil

from world import rows_of

DAYS = ["1970-01-01 00:00:10", "1975-06-01 12:00:00", "1999-12-31 23:59:58", "2000-02-29 08:00:00", "2026-05-16 18:00:00",
        "2026-11-01 01:30:00", "2038-01-19 03:14:06", "2038-01-19 03:14:09", "2060-02-29 12:00:00", "2099-12-31 23:59:59",
        "2106-02-07 06:28:17", "2150-01-01 00:00:00", "2262-04-12 00:00:00"]
NEWEST, MOST = 10, 30
COPY = re.compile(r"(\d{4}-\d\d-\d\d)T.*-r(\d+)-c(\d+)\.backup$")


def copies(path):
    """(number, day, revision), newest first."""
    folder = path.with_name(path.name + ".backups")
    found = [COPY.match(entry.name) for entry in folder.iterdir()] if folder.is_dir() else []
    return sorted(((int(match[3]), match[1], int(match[2])) for match in found if match), reverse=True)


def a_day(random):
    if random.random() < 0.5:
        return random.choice(DAYS)
    return f"{random.choice((1971, 2024, 2026, 2027, 2098))}-{random.randint(1, 12):02}-{random.randint(1, 28):02} 10:00:00"


def judge_copies(tally, path, before, now, day, answer):
    numbers = {copy[0] for copy in now}
    every = sorted({copy[0] for copy in before} | numbers, reverse=True)
    if lost := [number for number in every[:NEWEST] if number not in numbers]:
        tally.broke(f"of the newest backups {lost} went", answer, path)
    if len(now) > MOST or len(every) - len(now) > 1:
        tally.broke(f"{len(before)} backups became {len(now)}", answer, path)
    if day not in {copy[1] for copy in before} and (not now or now[0][1] != day or now[0] in before):
        tally.broke(f"the first change on {day} made no backup", answer, path)


def attack(world, rounds):
    tally, random = world.tally, world.random
    if not shutil.which("faketime"):
        tally.notes.append("not attacked: faketime is not there (apt-get install faketime)")
        return
    demo = world.fresh("demo.witnessmark")
    plain = world.path("plain.witnessmark")
    world.must("new", plain, "--starter", "four-stroke enduro", "--since", "2020-01-01", clock="2026-05-16 18:00:00")
    files = {path: rows_of(world.exported(path)[0]) for path in (demo, plain)}
    most = 0
    for number in range(rounds):
        tally.rounds += 1
        path, clock = random.choice(list(files)), a_day(random)
        machine = ["--machine", "Heron 250"] if path == demo else []
        words = random.choice((["log", path, *machine, "--wash", "hand", "--note", f"clock {number}"],
                               ["log", path, *machine, "--crash", "--on", "2026-05-10", "--note", f"clock {number}"],
                               ["undo", path, "--accept"], ["due", path]))
        before = copies(path)
        answer = world.run(*words, clock=clock)
        now = copies(path)
        if not tally.judge(answer, path):
            continue
        text, exported = world.exported(path)
        if text is None:
            tally.broke(f"the file can't be read after {clock}", exported, path)
            continue
        rows, old = rows_of(text), files[path]
        files[path] = rows
        if words[0] == "log" and answer.code == 0:
            if old - rows or not any(f'"clock {number}"' in row for _, row in rows - old):
                tally.broke(f"an answered write of {clock} is not there", answer, path)
            judge_copies(tally, path, before, now, clock[:10], answer)
            tally.harmless += 1
        elif words[0] == "undo" and answer.code == 0:
            tally.harmless += 1
        else:
            if rows != old:
                tally.broke(f"what was refused or only read wrote on {clock}", answer, path)
            tally.name(answer) if answer.code or answer.err else None
            tally.harmless += answer.code == 0 and not answer.err
        most = max(most, len(now))
    for path in files:
        for copy in sorted(path.with_name(path.name + ".backups").glob("*.backup")):
            answer = world.run("check", world.fresh("backup.witnessmark", copy.read_bytes()))
            if answer.code != 0:
                tally.broke(f"the backup {copy.name} is not sound", answer, copy)
    tally.notes.append(f"at most {most} backups of a file")
