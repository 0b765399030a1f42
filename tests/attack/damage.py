# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Bytes of a garage are damaged. Each damage is named, or changes nothing of what the file says: not its export, and
not what undo brings back."""
import sqlite3

from world import digest

PAGE = 4096


def in_the_header(random, content, older):
    content[random.randrange(100)] = random.randrange(256)


def bit(random, content, older):
    content[random.randrange(len(content))] ^= 1 << random.randrange(8)


def some_bytes(random, content, older):
    at = random.randrange(len(content))
    content[at:at + random.randint(1, 16)] = random.randbytes(random.randint(1, 16))


def bytes_in_place(random, content, older):
    at, length = random.randrange(len(content) - 64), random.randint(1, 64)
    content[at:at + length] = random.randbytes(length)


def a_digit(random, content, older):
    """A letter or figure becomes another: damage that still reads well."""
    places = [at for at in range(random.randrange(len(content) - 8192), len(content))[:8192]
              if 0x30 <= content[at] < 0x3a or 0x61 <= content[at] < 0x7b]
    if places:
        content[random.choice(places)] ^= 1


def empty_block(random, content, older):
    size = random.choice((512, PAGE, 8 * PAGE))
    at = random.randrange(len(content) // size) * size
    content[at:at + size] = bytes(size)


def swapped_pages(random, content, older):
    one, two = (random.randrange(len(content) // PAGE) * PAGE for _ in range(2))
    content[one:one + PAGE], content[two:two + PAGE] = content[two:two + PAGE], content[one:one + PAGE]


def page_twice(random, content, older):
    one, two = (random.randrange(len(content) // PAGE) * PAGE for _ in range(2))
    content[one:one + PAGE] = content[two:two + PAGE]


def cut(random, content, older):
    del content[random.randrange(len(content)):]


def cut_at_a_page(random, content, older):
    del content[random.randrange(len(content) // PAGE) * PAGE:]


def longer(random, content, older):
    content += random.choice((bytes, random.randbytes))(random.choice((1, 100, PAGE, 3 * PAGE)))


def stale_page(random, content, older):
    """A disc that lost one write: a page is as it was before the last change."""
    places = [at for at in range(0, min(len(content), len(older)), PAGE)
              if content[at:at + PAGE] != older[at:at + PAGE]]
    for at in random.sample(places, random.randint(1, min(3, len(places)))):
        content[at:at + PAGE] = older[at:at + PAGE]


def stale_blocks(random, content, older):
    """The same where a write goes to the disc by 512 bytes."""
    places = [at for at in range(0, min(len(content), len(older)), 512)
              if content[at:at + 512] != older[at:at + 512]]
    for at in random.sample(places, random.randint(1, len(places))):
        content[at:at + 512] = older[at:at + 512]


KINDS = (in_the_header, bit, bit, some_bytes, bytes_in_place, a_digit, a_digit, a_digit, empty_block, swapped_pages,
         page_twice, cut, cut_at_a_page, longer, stale_page, stale_blocks)


def in_what_undo_keeps(path, content):
    """Where the bytes of the last changeset lie, as far as they lie in one piece."""
    with sqlite3.connect(path) as file:
        tables = [name for name, in file.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
        for table in tables:
            for row in file.execute(f'SELECT * FROM "{table}" ORDER BY rowid DESC LIMIT 1'):
                for value in row:
                    if isinstance(value, bytes) and value[:1] in (b"T", b"P") and len(value) > 40:
                        at = content.find(value[:200])
                        if at >= 0:
                            return range(at, at + min(200, len(value)))
    return None


class Sound:
    """What the undamaged file says, whichever way it is asked."""

    def __init__(self, world):
        path = world.fresh()
        self.older = path.read_bytes()
        world.must("log", path, "--machine", "Heron 250", "--outing", "1,2", "--wash", "hand", "--seen",
                   "--meter-is-right", "--note", "the last that was said")
        self.content = path.read_bytes()
        self.undo_bytes = in_what_undo_keeps(path, self.content)
        self.check = world.must("check", path).out
        self.text = world.exported(path)[0]
        self.undone = undone(world, path)


def undone(world, path):
    copy = world.fresh("copy-to-undo.witnessmark", path.read_bytes())
    answer = world.run("undo", copy, "--accept")
    if answer.code != 0:
        return answer, None
    return answer, world.exported(copy)[0]


def judge(world, sound, path, kind):
    tally, before = world.tally, digest(path)
    answer = world.run("check", path)
    if not tally.judge(answer, path):
        return None
    if digest(path) != before:
        return tally.broke(f"check wrote into a damaged file ({kind})", answer, path)
    if answer.code != 0:
        tally.name(answer)
        if world.random.random() < 0.25:
            text, other = world.exported(path)
            tally.judge(other, path)
            if text is not None and text != sound.text:
                tally.broke(f"a refused file is exported, and differs ({kind})", other, path)
        return None
    text, exported = world.exported(path)
    if not tally.judge(exported, path):
        return None
    if text is None:
        return tally.broke(f"check calls sound what can't be exported ({kind})", exported, path)
    if text != sound.text:
        if answer.out == sound.check and not answer.err:
            return tally.broke(f"a silent difference ({kind})", exported, path)
        return tally.name(answer)
    answer, text = undone(world, path)
    if not tally.judge(answer, path):
        return None
    if answer.code != 0:
        return tally.name(answer)
    if text != sound.undone[1]:
        return tally.broke(f"undo brings back something else, or leaves a file that can't be read ({kind})", answer, path)
    if answer.out != sound.undone[0].out:
        world.other_words += 1
    tally.harmless += 1
    return None


def attack(world, rounds):
    sound = Sound(world)
    world.other_words = 0
    for _ in range(rounds):
        world.tally.rounds += 1
        content = bytearray(sound.content)
        kind = world.random.choice(KINDS)
        if sound.undo_bytes and world.random.random() < 0.05:
            content[world.random.choice(sound.undo_bytes)] ^= 1 << world.random.randrange(8)
        else:
            kind(world.random, content, sound.older)
        judge(world, sound, world.fresh("damaged.witnessmark", content), kind.__name__)
    world.tally.notes.append(f"{world.other_words} times undo did the right thing and said other words of it")
