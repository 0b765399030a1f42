# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Many programs at one file: all that was answered is there, whoever had to wait says so, nobody takes a write that
goes on for one that was interrupted, and the first writes of a day leave a sound backup."""
import time

from world import Answer, rows_of

BUSY = b"Another program holds"


def all_at_once(world, commands, limit=120):
    """Starts them together; their answers in the same order."""
    children = [world.run.start(*words) for words in commands]
    answers = []
    began = time.monotonic()
    for child, words in zip(children, commands):
        try:
            out, err = child.communicate(timeout=max(1, limit - (time.monotonic() - began)))
            answers.append(Answer(child.returncode, out, err, 0, words))
        except Exception:
            child.kill()
            child.communicate()
            answers.append(Answer(None, b"", b"", limit, words))
    return answers


def judge_backups(world, path, states):
    folder = path.with_name(path.name + ".backups")
    backups = sorted(folder.glob("*.backup")) if folder.is_dir() else []
    if not backups:
        return world.tally.broke("many first writes of a day, and no backup", None, path)
    for backup in backups:
        copy = world.fresh("backup.witnessmark", backup.read_bytes())
        answer = world.run("check", copy)
        if answer.code != 0 or rows_of(world.exported(copy)[0]) - states:
            world.tally.broke("a backup of many at once is not sound", answer, copy)
    if left := [name for name in folder.iterdir() if name.suffix != ".backup"]:
        world.tally.broke(f"{left} is left among the backups", None)
    return None


def writers_and_readers(world, number):
    tally, random = world.tally, world.random
    path = world.fresh("together.witnessmark")
    before = rows_of(world.exported(path)[0])
    open_writes = {f"together {number} {each}" for each in range(random.choice((2, 6, 12)))}
    written = set()
    for _ in range(60):
        notes = sorted(open_writes)
        commands = [["log", path, "--machine", random.choice(("Heron 250", "Sorrel 450")), "--wash", "hand", "--note", note]
                    for note in notes]
        commands += [[random.choice(("check", "due")), path] for _ in range(random.randrange(4))]
        answers = all_at_once(world, commands)
        for answer in answers:
            if not tally.judge(answer, path):
                continue
            if b"interrupted" in answer.err:
                tally.broke("a write that went on was taken for an interrupted one", answer, path)
            if answer.code != 0:
                if BUSY not in answer.err:
                    tally.broke("refused for another reason than that another holds the file", answer, path)
                tally.name(answer)
        done = {note for note, answer in zip(notes, answers) if answer.code == 0}
        written |= done
        open_writes -= done
        if not open_writes:
            break
    else:
        tally.broke("some never got to write", None, path)
    check = world.run("check", path)
    rows = rows_of(world.exported(path)[0] or "{}")
    there = [note for note in written if any(f'"note": "{note}"' in row for _, row in rows)]
    if check.code != 0 or before - rows or len(there) != len(written) or len(rows - before) != len(written):
        return tally.broke(f"{len(written)} writes were answered, {len(there)} are there", check, path)
    tally.harmless += 1
    return judge_backups(world, path, rows)


def one_name(world, number):
    """Many make a file under one name: one of them does."""
    tally, path = world.tally, world.path(f"one-name-{number}.witnessmark")
    words = world.random.choice((["new", path, "--starter", "four-stroke enduro"], ["import", path, world.whole]))
    answers = all_at_once(world, [words] * 6)
    for answer in answers:
        tally.judge(answer, path)
        if answer.code != 0:
            tally.name(answer)
    made = [answer for answer in answers if answer.code == 0]
    check = world.run("check", path)
    if len(made) != 1 or check.code != 0:
        return tally.broke(f"{len(made)} of six made one file", check, path)
    text = world.exported(path)[0]
    if words[0] == "import" and rows_of(text) != rows_of(world.whole.read_bytes()):
        return tally.broke("a whole file is not what came in", check, path)
    tally.harmless += 1
    return None


def imports_and_undos(world, number):
    """One step of many lines against single ones and undo: the file is what some order of them gives."""
    tally, random = world.tally, world.random
    path = world.fresh("steps.witnessmark")
    before = rows_of(world.exported(path)[0])
    notebook = world.path("steps.csv")
    lines = [f"{1 + line % 28:02}.{1 + line // 28:02}.2015;Heron 250;practice;1,5;step {number} {line}" for line in range(200)]
    notebook.write_text("date;machine;what;hours;note\n" + "\n".join(lines) + "\n")
    commands = [["import", path, notebook, "--accept", "cured"], ["undo", path, "--accept"],
                ["log", path, "--machine", "Crake 250", "--wash", "hand", "--note", "one"], ["export", path]]
    random.shuffle(commands)
    for answer in all_at_once(world, commands):
        if tally.judge(answer, path) and answer.code != 0:
            tally.name(answer)
    check = world.run("check", path)
    # An import of earlier days lets a machine begin earlier: its card is another row then.
    new = {row for row in rows_of(world.exported(path)[0] or "{}") - before if row[0] != "machine"}
    of_the_notebook = sum("step" in row for _, row in new)
    if check.code != 0 or of_the_notebook not in (0, 200) or len(new) - of_the_notebook not in (0, 1):
        return tally.broke(f"{of_the_notebook} of 200 lines are there", check, path)
    tally.harmless += 1
    return None


def attack(world, rounds):
    world.whole = world.path("whole.json")
    world.must("export", world.demo, "--to", world.whole)
    for number in range(rounds):
        world.tally.rounds += 1
        (writers_and_readers, writers_and_readers, one_name, imports_and_undos)[number % 4](world, number)
