# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
"""A write that was interrupted, made by hand: a journal in force, and pages of the write in the file already."""
import os
import shutil
import sqlite3
import tempfile


def leave(path):
    """Leaves it at `path`, a sound garage; taken back, the file is as it was, byte for byte."""
    with tempfile.TemporaryDirectory() as folder:
        work = os.path.join(folder, "work")
        shutil.copy(path, work)
        file = sqlite3.connect(work, isolation_level=None)
        file.execute("PRAGMA journal_mode = TRUNCATE")
        file.execute("PRAGMA cache_size = 2")
        file.execute("PRAGMA cache_spill = 1")
        file.execute("BEGIN IMMEDIATE")
        file.execute("UPDATE file_state SET revision = revision + 1")
        file.execute("UPDATE verb_log SET text = text || ' and more'")
        file.execute("CREATE TABLE interrupted (what BLOB)")
        for _ in range(50):
            file.execute("INSERT INTO interrupted VALUES (zeroblob(9000))")
        with open(work, "rb") as changed, open(path, "wb") as into:
            into.write(changed.read())
        shutil.copy(work + "-journal", str(path) + "-journal")
        file.close()
