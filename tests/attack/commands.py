# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Command lines of rubbish, from what the help texts name. No end by a signal, no empty word, a known exit code, and
nothing written by what was refused or only reads."""
import re

from world import digest, listing

READING = {"due", "plan", "card", "drawer", "torque", "wrench", "generic", "export", "check"}

RUBBISH = ["", " ", "-", "--", "-1", "0", "-0", "1", "1,5", "1.5", "1e3", "1e999", "nan", "inf", "99999999999999999999",
           "9223372036854775807", "-9223372036854775808", "0x10", "٣", "½", "1,2,3", "1..2..3", "3..2..1", "..", "1..",
           "2026-05-16", "2026-02-30", "0000-00-00", "9999-12-31", "1969-12-31", "-2026-01-01", "16.05.2026", "tomorrow",
           "Heron 250", "Heron", "heron", "e", "chain", "engine oil=850", "engine oil=", "=850", "a=b=c", "washes=0",
           "mud days=1..2..3", "mud", "sand", "pressure", "race", "taken", "cured", "none", "ft-lb", "N·m", "four-stroke",
           "two-stroke motocross", "%s%n%x", "$(id)", "`id`", "'; DROP TABLE wash; --", "<b>x</b>", "a\nb", "a\tb",
           "\x1b[2J", "\u202eabc", "\u200b", "e\u0301", "💥", "\ufffd", b"\xff\xfe", b"Her\xc3", "x" * 300, "x" * 100000,
           "../x", "a/b", "/dev/null", "/dev/null/x", "no-such-folder/x", "--json", "--help", "-h", "--on", "--verbose",
           "\\", '"', "''", "*", "?", "~", "C:\\x", ".", "GARAGE"]


def learn(world):
    """Each verb with how many words it takes and its options: (name, takes a value)."""
    general = world.must("--help").out.decode()
    verbs = {}
    for name in re.findall(r"(?m)^  ([a-z]+)  +\S", general.split("Verbs:")[1].split("Options:")[0]):
        text = world.must(name, "--help").out.decode()
        usage = re.match(r"Usage: witnessmark \w+(.*) \[options\]", text).group(1).split()
        options = re.findall(r"(?m)^  (?:-\w, )?(--[a-z-]+)( <[^>]+>)?", text)
        verbs[name] = (usage, [(option, bool(value)) for option, value in options])
    return verbs


def command(world, verbs, garage):
    random = world.random

    def rubbish():
        value = random.choice(RUBBISH)
        return str(garage) if value == "GARAGE" else value

    name = random.choice(sorted(verbs))
    usage, options = verbs[name]
    words = [str(garage) if word == "FILE" and name != "new" and random.random() < 0.85 else rubbish() for word in usage]
    if random.random() < 0.08:
        words = words[:-1] if random.random() < 0.5 else [*words, rubbish()]
    if random.random() < 0.3:
        words += ["--machine", "Heron 250"] if ("--machine", True) in options else []
    for option, has_value in random.choices(options, k=random.choice((0, 1, 1, 2, 2, 3, 5))):
        if random.random() < 0.05:
            option = random.choice((option + "x", option[:-2], "-" + option[2:], option.upper(), option + "=" + "x"))
        words.append(option)
        if has_value and random.random() < 0.95:
            words.append(rubbish())
    if random.random() < 0.06:  # what a library takes for its own
        words += random.choice((["-platform", "no-such"], ["-style", "x"], ["-qwindowtitle"], ["-plugin", "x"]))
    if random.random() < 0.03:
        name = random.choice(("", "dues", "DUE", "\u202e", "-", "--", "window", "help", "x" * 5000))
        words = [str(garage), *words]
    if random.random() < 0.05:
        random.shuffle(words)
    return [name, *words]


def attack(world, rounds):
    verbs = learn(world)
    if len(verbs) < 15 or sum(len(options) for _, options in verbs.values()) < 80:
        raise SystemExit("the attack no longer understands the help texts")
    tally, folder = world.tally, world.path("here")
    folder.mkdir()
    garage, wrote = world.fresh("commands.witnessmark"), True
    before = digest(garage)
    for _ in range(rounds):
        tally.rounds += 1
        words = command(world, verbs, garage)
        answer = world.run(*words, cwd=folder)
        if not tally.judge(answer, garage):
            pass
        elif answer.code == 0:
            tally.harmless += 1
        else:
            tally.name(answer)
        wrote, left = digest(garage) != before, listing(folder)
        if wrote and (answer.code != 0 or words[0] in READING - {"export"}):
            tally.broke("something was written by what was refused or only reads", answer, garage)
        if answer.code != 0 and left:
            tally.broke(f"a refused command left {left[:3]}", answer)
        if wrote:
            check = world.run("check", garage)
            if check.code != 0:
                tally.broke(f"the file is not sound after {words}", check, garage)
            garage = world.fresh("commands.witnessmark")
        empty(folder)


def empty(folder):
    for name in sorted(folder.rglob("*"), reverse=True):
        name.rmdir() if name.is_dir() and not name.is_symlink() else name.unlink()
