# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Attacks the file of the garage and the program without its window; see README.md beside this."""
import argparse
import importlib
import pathlib
import shutil
import sys
import tempfile
import time

sys.dont_write_bytecode = True  # nothing of ours is left in the tree

import world

PARTS = {"kills": 700, "damage": 2000, "imports": 5000, "commands": 1900, "places": 360, "together": 40,
         "clock": 150, "strangers": 350}


def arguments():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--program", required=True, type=pathlib.Path, help="build/release/app/witnessmark")
    parser.add_argument("--only", action="append", choices=PARTS, help="one part; again for more")
    parser.add_argument("--rounds", type=int, help="so many of each part, instead of: " +
                        ", ".join(f"{name} {rounds}" for name, rounds in PARTS.items()))
    parser.add_argument("--seed", default="1", help="decides the choices; when a kill strikes is up to the machine")
    parser.add_argument("--memory", type=int, default=1024,
                        help="MB of address space a child may have; 0: no limit, for a program with sanitizers")
    parser.add_argument("--words", action="store_true", help="say each kind of refusal and how often it came")
    return parser.parse_args()


def main():
    asked = arguments()
    program = asked.program.resolve()
    if not program.is_file():
        sys.exit(f"{program} is not there: build it first, with cmake --build --preset release --target witnessmark")
    folder = pathlib.Path(tempfile.mkdtemp(prefix="witnessmark-attack-"))
    folder.chmod(0o755)
    run = world.Program(program, folder, asked.memory)
    table, broken = [], False
    for name in asked.only or PARTS:
        began = time.monotonic()
        print(f"{name} ...", flush=True)
        place = world.World(run, folder, asked.seed, name)
        importlib.import_module(name).attack(place, asked.rounds or PARTS[name])
        tally = place.tally
        broken = broken or bool(tally.breaks)
        table.append((name, tally.rounds, tally.named, tally.harmless, len(tally.breaks),
                      f"{(time.monotonic() - began) / 60:.1f}"))
        for note in tally.notes:
            print(f"  {note}")
        for words, count in tally.words.most_common() if asked.words else ():
            print(f"  {count:5} {words}")
    print(f"\nseed {asked.seed}")
    for line in [("part", "rounds", "named", "harmless", "breaks", "minutes"), *table]:
        print("{:10} {:>7} {:>7} {:>9} {:>7} {:>8}".format(*line))
    if broken:
        print(f"\nWhat shows the breaks is kept in {folder}")
        sys.exit(1)
    shutil.rmtree(folder)


if __name__ == "__main__":
    main()
