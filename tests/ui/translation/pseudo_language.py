# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes a language that nobody speaks: each text in brackets, a third longer, every letter with an accent.

    pseudo_language.py TEXTS.ts PSEUDO.ts

What is still plain on the screen was never given to a translator, and what is cut has no room for a longer language.
"""
import re
import sys
import xml.etree.ElementTree as xml

PLAIN = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
ACCENTED = "áƀćđéƒǵĥíĵķĺɱńóṕɋŕśťúṽŵẋýźÁƁĆĐÉƑǴĤÍĴĶĹṀŃÓṔɊŔŚŤÚṼŴẊÝŹ"
# What stands for something else: places for parts, names of characters, tags.
KEPT = re.compile(r"(%L?\d+|%L?n|&[a-z]+;|<[^>]*>)")


def accented(text):
    letters = str.maketrans(PLAIN, ACCENTED)
    pieces = KEPT.split(text)
    return "".join(piece if at % 2 else piece.translate(letters) for at, piece in enumerate(pieces))


def pseudo(text, meaning):
    if meaning.startswith("code of the language"):
        return text
    if meaning == "form of a day":  # what stands between ' is no part of the date
        return f"'⟦'{text}'⟧'"
    return f"⟦{accented(text)}{'·' * -(-len(text) // 3)}⟧"


def main(source, target):
    tree = xml.parse(source)
    tree.getroot().set("language", "en_GB")  # two forms of a plural
    for message in tree.getroot().iter("message"):
        words = pseudo(message.findtext("source"), message.findtext("comment", ""))
        translation = message.find("translation")
        translation.clear()
        if message.get("numerus") == "yes":
            for _ in range(2):
                xml.SubElement(translation, "numerusform").text = words
        else:
            translation.text = words
    tree.write(target, encoding="utf-8", xml_declaration=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
