"""The rows of a CSV file kept in a plain table by Python's sqlite3, and single durable changes to it.

usage: keep_rows.py TABLE DATABASE CHANGES. Says: readings, file_mb, change_ms (the median).
"""

import csv
import os
import sqlite3
import statistics
import sys
import time

table, path, changes = sys.argv[1], sys.argv[2], int(sys.argv[3])
database = sqlite3.connect(path, isolation_level=None)
database.execute("PRAGMA journal_mode = WAL")
database.execute("PRAGMA synchronous = FULL")
with open(table, newline="", encoding="utf-8") as file:
    rows = csv.reader(file)
    heads = next(rows)
    columns = ", ".join(f'"{head}"' for head in heads)
    marks = ", ".join("?" for _ in heads)
    database.execute(f"CREATE TABLE rows ({columns})")
    database.execute("BEGIN IMMEDIATE")
    database.executemany(f"INSERT INTO rows VALUES ({marks})", rows)
    database.execute("COMMIT")
took = []
for change in range(changes):
    began = time.perf_counter()
    database.execute("BEGIN IMMEDIATE")
    database.execute("UPDATE rows SET struck = 'slipped' WHERE rowid = ?", (change + 1,))
    database.execute("COMMIT")
    took.append((time.perf_counter() - began) * 1000)
readings = database.execute("SELECT count(*) FROM rows").fetchone()[0]
database.execute("PRAGMA wal_checkpoint(TRUNCATE)")
database.close()
print("readings", readings)
print("file_mb", os.path.getsize(path) / 1e6)
print("change_ms", statistics.median(took))
