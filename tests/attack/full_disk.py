# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""A disk with so many pages left, or a limit on how large a file may become: what was answered is there, what was
refused is not, and the file stays sound. Root gets a small disk of its own in memory."""
import os
import pathlib
import shutil
import subprocess

from world import rows_of

PAGE = 4096


class Disk:
    def __init__(self, at):
        self.place, self.mounted = at.world.folder / "disk", False
        self.place.mkdir()
        size = 3 * len(at.world.demo_bytes) + (2 << 20)
        if os.geteuid() == 0:
            self.mounted = subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={size},mode=777", "none", self.place],
                                          stderr=subprocess.DEVNULL).returncode == 0

    def close(self):
        if self.mounted:
            subprocess.run(["umount", self.place], check=True)


def empty(folder):
    for entry in folder.iterdir():
        shutil.rmtree(entry) if entry.is_dir() else entry.unlink()


def fill(disk, pages):
    """Leaves room for so many pages; the file that takes the rest."""
    filler = disk.place / "filler"
    room = os.statvfs(disk.place)
    with open(filler, "wb") as file:
        left = room.f_bavail * room.f_frsize - pages * PAGE
        while left > 0:
            left -= file.write(bytes(min(left, 1 << 20)))
    return filler


def judge(at, garage, words, answer, before):
    tally = at.tally
    check = at.world.run("check", garage)
    tally.judge(check, garage)
    text = at.world.exported(garage)[0]
    if check.code != 0 or text is None:
        return tally.broke("a file without room is no longer sound", check, garage)
    rows = rows_of(text)
    # An import of earlier days lets a machine begin earlier: its card is another row then.
    if [row for row in before - rows if row[0] != "machine"]:
        return tally.broke("rows are lost where there was no room", answer, garage)
    if words[0] in ("log", "import") and (rows != before) != (answer.code == 0):
        return tally.broke("it says the contrary of what was written", answer, garage)
    if answer.code == 0 and not answer.err:
        tally.harmless += 1
    else:
        tally.name(answer)
    return None


def new_file(at, path, words, answer):
    """What makes a file makes all of it or leaves none."""
    if answer.code == 0:
        if at.world.run("check", path).code == 0:
            at.tally.harmless += 1
        else:
            at.tally.broke("a file that was made is not sound", answer, path)
    elif path.exists():
        at.tally.broke("what was refused left a file", answer, path)
    else:
        at.tally.name(answer)


def attack(at, rounds):
    world, random = at.world, at.world.random
    disk = Disk(at)
    if not disk.mounted:
        at.tally.notes.append("no disk of its own could be mounted: only the size of files was limited")
    notebook = world.path("many-days.csv")
    notebook.write_text("date;machine;what;hours;note\n" + "".join(
        f"{day:02}.{month:02}.2015;Heron 250;practice;1,5;{'n' * 900}\n" for month in range(1, 13) for day in range(1, 29)))
    before = rows_of(world.exported(world.demo)[0])
    log = ["log", None, "--machine", "Heron 250", "--wash", "hand", "--note", "where there is no room"]
    asked = (log, log, ["import", None, notebook, "--accept", "cured"], ["import", None, notebook, "--accept", "cured"],
             ["export", None, "--to", "out.json"], ["sheet", None, "--machine", "Heron 250", "--pdf", "out.pdf"],
             ["new", "new.witnessmark", "--demo"], ["import", "new.witnessmark", at.whole])
    try:
        for number in range(rounds):
            on_disk = disk.mounted and number % 3 < 2
            place = disk.place if on_disk else world.folder / "limited"
            place.mkdir(exist_ok=True)
            empty(place)
            garage = place / "garage.witnessmark"
            garage.write_bytes(world.demo_bytes)
            now = before
            if random.random() < 0.5:  # today's backup is there already
                world.must("log", garage, "--machine", "Heron 250", "--wash", "hand", "--note", "there was room")
                now = rows_of(world.exported(garage)[0])
            words = list(random.choice(asked))
            pages = random.choice((0, 1, 2, 3, 5, 8, random.randrange(12, 60), random.randrange(len(world.demo_bytes) // PAGE + 80)))
            filler = fill(disk, pages) if on_disk else None
            how = {} if on_disk else {"largest_file": max(0, len(garage.read_bytes()) + (pages - 20) * PAGE
                                                          if random.random() < 0.5 else pages * PAGE)}
            at.tally.rounds += 1
            answer = world.run(*[garage if word is None else word for word in words], cwd=place, **how)
            if at.tally.judge(answer, garage):
                if "new.witnessmark" in words:
                    new_file(at, place / "new.witnessmark", words, answer)
                else:
                    judge(at, garage, words, answer, now)
                if answer.code != 0 and {"out.json", "out.pdf"} & set(os.listdir(place)):
                    at.tally.broke("what was refused left a piece", answer)
            if filler:
                filler.unlink()
    finally:
        disk.close()
