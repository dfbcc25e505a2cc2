"""The peer of reading a table: Python's csv module, converting cuts and readings to numbers.

read_csv.py TABLE.csv prints, one "name number" a line, the readings and those struck. What it does
less: benchmarks/README.md.
"""

import csv
import sys


def main(path):
    cuts, readings, struck = [], [], 0
    with open(path, encoding="utf-8", newline="") as stream:
        rows = csv.reader(stream)
        heads = next(rows)
        at_cuts, at_reading, at_struck = (heads.index(h) for h in ("cuts", "reading", "struck"))
        for row in rows:
            cuts.append(float(row[at_cuts]))
            readings.append(float(row[at_reading].rstrip("?")))
            struck += row[at_struck] != ""
    print("readings", len(readings))
    print("struck", struck)


main(sys.argv[1])
