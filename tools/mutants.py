#!/usr/bin/env python3
"""Are the tests good? Spoils one operator of the engine at a time and looks whether a test notices.

    mutants.py [--count=200] [--seed=1] [--folder=verdicts ...] [--list]

A mutant is one arithmetic, comparing or joining operator replaced by another, drawn by seed from all such operators of
the engine's sources (tools/architecture.toml, [engine]); what only tests are built of is left alone. In a copy of the
committed sources under build/mutants it is built, and the tests of its own folder are run. Those that survive them all
are tried again, once all have been tried, by the tests of the folders above, the nearest first, until one fails: that
takes minutes for each. A mutant is killed by a failing test, a crash or a time-out; one that does not compile is said
apart, and another drawn. Test programs that fail unspoiled would kill anything, so they are tried before.

Results are lines of JSON in build/mutants/results-SEED.jsonl, kept for the commit they were made of, so that an
interrupted run goes on where it stopped. The last lines say how many were killed and list the survivors, to be looked at.
Exits 0 when all were tried, whatever the share; 2 on a wrong command line.
"""

import argparse
import json
import os
import random
import re
import resource
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
CPU_SECONDS_PER_TEST_PROGRAM = 400  # a loop without end; others' work on the machine does not count
SECONDS_PER_TEST_PROGRAM = 3600  # waiting for ever
SURVIVED = "survived"  # all tests there are
SURVIVED_OWN = "survived the tests of its folder"


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

    @staticmethod
    def limit():
        resource.setrlimit(resource.RLIMIT_CPU, (CPU_SECONDS_PER_TEST_PROGRAM, CPU_SECONDS_PER_TEST_PROGRAM + 10))

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
            preexec_fn=self.limit,
        ) as tests:
            try:
                return tests.wait(timeout=SECONDS_PER_TEST_PROGRAM) == 0
            except subprocess.TimeoutExpired:
                return False
            finally:
                if tests.poll() is None:
                    os.killpg(tests.pid, signal.SIGKILL)

    def fate(self, mutant, programs):
        """What became of it: "killed by PROGRAM", SURVIVED or "does not compile"."""
        path = self.copy / mutant.file
        sound = path.read_text(encoding="utf-8")
        path.write_text(spoiled(sound, mutant), encoding="utf-8")
        try:
            for program in programs:
                if not self.built(program):
                    return "does not compile"
                if not self.passes(program):
                    return f"killed by {program}"
            return SURVIVED
        finally:
            path.write_text(sound, encoding="utf-8")


def folder_of(file):
    return file.split("/")[1]


def programs_for(folder, architecture, root):
    names = folders_above(folder, architecture)
    has_tests = [n for n in names if "keenfall_tests(" in (root / f"src/{n}/CMakeLists.txt").read_text()]
    return [f"keenfall_{name}_test" for name in has_tests]


def summary(results):
    tried = [r for r in results if r["fate"] != "does not compile"]
    killed = [r for r in tried if r["fate"].startswith("killed")]
    yield ""
    for folder in sorted({folder_of(r["file"]) for r in tried}):
        mine = [r for r in tried if folder_of(r["file"]) == folder]
        own = sum(r["fate"] == f"killed by keenfall_{folder}_test" for r in mine)
        yield f"  {folder:<12}{sum(r in killed for r in mine):>4} of {len(mine)} killed, {own} by tests of that folder"
    for r in tried:
        if r not in killed:
            yield f"  {r['fate']}: {r['file']}:{r['line']}:{r['column']}  {r['operator']} became {r['replacement']}"
    share = 100 * len(killed) / max(1, len(tried))
    yield f"{len(killed)} of {len(tried)} mutants killed ({share:.1f} %)"


class Results:
    """What became of each mutant of one commit, kept in a file of JSON lines; the last line of a mutant counts."""

    def __init__(self, file, commit):
        self.file = file
        self.commit = commit
        self.fates = {}
        lines = file.read_text(encoding="utf-8").splitlines() if file.exists() else []
        for line in map(json.loads, lines):
            if line.pop("commit") == commit:
                fate = line.pop("fate")
                self.fates[Mutant(**line)] = fate
        file.write_text("".join(self._line(m) for m in self.fates), encoding="utf-8")

    def _line(self, mutant):
        return json.dumps({**asdict(mutant), "fate": self.fates[mutant], "commit": self.commit}) + "\n"

    def keep(self, mutant, fate):
        self.fates[mutant] = fate
        with self.file.open("a", encoding="utf-8") as out:
            out.write(self._line(mutant))

    def tried(self):
        return sum(fate != "does not compile" for fate in self.fates.values())

    def survivors(self):
        """Those that only the tests of their own folder were tried on."""
        return [mutant for mutant, fate in self.fates.items() if fate == SURVIVED_OWN]

    def as_rows(self):
        return [{**asdict(mutant), "fate": fate} for mutant, fate in self.fates.items()]


class Telling:
    """One line for each mutant, with the time that is left."""

    def __init__(self, left):
        self.left = left
        self.done = 0
        self.began = time.monotonic()

    def tell(self, mutant, fate):
        self.done += 1
        self.left -= 1
        left_min = (time.monotonic() - self.began) / self.done * max(0, self.left) / 60
        place = f"{mutant.file}:{mutant.line}"
        change = f"{mutant.operator:>2} to {mutant.replacement:<2}"
        print(f"{place:<56} {change}  {fate}; some {left_min:.0f} min left", flush=True)


def fails_unspoiled(workshop, programs):
    """The first of the programs that is of no use, with the reason; None where all are sound."""
    for program in sorted(programs):
        if not workshop.built(program):
            return f"{program} does not build even unspoiled"
        if not workshop.passes(program):
            return f"{program} fails even unspoiled"
    return None


def try_own_folders(workshop, results, drawn, count, programs_of):
    telling = Telling(count - results.tried())
    for mutant in drawn:
        if results.tried() >= count:
            return
        if mutant in results.fates:
            continue
        fate = workshop.fate(mutant, programs_of(mutant)[:1])
        results.keep(mutant, SURVIVED_OWN if fate == SURVIVED else fate)
        telling.tell(mutant, results.fates[mutant])


def try_folders_above(workshop, results, programs_of):
    left = results.survivors()
    telling = Telling(len(left))
    for mutant in left:
        results.keep(mutant, workshop.fate(mutant, programs_of(mutant)[1:]))
        telling.tell(mutant, results.fates[mutant])


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

    def programs_of(mutant):
        return programs_for(folder_of(mutant.file), architecture, root)

    workshop = Workshop(root, jobs=os.cpu_count() or 1)
    workshop.prepare()
    results = Results(root / f"build/mutants/results-{name}.jsonl", commit)
    problem = fails_unspoiled(workshop, {programs_of(m)[0] for m in drawn[: asked.count]})
    if not problem:
        try_own_folders(workshop, results, drawn, asked.count, programs_of)
        problem = fails_unspoiled(workshop, {p for m in results.survivors() for p in programs_of(m)[1:]})
    if problem:
        print(f"mutants: {problem}", file=sys.stderr)
        return 1
    try_folders_above(workshop, results, programs_of)
    print("\n".join(summary(results.as_rows())))
    return 0


if __name__ == "__main__":
    sys.exit(main())
