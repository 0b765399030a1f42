# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Files that somebody crafted: what they bring along is not run, and they are refused in words or read for what is ours
in them. Nothing is written into them."""
import os
import pathlib
import shutil
import sqlite3

import half_written
from world import digest, rows_of

ENDLESS = "WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM n) SELECT count(*) FROM n"


def sql(*statements, unsafe=False):
    def craft(path):
        file = sqlite3.connect(path, isolation_level=None)
        file.execute("PRAGMA foreign_keys = OFF")
        if unsafe:
            file.execute("PRAGMA writable_schema = ON")
        for statement in statements:
            file.execute(statement)
        file.close()
    return craft


def many_tables(path):
    file = sqlite3.connect(path)
    for number in range(5000):
        file.execute(f"CREATE TABLE stranger_{number} (a)")
    file.commit()
    file.close()


def header(at, content):
    def craft(path):
        with open(path, "r+b") as file:
            file.seek(at)
            file.write(content)
    return craft


def whole(content):
    return lambda path: pathlib.Path(path).write_bytes(content)


def large(path):
    with open(path, "r+b") as file:
        file.truncate(300 << 20)


def beside(ending, content):
    return lambda path: pathlib.Path(str(path) + ending).write_bytes(content)


def journal_of_another(path):
    """The interrupted write of another garage, laid beside this one."""
    other = str(path) + ".other"
    shutil.copy(path, other)
    sql("UPDATE verb_log SET text = 'another'", "VACUUM")(other)
    half_written.leave(other)
    os.replace(other + "-journal", str(path) + "-journal")
    os.unlink(other)


def with_a_wal(path):
    """Closed without a checkpoint: what was written stands in the file beside it."""
    other = str(path) + ".other"
    shutil.copy(path, other)
    file = sqlite3.connect(other, isolation_level=None)
    file.execute("PRAGMA journal_mode = WAL")
    file.execute("UPDATE file_state SET needs_program = 'stranger'")
    shutil.copy(other, path)
    shutil.copy(other + "-wal", str(path) + "-wal")
    file.close()
    for ending in ("", "-wal", "-shm"):
        pathlib.Path(other + ending).unlink(missing_ok=True)


STRANGERS = {
    "a trigger": sql("CREATE TRIGGER t AFTER INSERT ON wash BEGIN DELETE FROM outing; END"),
    "a trigger under one of our names": sql("DROP TRIGGER wash_is_never_changed", "CREATE TRIGGER wash_is_never_changed "
                                            "BEFORE INSERT ON wash BEGIN DELETE FROM outing; END"),
    "a trigger that never ends": sql(f"CREATE TRIGGER t AFTER INSERT ON verb_log BEGIN {ENDLESS}; END"),
    "a view": sql("CREATE VIEW v AS SELECT * FROM wash"),
    "a view that never ends": sql(f"CREATE VIEW v AS {ENDLESS}"),
    "a view in place of a table": sql("PRAGMA legacy_alter_table = ON", "ALTER TABLE wash RENAME TO w",
                                      f"CREATE VIEW wash AS SELECT w.* FROM w WHERE ({ENDLESS}) > 0"),
    "a view in place of the state": sql("PRAGMA legacy_alter_table = ON", "ALTER TABLE file_state RENAME TO s",
                                        f"CREATE VIEW file_state AS SELECT s.* FROM s WHERE ({ENDLESS}) > 0"),
    "a table": sql("CREATE TABLE stranger (a)", "INSERT INTO stranger VALUES (zeroblob(100000))"),
    "a table under a reserved name": sql("CREATE TABLE sqliteXstat1 (tbl, idx, stat)", "UPDATE sqlite_schema SET name = "
                                         "'sqlite_stat1', tbl_name = 'sqlite_stat1', sql = replace(sql, 'X', '_') "
                                         "WHERE name = 'sqliteXstat1'", unsafe=True),
    "a table of a module": sql("CREATE VIRTUAL TABLE stranger USING fts5(a)"),
    "an index": sql("CREATE INDEX i ON wash (abs(id))"),
    "a column": sql("ALTER TABLE wash ADD COLUMN stranger TEXT"),
    "a computed column": sql("ALTER TABLE wash ADD COLUMN stranger INT AS (length(hex(zeroblob(100000000))))"),
    "no trigger": sql("DROP TRIGGER wash_is_never_changed"),
    "no table": sql("DROP TABLE wash"), "no log": sql("DROP TABLE verb_log"), "no seals": sql("DELETE FROM row_seal"),
    "a schema that is no SQL": sql("UPDATE sqlite_schema SET sql = 'CREATE TABLE wash (' WHERE name = 'wash'", unsafe=True),
    "a root page far away": sql("UPDATE sqlite_schema SET rootpage = 99999999 WHERE name = 'wash'", unsafe=True),
    "two tables on one page": sql("UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = "
                                  "'outing') WHERE name = 'wash'", unsafe=True),
    "a huge schema": many_tables,
    "a huge statement": sql("CREATE TABLE stranger (a DEFAULT '" + "x" * 3000000 + "')"),
    "a newer version": sql("PRAGMA user_version = 7", "UPDATE file_state SET oldest_reader = 7, needs_program = '9.9'"),
    "a newer version, steering": sql("PRAGMA user_version = 7", "UPDATE file_state SET oldest_reader = 7, "
                                     "needs_program = char(27) || '[2J' || char(8238) || 'x'"),
    "the newest version": sql("PRAGMA user_version = 2147483647", "UPDATE file_state SET oldest_reader = 2147483647"),
    "no version": sql("PRAGMA user_version = 0"), "a negative version": sql("PRAGMA user_version = -5"),
    "an older version": sql("PRAGMA user_version = 3"),
    "another application": sql("PRAGMA application_id = 1"), "no application": sql("PRAGMA application_id = 0"),
    "a negative revision": sql("PRAGMA ignore_check_constraints = ON", "UPDATE file_state SET revision = -1"),
    "a row more": sql("INSERT INTO person SELECT * FROM (SELECT * FROM person LIMIT 1) WHERE 0", "UPDATE machine SET "
                      "name = 'stranger'"),
    "a text without end": sql("UPDATE machine SET name = hex(zeroblob(20000000))"),
    "a number out of bounds": sql("PRAGMA ignore_check_constraints = ON", "UPDATE machine SET past_low = 9223372036854775807"),
    "an empty file": whole(b""), "a text": whole(b"date;machine\n" * 50), "a picture": whole(b"\x89PNG\r\n\x1a\n" + bytes(999)),
    "a header alone": whole(b"SQLite format 3\0" + bytes(84)), "rubbish behind a header": header(100, os.urandom(8000)),
    "another page size": header(16, b"\x00\x01"), "a page size of nothing": header(16, b"\x00\x00"),
    "a format of the future": header(18, b"\x09\x09"), "another encoding": header(56, b"\x00\x00\x00\x02"),
    "a size that is not there": header(28, b"\x7f\xff\xff\xff"), "three hundred megabytes": large,
    "a wal": with_a_wal, "rubbish as a wal": beside("-wal", b"\x37\x7f\x06\x82" + bytes(5000)),
    "rubbish as a journal": beside("-journal", b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7" + b"\x7f" * 5000),
    "a journal of another garage": journal_of_another,
    "a journal that names another file": beside("-journal", b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7" + bytes(504) + b"\x40\x00\x00\x01"
                                                + b"/etc/hostname" + (13).to_bytes(4, "big") + bytes(4) +
                                                b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7"),
}
VERBS = (["check", None], ["due", None], ["log", None, "--machine", "Heron 250", "--wash", "hand"], ["export", None],
         ["undo", None, "--accept"], ["import", "taken.witnessmark", None])
# What lies beside a file may be taken for what an interrupted write left: then the file is as it was, or refused.
MAY_OPEN = {"three hundred megabytes", "rubbish as a journal", "a journal of another garage", "a journal that names another file",
            "rubbish as a wal", "a wal"}

# Beside the facts, which are as they were: named by whoever checks or writes.
MAY_BE_READ = {("a negative revision", "due")}


def facts_alone(world, name, taken, answer):
    """Facts were taken over from it: into a file that is sound and holds ours alone."""
    check = world.run("check", taken)
    if check.code != 0:
        return world.tally.broke(f"{name}: its facts made a file that is not sound", check, taken)
    with sqlite3.connect(taken) as file:
        found = file.execute("SELECT name FROM sqlite_schema WHERE name LIKE '%stranger%' OR name IN ('t', 'v', 'i', 'w', 's')")
        if found.fetchall():
            return world.tally.broke(f"{name}: came along with its facts", answer, taken)
    world.tally.name(answer) if answer.err else setattr(world.tally, "named", world.tally.named + 1)
    return None


def meet(world, name, verb):
    tally, path, taken = world.tally, world.fresh("stranger.witnessmark"), world.path("taken.witnessmark")
    for left in (str(path) + "-wal", str(path) + "-shm", taken):
        pathlib.Path(left).unlink(missing_ok=True)
    STRANGERS[name](path)
    before = digest(path)
    answer = world.run(*[path if word is None else taken if word == "taken.witnessmark" else word for word in verb], limit=90)
    if not tally.judge(answer, path):
        return None
    changed = digest(path) != before
    if name in MAY_OPEN:
        text, exported = world.exported(path)
        if answer.code == 0 and text is None:
            return tally.broke(f"{name}: was read, and can't be exported", exported, path)
        if text and rows_of(world.exported(world.demo)[0]) - rows_of(text):
            return tally.broke(f"{name}: rows are lost", answer, path)
        tally.name(answer) if answer.code or answer.err else setattr(tally, "harmless", tally.harmless + 1)
        return None
    if changed:
        return tally.broke(f"{name}: {verb[0]} wrote into it", answer, path)
    if verb[0] == "import" and answer.code == 0:
        return facts_alone(world, name, taken, answer)
    if answer.code == 0 and (name, verb[0]) in MAY_BE_READ:
        tally.harmless += 1
        return None
    if answer.code == 0:
        return tally.broke(f"{name}: {verb[0]} took it as it is", answer, path)
    if taken.exists():
        return tally.broke(f"{name}: refused, and left a file", answer, taken)
    return tally.name(answer)


def held_by_another(world, how, verb):
    """Another program holds the file in a transaction of its own."""
    path = world.fresh("held.witnessmark")
    file = sqlite3.connect(path, isolation_level=None)
    file.execute(f"BEGIN {how}")
    answer = world.run(*[path if word is None else word for word in verb])
    file.close()
    if not world.tally.judge(answer, path):
        return
    may = how == "IMMEDIATE" and verb[0] in ("check", "due", "export")
    if (answer.code == 0) != may or (not may and b"Another program holds" not in answer.err):
        world.tally.broke(f"{verb[0]} of a file that is held ({how})", answer, path)
    world.tally.name(answer) if answer.code else None


def attack(world, rounds):
    pairs = [(name, verb) for name in STRANGERS for verb in VERBS]
    world.random.shuffle(pairs)
    if rounds < len(pairs):
        pairs = pairs[:rounds]
    for name, verb in pairs:
        world.tally.rounds += 1
        meet(world, name, verb)
    for how in ("IMMEDIATE", "EXCLUSIVE"):
        for verb in VERBS[:4]:
            world.tally.rounds += 1
            held_by_another(world, how, verb)
