# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Rubbish comes in: notebooks, whole files as JSON, damaged garages. What is refused leaves no trace; what is taken
leaves a sound file; nothing hangs or eats the memory."""
import json
import pathlib
import re

from world import digest

LIMIT = 30  # seconds for one import
DATA = pathlib.Path(__file__).resolve().parent.parent / "data"
TOKEN = re.compile(rb'"(?:[^"\\]|\\.)*"|-?\d+|true|false|null')
KEY = re.compile(rb'("[a-z_]+"): ("(?:[^"\\]|\\.)*"|-?\d+|true|false|null)')

JUNK = [b"NaN", b"-Infinity", b"1e999", b"-1", b"0", b"9223372036854775807", b"9223372036854775808", b"1" * 400,
        b"1.5", b"-0", b"0x1f", b"null", b"true", b'""', b'"x"', b"[]", b"{}", b"[" * 3000, b'{"a":' * 3000,
        b'"\\u0000"', b'"\\ud800"', b'"\\u202eeliforp"', '"\u202eeliforp\u2066"'.encode(), b'"\x1b[2J"', b'"\xff\xfe"',
        b'"\xc0\xaf"', b'"' + b"n" * 70000 + b'"', b'"2026-02-30"', b'"9999-12-31"', b'"0000-00-00"', b'"-5"',
        b"'; DROP TABLE outing; --", b'"<b>bold</b>"', b"\x00", b"\r", b"\t", b",", b"}", b"]", b'"', b"\xef\xbb\xbf"]

CELLS = [b"", b"?", b"-", b"nan", b"inf", b"1e9", b"-3", b"1,2,3", b"99999999999999999999", b"0,0000001", b"31.02.2026",
         b"00.00.0000", b"1.1.9999", b"1/2/3", b"yesterday", b"=1+1", b"=cmd|' /C calc'!A0", b"@SUM(A1)", b'"', b'""',
         b'"a\nb"', b"\x00", b"\x1b[31m", "\u202exeh".encode(), "\u200bHeron 250".encode(), b"\xff\xff", b"n" * 5000,
         b";" * 300, b"\t", b"\r", b"Heron 250", b"Heron", b"12:30", b"1h30", b"2:90", "½".encode(), "١٢".encode(),
         b"machine", b"date;machine;hours", b"<script>", b"%s%n", b"../../etc", b"NULL"]


def bits(random, content):
    content = bytearray(content)
    for _ in range(random.choice((1, 1, 3, 20))):
        content[random.randrange(len(content))] ^= 1 << random.randrange(8)
    return bytes(content)


def cut(random, content):
    return content[:random.randrange(len(content))]


def without_a_piece(random, content):
    at = random.randrange(len(content))
    return content[:at] + content[at + random.randint(1, 200):]


def piece_twice(random, content):
    at, length = random.randrange(len(content)), random.randint(1, 400)
    return content[:at + length] + content[at:]


def junk_between(random, content, junk=JUNK):
    at = random.randrange(len(content))
    return content[:at] + random.choice(junk) + content[at:]


def junk_for_a_value(random, content):
    for match in random.sample(list(TOKEN.finditer(content)), 1):
        content = content[:match.start()] + random.choice(JUNK) + content[match.end():]
    return content


def value_of_another(random, content):
    one, other = random.sample(list(TOKEN.finditer(content)), 2)
    return content[:one.start()] + other.group() + content[one.end():]


def key_twice(random, content):
    match = random.choice(list(KEY.finditer(content)))
    again = match.group(1) + b": " + random.choice((b"1", b'"x"', b"null", match.group(2)))
    return content[:match.start()] + again + b", " + content[match.start():]


def another_key(random, content):
    match = random.choice(list(KEY.finditer(content)))
    return content[:match.start() + 1] + random.choice((b"x", b"\\u0000", b"__proto__")) + content[match.start() + 1:]


def cell(random, content):
    lines = content.split(b"\n")
    at = random.randrange(len(lines))
    cells = lines[at].split(b";")
    cells[random.randrange(len(cells))] = random.choice(CELLS)
    lines[at] = b";".join(cells)
    return b"\n".join(lines)


def cells(random, content):
    for _ in range(random.randint(2, 30)):
        content = cell(random, content)
    return content


def other_form(random, content):
    text = content.decode(errors="replace")
    return random.choice((
        lambda: text.encode("utf-16"), lambda: text.encode("utf-16-le"), lambda: text.encode("utf-32"),
        lambda: text.encode("latin-1", "replace"), lambda: b"\xef\xbb\xbf" + content, lambda: text.replace(";", ",").encode(),
        lambda: text.replace(";", "\t").encode(), lambda: text.replace("\n", "\r").encode(),
        lambda: text.replace("\n", "\r\n").encode(), lambda: content * 50, lambda: content.replace(b"\n", b"\n\n"),
        lambda: content.replace(b"2026", b"1926"), lambda: content.replace(b"2026", b"2126"),
        lambda: b"\n".join(random.sample(content.split(b"\n"), content.count(b"\n") + 1))))()


OF_BYTES = bits, cut, without_a_piece, piece_twice, junk_between
OF_JSON = junk_for_a_value, junk_for_a_value, junk_for_a_value, value_of_another, value_of_another, key_twice, another_key
OF_A_NOTEBOOK = cell, cell, cells, cells, other_form


def is_sound(world, path, made_of):
    answer = world.run("check", path)
    if not world.tally.judge(answer, path, made_of):
        return
    if answer.code != 0:
        world.tally.broke("an import was taken and left a file that is not sound", answer, path, made_of)


def whole_file(world, path, kind, name="new.witnessmark"):
    new = world.path(name)
    answer = world.run("import", new, path, limit=LIMIT)
    if not world.tally.judge(answer, path):
        return
    if answer.code == 0 and kind is key_twice:
        world.tally.broke("a key that is there twice was taken", answer, path)
    if answer.code != 0:
        world.tally.name(answer)
        if new.exists():
            world.tally.broke("a refused import left a file", answer, path, new)
    else:
        is_sound(world, new, path)
        world.tally.harmless += 1
    for left in (new, world.path(name + "-journal")):
        left.unlink(missing_ok=True)


def notebook(world, path):
    into, before = world.path("into.witnessmark"), None
    if not into.exists() or digest(into) != world.pristine:
        into = world.fresh("into.witnessmark")
        before = world.pristine = digest(into)
    before = before or world.pristine
    accept = world.random.choice(([], [], ["--json"], ["--machine", "Heron 250"], ["--accept", "taken"],
                                  ["--accept", "cured"], ["--accept", "cured", "--machine", "Heron 250"]))
    answer = world.run("import", into, path, *accept, limit=LIMIT)
    if not world.tally.judge(answer, path):
        return
    wrote = digest(into) != before
    if wrote and (answer.code != 0 or "--accept" not in accept):
        world.tally.broke("an import that was refused, or not asked to write, wrote", answer, path, into)
    if answer.code != 0:
        world.tally.name(answer)
        return
    if wrote:
        is_sound(world, into, path)
        if b"\nTook over" not in b"\n" + answer.out + answer.err:
            world.tally.broke("an import wrote and does not say so", answer, path, into)
    if b"refused" in answer.out or b"doubtful" in answer.out:
        world.tally.named += 1
    else:
        world.tally.harmless += 1


def attack(world, rounds):
    world.pristine = None
    small, large = world.path("small.witnessmark"), world.path("large.json")
    world.must("new", small, "--starter", "two-stroke motocross")
    world.must("log", small, "--outing", "1,5", "--note", "one ride")
    world.must("export", small, "--to", world.path("small.json"))
    world.must("export", world.demo, "--to", large)
    texts = [world.path("small.json").read_bytes(), (DATA / "exchange/good-small.json").read_bytes()]
    json.loads(texts[0])
    notebooks = [path.read_bytes() for path in sorted((DATA / "notebook").glob("*.csv"))]
    for _ in range(rounds):
        world.tally.rounds += 1
        what = world.random.choices(("json", "large json", "notebook", "garage"), (45, 3, 47, 5))[0]
        if what == "notebook":
            kind = world.random.choice(OF_A_NOTEBOOK * 2 + OF_BYTES)
            content = world.random.choice(notebooks)
            content = kind(world.random, content, CELLS) if kind is junk_between else kind(world.random, content)
            path = world.path("mutated.csv")
        elif what == "garage":
            kind, content, path = bits, world.demo_bytes, world.path("mutated.witnessmark")
            content = world.random.choice((bits, bits, cut, without_a_piece))(world.random, content)
        else:
            kind = world.random.choice(OF_JSON * 2 + OF_BYTES)
            content = kind(world.random, large.read_bytes() if what == "large json" else world.random.choice(texts))
            path = world.path("mutated.json")
        path.write_bytes(content)
        notebook(world, path) if what == "notebook" else whole_file(world, path, kind)
