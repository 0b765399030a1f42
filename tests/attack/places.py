# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Odd places: what may not be written, what is full, what is no file, names of any bytes, names that belong to a
garage. As root everything is run by the user nobody, since root may write everywhere."""
import os
import pathlib
import shutil
import socket
import subprocess
import tempfile

import half_written
from world import digest, listing

LOG = ["log", None, "--machine", "Heron 250", "--wash", "hand", "--note", "at an odd place"]


class Places:
    def __init__(self, world):
        self.world, self.tally = world, world.tally
        self.how = {"nobody": True} if os.geteuid() == 0 else {}
        self.base = pathlib.Path(tempfile.mkdtemp(dir=world.folder))
        self.whole = self.base.parent / "whole.json"
        world.must("export", world.demo, "--to", self.whole)
        self.whole.chmod(0o644)
        self.clear()

    def clear(self):
        subprocess.run(["chmod", "-R", "u+rwX", self.base], check=True)
        shutil.rmtree(self.base)
        self.base.mkdir()
        self.garage = self.base / "garage.witnessmark"
        self.garage.write_bytes(self.world.demo_bytes)
        self.own()

    def own(self, *mode):
        """All belongs to who runs the program."""
        if self.how:
            for path in (self.base, *self.base.rglob("*")):
                os.chown(path, 65534, 65534, follow_symlinks=False)
        for path, bits in mode:
            os.chmod(path, bits)

    def ask(self, *words, file=None, **how):
        words = [file or self.garage if word is None else word for word in words]
        answer = self.world.run(*words, limit=30, cwd=self.base, **{**self.how, **how})
        self.tally.rounds += 1
        self.tally.judge(answer, self.garage)
        return answer

    def refused(self, *words, by=digest, **how):
        """Nothing is written; `by` says what of the garage has to be the same."""
        before, names = by(self.garage), listing(self.base)
        answer = self.ask(*words, **how)
        if answer.code == 0:
            self.tally.broke("was not refused", answer, self.garage)
        elif by(self.garage) != before or listing(self.base) != names:
            self.tally.broke("was refused and wrote", answer, self.garage)
        else:
            self.tally.name(answer)

    def works(self, *words, with_words=b"", **how):
        answer = self.ask(*words, **how)
        if answer.code != 0 or with_words not in answer.err:
            self.tally.broke("should work, and say " + repr(with_words), answer, self.garage)
        elif with_words:
            self.tally.name(answer)
        else:
            self.tally.harmless += 1
        return answer


def rights(at):
    at.own((at.garage, 0o444))
    at.works("check", None), at.works("due", None), at.refused(*LOG), at.refused("undo", None, "--accept")
    at.clear(), at.own((at.base, 0o555))
    at.works("check", None), at.refused(*LOG), at.refused("new", at.base / "new"), at.refused(
        "export", None, "--to", "out.json"), at.refused("import", at.base / "new", at.whole)
    at.clear(), at.own((at.garage, 0o000))
    if at.how or os.geteuid():
        at.refused("check", None), at.refused(*LOG)
    at.clear(), half_written.leave(at.garage), at.own((at.garage, 0o444), (at.base, 0o555))
    at.refused("check", None), at.refused(*LOG), at.refused("import", at.base / "new", at.garage)
    at.clear(), half_written.leave(at.garage), at.own()
    at.works("check", None, with_words=b"interrupted")
    if at.garage.read_bytes() != at.world.demo_bytes:
        at.tally.broke("an interrupted write was taken back to something else", None, at.garage)


def beside(at):
    for make in (os.mkdir, os.mkfifo, lambda name: os.symlink(at.whole, name)):
        at.clear(), make(f"{at.garage}-journal"), at.own()
        at.refused(*LOG), at.refused("check", None)
    for make in (os.mkfifo, lambda name: os.symlink(at.base, name), lambda name: pathlib.Path(name).write_text("x")):
        at.clear(), make(f"{at.garage}.backups"), at.own()
        at.works(*LOG, with_words=b"without a backup")
    at.clear(), os.mkdir(f"{at.garage}.backups"), at.own((f"{at.garage}.backups", 0o555))
    at.works(*LOG, with_words=b"without a backup")


def no_files(at):
    names = {"fifo": os.mkfifo, "folder": os.mkdir, "nowhere": lambda name: os.symlink("not there", name),
             "round": lambda name: os.symlink("round", name),
             "socket": lambda name: socket.socket(socket.AF_UNIX).bind(str(name))}
    for name, make in names.items():
        at.clear(), make(at.base / name), at.own()
        path = at.base / name
        at.refused("check", None, file=path), at.refused(*LOG, file=path), at.refused("import", at.base / "x", path)
        if name in ("folder", "socket"):
            at.refused("export", None, "--to", path), at.refused("new", path)
    for device in ("/dev/null", "/dev/zero", "/dev/full", "/dev/tty"):
        at.clear()
        at.refused("check", None, file=device), at.refused(*LOG, file=device), at.refused("new", device)
        if device != "/dev/null":
            at.refused("import", at.base / "x", device)
    at.refused("export", None, "--to", "/dev/full")
    with open(at.base / "sparse", "wb") as sparse:
        sparse.truncate(6 << 30)
    at.own(), at.refused("import", at.base / "x", at.base / "sparse"), at.refused("check", None, file=at.base / "sparse")
    (at.base / "sparse").unlink()
    at.clear(), (at.base / "link").symlink_to(at.garage), at.own()
    at.works(*LOG, file=at.base / "link")
    if not (at.base / "garage.witnessmark.backups").is_dir():
        at.tally.broke("a file that is opened by a link has its backups elsewhere", None)


def names_that_belong_to_a_garage(at):
    at.works(*LOG)
    (at.base / "link").symlink_to(at.garage), (at.base / "journal").symlink_to(f"{at.garage}-journal")
    os.link(at.garage, at.base / "second-name"), (at.base / "backups").symlink_to(f"{at.garage}.backups")
    at.own()
    for name in ("garage.witnessmark", "garage.witnessmark-journal", "garage.witnessmark-wal", "garage.witnessmark-shm",
                 "link", "journal", "second-name", "garage.witnessmark.backups/x", "backups/x", "./link-journal",
                 "garage.witnessmark.backups", "missing/x", "", "x" * 256):
        at.refused("export", None, "--to", name)
        # The number of a sheet is taken, and given back if the paper can't be written.
        at.refused("sheet", None, "--machine", "Heron 250", "--pdf", name or "missing/",
                   by=lambda path: at.world.exported(path)[0])
        at.refused("card", None, "--machine", "Heron 250", "--pdf", name or "missing/")
        at.refused("new", name), at.refused("import", name, at.whole) if name not in (
            "garage.witnessmark", "link", "second-name") else None


def names_of_any_bytes(at):
    for name in (b"gar\xffage.witnessmark", b"a b'c\"d$e.witnessmark", b"new\nline.witnessmark", b"%41?mode=memory#x",
                 "Garage ü 💥.witnessmark".encode(), b"\x1b[31m.witnessmark"):
        at.clear()
        path = os.path.join(os.fsencode(at.base), name)
        at.works("new", path, "--starter", "four-stroke enduro"), at.works("log", path, "--wash", "hand")
        at.works("check", path)
        if not os.path.isdir(path + b".backups"):
            at.tally.broke("no backup beside " + repr(name), None)
    at.refused("export", None, "--to", b"\xff.json")
    at.refused("new", at.base / ("x" * 256)), at.refused("new", at.base / ("x" * 250)), at.refused("new", "missing/x")


def streams(at):
    with open("/dev/full", "wb") as full:
        for words in (["due", None], ["export", None], ["check", None], ["--help"], ["due", "--help"]):
            at.refused(*words, stdout=full)
        answer = at.ask(*LOG, stdout=full)
        text = at.world.exported(at.garage)[0]
        if (b"odd place" in text) != (answer.code in (0, 5, 6)):
            at.tally.broke("it is not said whether a write was done", answer, at.garage)
    at.clear()
    words = [at.world.run.path, "export", str(at.garage), "--to", str(at.base / "out.json")]
    subprocess.run(["sh", "-c", 'exec "$@" <&- >&- 2>&-', "sh", *words], env=at.world.run.environment, timeout=60)
    if (at.base / "out.json").read_bytes() != at.whole.read_bytes():
        at.tally.broke("without open streams another text was written", None, at.base / "out.json")
    words = [at.world.run.path, *[str(at.garage) if word is None else word for word in LOG]]
    subprocess.run(["sh", "-c", 'exec "$@" <&- >&- 2>&-', "sh", *words], env=at.world.run.environment, timeout=60)
    at.own(), at.works("check", None)


def attack(world, rounds):
    import full_disk
    at = Places(world)
    for scene in (rights, beside, no_files, names_that_belong_to_a_garage, names_of_any_bytes, streams):
        at.clear()
        scene(at)
    at.clear()
    full_disk.attack(at, max(20, rounds - world.tally.rounds))
