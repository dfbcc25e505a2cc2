#!/usr/bin/env python3
"""Are the tests good? Spoils one operator of the engine at a time and looks whether a test notices.

    mutants.py [--count=200] [--seed=1] [--folder=verdicts ...] [--list]

A mutant is one arithmetic, comparing or joining operator replaced by another, drawn by seed from all such operators of
the engine's sources (tools/architecture.toml, [engine]); what only tests are built of is left alone. In a copy of the
committed sources under build/mutants it is built, and the tests are run: those of its own folder, then those of the
folders above it, until one fails. A mutant is killed by a failing test, a crash, a time-out, or by not compiling (said
apart, and drawn anew); else it survives.

Results are lines of JSON in build/mutants/results-SEED.jsonl, kept for the commit they were made of, so that an
interrupted run goes on where it stopped. The last lines say how many were killed and list the survivors, to be looked at.
Exits 0 when all were tried, whatever the share; 2 on a wrong command line.
"""

import argparse
import json
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import time
import tomllib
from dataclasses import asdict, dataclass
from pathlib import Path

from check_includes import BESIDE_SRC

# clang-format puts blanks round binary operators and none inside <...> of a template, so an operator
# between blanks is one that computes.
REPLACEMENTS = {
    "+": ("-",),
    "-": ("+",),
    "*": ("/",),
    "/": ("*",),
    "+=": ("-=",),
    "-=": ("+=",),
    "*=": ("/=",),
    "/=": ("*=",),
    "<": ("<=", ">="),
    "<=": ("<", ">"),
    ">": (">=", "<="),
    ">=": (">", "<"),
    "==": ("!=",),
    "!=": ("==",),
    "&&": ("||",),
    "||": ("&&",),
}
OPERATOR = re.compile(r"(?<= )(\+=|-=|\*=|/=|<=|>=|==|!=|&&|\|\||[-+*/<>])(?=[ \n])")
SECONDS_PER_TEST_PROGRAM = 240


@dataclass(frozen=True)
class Mutant:
    file: str  # from the root, "src/verdicts/compare.cpp"
    line: int
    column: int  # of the operator, from 1
    operator: str
    replacement: str


def code_only(text):
    """The text with comments and quoted strings blanked out, every character in its place."""
    pattern = re.compile(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])*\'', re.S)
    return pattern.sub(lambda found: re.sub(r"[^\n]", "\0", found.group()), text)


def operators_in(text):
    """(line, column, operator) of everything that could be spoiled."""
    for number, line in enumerate(code_only(text).split("\n"), start=1):
        if line.lstrip().startswith(("#", "template")) or "operator" in line:
            continue
        for found in OPERATOR.finditer(line + "\n"):
            yield number, found.start() + 1, found.group()


def is_for_tests(path):
    """Headers that make things for tests may be listed, since other folders' tests include them."""
    return path.stem.endswith("_test") or path.name.startswith("made_")


def listed_for_use(cmake_text):
    """The files that stand in the keenfall_folder(...) call of a folder's CMakeLists.txt."""
    call = re.search(r"keenfall_folder\(([^)]*)\)", re.sub(r"#[^\n]*", "", cmake_text))
    return {word for word in call.group(1).split() if word.endswith((".h", ".cpp"))} if call else set()


def files_in_use(src, folder):
    """Of a folder, what is built into its library: what CMake lists for it, and the headers that this includes."""
    used = set()
    listed = listed_for_use((src / folder / "CMakeLists.txt").read_text(encoding="utf-8"))
    waiting = [f"{folder}/{name}" for name in listed]
    while waiting:
        file = waiting.pop()
        if file in used or not file.startswith(f"{folder}/") or is_for_tests(src / file):
            continue
        used.add(file)
        waiting += re.findall(r'^#include "([^"]+)"', (src / file).read_text(encoding="utf-8"), re.M)
    return sorted(src / file for file in used)


def all_mutants(root, folders):
    mutants = []
    for folder in folders:
        for path in files_in_use(root / "src", folder):
            for line, column, operator in operators_in(path.read_text(encoding="utf-8")):
                for replacement in REPLACEMENTS[operator]:
                    file = str(path.relative_to(root))
                    mutants.append(Mutant(file, line, column, operator, replacement))
    return mutants


def spoiled(text, mutant):
    lines = text.split("\n")
    line = lines[mutant.line - 1]
    begin = mutant.column - 1
    if line[begin : begin + len(mutant.operator)] != mutant.operator:
        raise ValueError(f"{mutant.file}:{mutant.line} is not as it was when the mutant was drawn")
    lines[mutant.line - 1] = line[:begin] + mutant.replacement + line[begin + len(mutant.operator) :]
    return "\n".join(lines)


def folders_above(folder, architecture):
    """The folder itself, then those whose code includes it, the nearest first, each with tests of its own."""
    above = [name for name, rules in architecture["folders"].items() if folder in rules["includes"]]
    return [folder] + [name for name in above if name not in BESIDE_SRC]


class Workshop:
    """A copy of the sources, built once, in which one file at a time is spoiled and mended."""

    def __init__(self, root, jobs):
        self.root = root
        self.copy = root / "build/mutants/copy"
        self.build = root / "build/mutants/build"
        self.jobs = jobs

    def prepare(self):
        # Only what differs is copied, so that what was built of the rest stays.
        self.copy.mkdir(parents=True, exist_ok=True)
        listed = subprocess.run(["git", "ls-files", "-z"], cwd=self.root, capture_output=True, check=True)
        wanted = [name for name in listed.stdout.decode().split("\0") if name and not name.startswith("web/test/")]
        for name in wanted:
            new = (self.root / name).read_bytes()
            old = self.copy / name
            if not old.exists() or old.read_bytes() != new:
                old.parent.mkdir(parents=True, exist_ok=True)
                old.write_bytes(new)
                shutil.copymode(self.root / name, old)
        pages = self.copy / "build/web"
        pages.parent.mkdir(exist_ok=True)
        shutil.copytree(self.root / "build/web", pages, dirs_exist_ok=True)
        words = ["cmake", "-S", self.copy, "-B", self.build, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Debug"]
        words += ["-DCMAKE_CXX_FLAGS_DEBUG=-O1", "-DKEENFALL_TESTS=ON"]
        subprocess.run(words, check=True, stdout=subprocess.DEVNULL)

    def built(self, program):
        words = ["cmake", "--build", self.build, "--parallel", str(self.jobs), "--target", program]
        return subprocess.run(words, capture_output=True, text=True).returncode == 0

    def passes(self, program):
        words = [self.build / program, "--gtest_fail_fast", "--gtest_brief=1"]
        environment = {**os.environ, "TMPDIR": str(self.root / "build/mutants/scratch")}
        Path(environment["TMPDIR"]).mkdir(exist_ok=True)
        with subprocess.Popen(
            words,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            env=environment,
            start_new_session=True,
        ) as tests:
            try:
                return tests.wait(timeout=SECONDS_PER_TEST_PROGRAM) == 0
            except subprocess.TimeoutExpired:
                return False
            finally:
                if tests.poll() is None:
                    os.killpg(tests.pid, signal.SIGKILL)

    def fate(self, mutant, programs):
        """What became of it: "killed by PROGRAM", "survived" or "does not compile"."""
        path = self.copy / mutant.file
        sound = path.read_text(encoding="utf-8")
        path.write_text(spoiled(sound, mutant), encoding="utf-8")
        try:
            for program in programs:
                if not self.built(program):
                    return "does not compile"
                if not self.passes(program):
                    return f"killed by {program}"
            return "survived"
        finally:
            path.write_text(sound, encoding="utf-8")


def kept_results(file, commit):
    """Results of an earlier run of the same commit; those of another are begun anew."""
    if not file.exists():
        return []
    lines = [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines() if line]
    return [line for line in lines if line["commit"] == commit]


def programs_for(folder, architecture, root):
    names = folders_above(folder, architecture)
    has_tests = [n for n in names if "keenfall_tests(" in (root / f"src/{n}/CMakeLists.txt").read_text()]
    return [f"keenfall_{name}_test" for name in has_tests]


def summary(results):
    tried = [r for r in results if r["fate"] != "does not compile"]
    killed = [r for r in tried if r["fate"].startswith("killed")]
    yield ""
    for folder in sorted({r["file"].split("/")[1] for r in tried}):
        mine = [r for r in tried if r["file"].split("/")[1] == folder]
        yield f"  {folder:<12}{sum(r in killed for r in mine):>4} of {len(mine)} killed"
    for r in tried:
        if r["fate"] == "survived":
            yield f"  survived: {r['file']}:{r['line']}:{r['column']}  {r['operator']} became {r['replacement']}"
    share = 100 * len(killed) / max(1, len(tried))
    yield f"{len(killed)} of {len(tried)} mutants killed ({share:.1f} %)"


def main():
    root = Path(__file__).resolve().parent.parent
    architecture = tomllib.loads((root / "tools/architecture.toml").read_text(encoding="utf-8"))
    engine = architecture["engine"]["folders"]
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--folder", action="append", choices=engine)
    parser.add_argument("--list", action="store_true", help="only name the mutants that would be tried")
    asked = parser.parse_args()

    drawn = all_mutants(root, asked.folder or engine)
    random.Random(asked.seed).shuffle(drawn)
    print(f"{len(drawn)} possible mutants; {asked.count} are tried, in an order drawn by seed {asked.seed}")
    if asked.list:
        for m in drawn[: asked.count]:
            print(f"  {m.file}:{m.line}:{m.column}  {m.operator} becomes {m.replacement}")
        return 0

    commit = subprocess.run(
        ["git", "rev-parse", "HEAD"], cwd=root, capture_output=True, text=True, check=True
    ).stdout.strip()
    name = "-".join([str(asked.seed), *(asked.folder or [])])
    file = root / f"build/mutants/results-{name}.jsonl"
    workshop = Workshop(root, jobs=os.cpu_count() or 1)
    workshop.prepare()
    results = kept_results(file, commit)
    file.write_text("".join(json.dumps(r) + "\n" for r in results), encoding="utf-8")
    done = {(r["file"], r["line"], r["column"], r["replacement"]) for r in results}
    began = time.monotonic()
    fresh = 0
    for mutant in drawn:
        tried = sum(r["fate"] != "does not compile" for r in results)
        if tried >= asked.count:
            break
        if (mutant.file, mutant.line, mutant.column, mutant.replacement) in done:
            continue
        programs = programs_for(mutant.file.split("/")[1], architecture, root)
        if not fresh:
            for program in {p for f in engine for p in programs_for(f, architecture, root)}:
                if not workshop.built(program):
                    print(f"mutants: {program} does not build even unspoiled", file=sys.stderr)
                    return 1
        fate = workshop.fate(mutant, programs)
        results.append({**asdict(mutant), "fate": fate, "commit": commit})
        with file.open("a", encoding="utf-8") as out:
            out.write(json.dumps(results[-1]) + "\n")
        fresh += 1
        left_min = (time.monotonic() - began) / fresh * (asked.count - tried - 1) / 60
        place = f"{mutant.file}:{mutant.line}"
        print(f"{tried + 1:>4} {place:<56} {mutant.operator:>2} to {mutant.replacement:<2}  {fate}; some {left_min:.0f} min left", flush=True)
    print("\n".join(summary(results)))
    return 0


if __name__ == "__main__":
    sys.exit(main())
