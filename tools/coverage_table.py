"""A table of the lines and branches that tests ran through, by folder of src/.

In: what `llvm-cov export -summary-only` wrote, and the folders. Tests themselves are not counted.
"""

import json
import sys
from collections import Counter


def counted_by_folder(files, folders):
    """A Counter for each folder: lines, lines_covered, branches, branches_covered."""
    counts = {folder: Counter() for folder in folders}
    for file in files:
        name = file["filename"]
        folder = name.rpartition("/src/")[2].partition("/")[0]
        if "/src/" not in name or folder not in counts or "_test." in name:
            continue
        for what in ("lines", "branches"):
            counts[folder][what] += file["summary"][what]["count"]
            counts[folder][what + "_covered"] += file["summary"][what]["covered"]
    return counts


def in_words(counts):
    parts = []
    for what in ("lines", "branches"):
        of, covered = counts[what], counts[what + "_covered"]
        share = f"{100 * covered / of:.1f} %" if of else "none"
        parts.append(f"{what} {share} ({covered} of {of})")
    return ", ".join(parts)


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        files = json.load(file)["data"][0]["files"]
    counts = counted_by_folder(files, sys.argv[2:])
    for folder, counted in counts.items():
        print(f"{folder}: {in_words(counted)}")
    print(f"all: {in_words(sum(counts.values(), Counter()))}")


if __name__ == "__main__":
    main()
