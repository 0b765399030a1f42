# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""A writing verb is killed at a random moment. Then the file opens, all that was answered is in it, and what was not
answered is there as a whole or not at all. A killed program is not a power cut: the system's cache survives it."""
import collections
import os
import time

from world import is_hot, rows_of

MACHINES = "Heron 250", "Sorrel 450", "Plover 125", "Crake 250"
ROUNDS_OF_A_GARAGE = 25


def notebook(world, number):
    """An import that is one long transaction, about days before the demo garage begins to be ridden."""
    lines = ["date;machine;what;hours;wash;note"]
    for line in range(world.random.choice((3, 40, 400))):
        day = f"{1 + line % 28:02}.{1 + line // 28 % 12:02}.{1990 + number % 25 + line // 336}"
        lines.append(f"{day};{world.random.choice(MACHINES)};practice;1,{line % 10};hand;attack {number} {line}")
    path = world.path("notebook.csv")
    path.write_text("\n".join(lines) + "\n")
    return ["import", None, path, "--accept", "cured"]


def a_write(world, number):
    """A verb with its words; None stands for the file."""
    machine, note = world.random.choice(MACHINES), ["--note", f"attack {number}"]
    kinds = {
        "wash": ["log", None, "--machine", machine, "--wash", "hand", *note],
        "crash": ["log", None, "--machine", machine, "--crash", *note],
        "outing": ["log", None, "--machine", machine, "--outing", "0,1", "--other", "--wash", "pressure", "--seen",
                   "--meter-is-right", *note],
        "record": ["record", None, "--machine", machine, "--task", world.random.choice(world.tasks[machine]), *note],
        "looked": ["record", None, "--machine", machine, "--task", world.random.choice(world.tasks[machine]),
                   "--looked-fine", *note],
        "tightened": ["tightened", None, "--machine", machine, "--joint", world.random.choice(world.joints[machine]),
                      *note],
        "notebook": notebook(world, number),
        "undo": ["undo", None, "--accept"],
        "redo": ["redo", None, "--accept"],
    }
    return world.random.choices(*zip(*[(kinds[kind], weight) for kind, weight in (
        ("wash", 3), ("crash", 1), ("outing", 2), ("record", 3), ("looked", 1), ("tightened", 1), ("notebook", 5),
        ("undo", 2), ("redo", 1))]))[0]


def ends_by_a_kill(world, path, words, typical):
    """Runs it and kills it: anywhere, or shortly after its journal or its backup came to be. The answer, if any."""
    child = world.run.start(*[path if word is None else word for word in words])
    began = time.monotonic()
    wait_for = world.random.choice(("moment", "journal", "journal", "backup"))
    after = world.random.uniform(0, 1.05 * typical if wait_for == "moment" else 0.04 * world.random.random())

    def has_come():
        if wait_for == "journal":
            return is_hot(path)
        return os.path.isdir(f"{path}.backups") and any(
            name.endswith(".unfinished") for name in os.listdir(f"{path}.backups"))

    if wait_for != "moment":
        while child.poll() is None and not has_come() and time.monotonic() - began < 60:
            time.sleep(0.0002)
        began = time.monotonic()
    while child.poll() is None and time.monotonic() - began < after:
        time.sleep(0.0002)
    child.kill()
    out, err = child.communicate()
    return child.returncode, out, err


def was_answered(words, code, out):
    if words[0] == "import":  # which may find nothing new, and says so
        return b"Took over" in out
    return code == 0 or bool(out)


def shape(before, after):
    """How many rows of each table came and went: what a second run of the same verb has in common with the first."""
    return (collections.Counter(table for table, _ in after - before),
            collections.Counter(table for table, _ in before - after))


class Garage:
    """One file through many kills, with what is known to be in it."""

    def __init__(self, world, number):
        self.world, self.tally = world, world.tally
        self.path = world.fresh(f"kills-{number}.witnessmark")
        self.rows = rows_of(world.exported(self.path)[0])
        self.states, self.judged = {self.rows}, set()

    def opens(self, hot, killed):
        answer = self.world.run("check", self.path)
        if not self.tally.judge(answer, self.path):
            return False
        if answer.code != 0:
            self.tally.broke(f"the file is refused after a kill of {killed}", answer, self.path)
            return False
        if (b"was interrupted" in answer.err) != hot:
            self.tally.broke("an interrupted write was taken back and not said, or said and not taken back", answer,
                             self.path)
        if hot:
            self.tally.name(answer)
        return True

    def strike(self, words, typical):
        self.tally.rounds += 1
        before, content = self.rows, self.path.read_bytes()
        code, out, err = ends_by_a_kill(self.world, self.path, words, typical)
        answered, hot = was_answered(words, code, out), is_hot(self.path)
        if code > 0 and code not in (3, 4, 5):
            self.tally.broke(f"{words[0]} ended with {code}: {err[:200]!r}", None, self.path)
        if not self.opens(hot, words):
            return False
        text, answer = self.world.exported(self.path)
        if text is None:
            self.tally.broke("the file can't be exported after a kill", answer, self.path)
            return False
        self.rows = rows_of(text)
        self.states.add(self.rows)
        if self.rows == before:
            if answered:
                self.tally.broke(f"an answered write is lost: {words}, said {out!r}", None, self.path)
            elif not hot:
                self.tally.harmless += 1
            return True
        # The same said of the file before, and not killed: as much must have come and gone.
        twin = self.world.fresh("twin.witnessmark", content)
        self.world.run(*[twin if word is None else word for word in words])
        if shape(before, self.rows) != shape(before, rows_of(self.world.exported(twin)[0])):
            self.tally.broke(f"a write is there in part: {words}", None, self.path)
        self.tally.harmless += not hot
        self.answered = getattr(self, "answered", 0) + answered
        return True

    def judge_backups(self):
        folder = self.path.with_name(self.path.name + ".backups")
        for backup in sorted(folder.iterdir()) if folder.is_dir() else ():
            if backup.suffix != ".backup" or backup in self.judged:
                continue
            self.judged.add(backup)
            copy = self.world.fresh("backup.witnessmark", backup.read_bytes())
            answer = self.world.run("check", copy)
            if answer.code != 0 or answer.err:
                self.tally.broke("a backup is not sound", answer, copy)
            elif rows_of(self.world.exported(copy)[0]) not in self.states:
                self.tally.broke("a backup holds what the file never held", answer, copy)
            # Gone, so that the next change makes one again, and is killed in it.
            if self.world.random.random() < 0.8:
                backup.unlink()


def strike_new_file(world, number, whole):
    """What makes a file is killed: it is there as a whole, or nothing stands in the way of saying it again."""
    tally, path = world.tally, world.path(f"new-{number}.witnessmark")
    words = world.random.choice((["import", None, whole], ["new", None, "--starter", "four-stroke motocross"],
                                 ["new", None, "--demo"]))
    again = [path if word is None else word for word in words]
    tally.rounds += 1
    code, out, _ = ends_by_a_kill(world, path, words, 0.5)
    if path.exists():
        answer = world.run("check", path)
        tally.judge(answer, path)
        if (code == 0 or out) and (answer.code != 0 or not rows_of(world.exported(path)[0])):
            return tally.broke("a file that was answered for is not there", answer, path)
        if answer.code == 0 and words[0] == "import" and rows_of(world.exported(path)[0]) not in (
                frozenset(), rows_of(whole.read_bytes())):
            return tally.broke("a whole file came in in part", answer, path)
        if answer.code == 0 and words[0] == "new":
            tally.harmless += 1
            return None
        if answer.code != 0:
            tally.name(answer)
    if code != 0 and not out:
        answer = world.run(*again)
        if answer.code != 0:
            return tally.broke("after a kill a new file can't be made under its name", answer, path)
    tally.harmless += 1
    return None


def attack(world, rounds):
    whole = world.path("whole.json")
    world.must("export", world.demo, "--to", whole)
    world.demo_bytes = world.demo.read_bytes()
    prepare(world, whole)
    garage, typical, answered = None, 0.3, 0
    for number in range(rounds):
        if number % 10 == 9:
            strike_new_file(world, number, whole)
            continue
        if garage is None or number % ROUNDS_OF_A_GARAGE == 0:
            garage = Garage(world, number)
            began = time.monotonic()
            world.must("log", world.fresh("typical.witnessmark"), "--machine", MACHINES[0], "--wash", "hand")
            typical = time.monotonic() - began
        before = getattr(garage, "answered", 0)
        if not garage.strike(a_write(world, number), typical):
            garage = None
            continue
        answered += getattr(garage, "answered", 0) - before
        garage.judge_backups()
    world.tally.notes.append(f"{answered} writes were answered before the kill came, and are there")


def prepare(world, whole):
    import json
    said = json.loads(whole.read_bytes())
    names = {machine["id"]: machine["name"] for machine in said["machine"]}
    world.tasks, world.joints = ({name: [] for name in MACHINES} for _ in range(2))
    for table, into in (("task_version", world.tasks), ("joint_version", world.joints)):
        for row in said[table]:
            if names.get(row["machine"]) in into:
                into[names[row["machine"]]].append(row["name"])
