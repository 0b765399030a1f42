# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""What every part of the attack uses: the program under limits, what is wrong with an answer, and the counts."""
import collections
import hashlib
import json
import os
import pathlib
import random
import re
import resource
import shutil
import signal
import subprocess
import time

KNOWN_CODES = range(0, 6)  # of `witnessmark --help`; 6 says itself that it is a fault of the program
# What only a program says that went wrong inside.
INSIDE = re.compile(rb"runtime error:|Sanitizer|terminate called|Assertion|nobody foresaw|SQLITE_|std::|QSql|0x[0-9a-f]{6}")
# Signs that steer a terminal or turn a line around; a line break and a tabulator may stand.
STEERING = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]")
JOURNAL = b"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7"  # how a journal begins that is in force (SQLite, file format, 3)

Answer = collections.namedtuple("Answer", "code out err seconds words")


def digest(path):
    return hashlib.sha256(pathlib.Path(path).read_bytes()).hexdigest()


def listing(folder):
    return sorted(os.listdir(os.fsencode(folder)))


def is_hot(path):
    try:
        with open(str(path) + "-journal", "rb") as journal:
            return journal.read(8) == JOURNAL
    except OSError:
        return False


def rows_of(exported):
    """Each row of an exported garage as one text, with its table."""
    return frozenset((table, json.dumps(row, sort_keys=True))
                     for table, rows in json.loads(exported).items() if isinstance(rows, list) for row in rows)


def fault_of(answer):
    """What is wrong with an answer, whatever was asked; empty if nothing is."""
    said = answer.out + answer.err
    if answer.code is None:
        return "did not end in time"
    if answer.code < 0:
        return "ended by " + signal.Signals(-answer.code).name
    if answer.code not in KNOWN_CODES:
        return f"exit code {answer.code}"
    if inside := INSIDE.search(said):
        return "speaks of its inside: " + inside.group().decode()
    if answer.code and not re.search(rb"(?m)^witnessmark: .{15,}", answer.err):
        return "refused without words"
    try:
        steering = STEERING.search(said.decode())
    except UnicodeDecodeError:
        return "says what is no UTF-8"
    return f"says the sign {ord(steering.group()):#x}" if steering else ""


class Program:
    def __init__(self, path, home, memory):
        self.path, self.memory = str(path), memory
        # Nothing of the machine that it runs on decides.
        self.environment = {"LANG": "C.UTF-8", "HOME": str(home), "PATH": "/usr/bin:/bin", "TZ": "UTC",
                            "QT_QPA_PLATFORM": "offscreen"}

    def limits(self, largest_file):
        def set_limits():
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
            if self.memory:
                resource.setrlimit(resource.RLIMIT_AS, (self.memory << 20, self.memory << 20))
            if largest_file is not None:
                resource.setrlimit(resource.RLIMIT_FSIZE, (largest_file, largest_file))
        return set_limits

    def start(self, *words, cwd=None, clock=None, largest_file=None, nobody=False, **streams):
        command = [self.path, *words]
        if clock:
            command = ["faketime", "-f", "@" + clock, *command]
        if nobody:
            streams.update(user=65534, group=65534, extra_groups=[])
        streams = {"stdin": subprocess.DEVNULL, "stdout": subprocess.PIPE, "stderr": subprocess.PIPE, **streams}
        return subprocess.Popen(command, cwd=cwd, env=self.environment,
                                preexec_fn=self.limits(largest_file), **streams)

    def __call__(self, *words, limit=60, **how):
        began = time.monotonic()
        child = self.start(*words, **how)
        try:
            out, err = child.communicate(timeout=limit)
            code = child.returncode
        except subprocess.TimeoutExpired:
            child.kill()
            out, err = child.communicate()
            code = None
        return Answer(code, out or b"", err or b"", time.monotonic() - began, words)


class Tally:
    """What came of a part. Named: refused or reported in words. Harmless: all is as it was, or as it was asked."""

    def __init__(self, folder):
        self.folder = folder
        self.rounds = self.named = self.harmless = 0
        self.breaks, self.notes = [], []
        self.words = collections.Counter()

    def name(self, answer):
        self.named += 1
        for line in answer.err.decode(errors="replace").splitlines()[:1]:
            self.words[re.sub(r'"[^"]*"', '"…"', re.sub(r"\d+", "N", line))[:400]] += 1

    def broke(self, what, answer=None, *files):
        """Keeps the files that show it."""
        number = len(self.breaks) + 1
        kept = self.folder / "breaks" / str(number)
        kept.mkdir(parents=True, exist_ok=True)
        for file in files:
            for each in (file, str(file) + "-journal"):
                if os.path.isfile(each):
                    shutil.copy(each, kept)
        if answer:
            what += f"\n    said: {answer.code} {(answer.err or answer.out)[:300]!r}\n    asked: "
            what += " ".join(repr(word)[:200] for word in answer.words)
        (kept / "what.txt").write_text(what + "\n", errors="surrogateescape")
        self.breaks.append(what)
        print(f"  BREAK: {what}", flush=True)

    def judge(self, answer, *files):
        """The faults that any answer can have; true if there are none."""
        fault = fault_of(answer)
        if fault:
            self.broke(fault, answer, *files)
        return not fault


class World:
    """A folder to attack in, with the demo garage; the choices follow from the seed and the part's name."""

    def __init__(self, program, folder, seed, part):
        self.folder = pathlib.Path(folder) / part
        self.folder.mkdir(parents=True)
        self.run, self.random, self.tally = program, random.Random(f"{seed} {part}"), Tally(self.folder)
        self.demo = self.folder / "demo" / "garage.witnessmark"
        self.demo.parent.mkdir()
        self.must("new", self.demo, "--demo")
        self.demo_bytes = self.demo.read_bytes()

    def must(self, *words, **how):
        answer = self.run(*words, **how)
        if answer.code != 0:
            raise SystemExit(f"the attack can't begin: {words} said {answer.err.decode(errors='replace')}")
        return answer

    def path(self, name):
        return self.folder / name

    def fresh(self, name="garage.witnessmark", content=None):
        """A garage by that name with nothing beside it."""
        path = self.path(name)
        shutil.rmtree(str(path) + ".backups", ignore_errors=True)
        pathlib.Path(str(path) + "-journal").unlink(missing_ok=True)
        path.write_bytes(self.demo_bytes if content is None else content)
        return path

    def exported(self, path):
        """What is in a file, read from a copy since an export ends undo; and the answer."""
        copy = self.fresh("copy-to-export.witnessmark", path.read_bytes())
        answer = self.run("export", copy)
        return (answer.out if answer.code == 0 else None), answer
