#!/usr/bin/env python3
"""Checks that sources under src/ and in the folders beside it include only what tools/architecture.toml lets them.

Prints one line per breach, with file and line, and exits 1 when there is any; exits 0 with one line
otherwise. `check_includes.py [PROJECT_FOLDER]` checks another folder than the one it stands in.
"""

import re
import sys
import tomllib
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

INCLUDE = re.compile(r'^\s*#\s*include\s*(?:"([^"]+)"|<([^>]+)>)')
BESIDE_SRC = ("benchmarks", "trust")  # folders that obey the rules and lie at the root; all others are in src/
STANDARD = re.compile(r"^[a-z0-9_]+$")  # <vector>, <cmath>: no folder, no ending


@dataclass(frozen=True)
class Include:
    file: str  # with its folder, "trials/edge.cpp"
    line: int
    target: str
    quoted: bool


def folder_of(file):
    return PurePosixPath(file).parts[0]


def place_of(where):
    """As a person looks for it from the root: "src/trials/edge.cpp:7", "benchmarks/main.cpp:3"."""
    return where if folder_of(where) in BESIDE_SRC else f"src/{where}"


def is_test(file):
    return PurePosixPath(file).stem.endswith("_test")


def is_header(file):
    return file.endswith(".h")


def includes_in(file, text):
    """Every include of a file; block comments are blanked out so that line numbers stay."""
    text = re.sub(r"/\*.*?\*/", lambda found: "\n" * found.group().count("\n"), text, flags=re.S)
    for number, line in enumerate(text.splitlines(), start=1):
        if found := INCLUDE.match(line):
            quoted, angled = found.groups()
            yield Include(file, number, quoted or angled, quoted is not None)


def library_of(target, libraries):
    for name, patterns in libraries.items():
        for pattern in patterns:
            if target == pattern or (pattern.endswith("/") and target.startswith(pattern)):
                return name
    return None


def path_round(graph):
    """A closed path through a graph {node: [nodes]}, first node repeated at the end; [] if none."""
    done, path = set(), []

    def visit(node):
        if node in path:
            return path[path.index(node):] + [node]
        if node in done:
            return []
        path.append(node)
        for following in graph.get(node, []):
            if found := visit(following):
                return found
        path.pop()
        done.add(node)
        return []

    for node in sorted(graph):
        if found := visit(node):
            return found
    return []


class Checker:
    def __init__(self, architecture, files):
        """files: {path from the folder on, "trials/edge.cpp": text}, CMakeLists.txt included."""
        self.libraries = architecture.get("libraries", {})
        self.folders = architecture.get("folders", {})
        self.engine = architecture.get("engine", {})
        self.test_libraries = architecture.get("tests", {}).get("libraries", [])
        self.files = files
        self.sources = sorted(f for f in files if f.endswith((".h", ".cpp")))
        self.breaches = []

    def run(self):
        self.check_architecture()
        self.check_folders()
        for file in self.sources:
            if folder_of(file) in self.folders:
                for include in includes_in(file, self.files[file]):
                    self.check_include(include)
        self.check_file_cycles()
        self.check_lists()
        return self.breaches

    def breach(self, where, sentence):
        self.breaches.append(f"{place_of(where)}: {sentence}")

    def check_architecture(self):
        graph = {name: rule.get("includes", []) for name, rule in self.folders.items()}
        for name, others in graph.items():
            for other in others:
                if other not in self.folders:
                    self.breaches.append(
                        f"tools/architecture.toml: {name} includes {other}, which is not listed")
        if around := path_round(graph):
            self.breaches.append(
                f"tools/architecture.toml: the folders go round in a circle: {' -> '.join(around)}")

    def check_folders(self):
        for folder in sorted({folder_of(f) for f in self.sources} - set(self.folders)):
            self.breach(folder, "this folder is not listed in tools/architecture.toml")

    def check_include(self, include):
        if include.quoted:
            self.check_project_include(include)
        elif STANDARD.match(include.target):
            self.check_standard_include(include)
        else:
            self.check_library_include(include)

    def check_project_include(self, include):
        where = f"{include.file}:{include.line}"
        if include.target not in self.files:
            self.breach(where, f'"{include.target}" is not a file under src/ '
                        "(write the folder too; libraries go in angle brackets)")
            return
        own, other = folder_of(include.file), folder_of(include.target)
        if is_test(include.target):
            if not (is_test(include.file) and is_header(include.target)):
                self.breach(where, f"includes a test, {include.target}")
        elif is_header(include.target) and not self.is_listed(include.target):
            if own != other:
                self.breach(where, f"{include.target} is private to {other}: "
                            f"{place_of(other)}/CMakeLists.txt does not list it")
            elif is_header(include.file) and self.is_listed(include.file):
                self.breach(where, f"a public header includes a private one, {include.target}")
        if own != other and other not in self.folders[own].get("includes", []):
            self.breach(where, f"{own} may not include {other} ({include.target})")

    def check_standard_include(self, include):
        if folder_of(include.file) not in self.engine.get("folders", []) or is_test(include.file):
            return
        allowed = self.engine.get("exceptions", {}).get(include.file, [])
        if include.target in self.engine.get("forbidden", []) and include.target not in allowed:
            self.breach(f"{include.file}:{include.line}",
                        f"the engine has no file, clock, thread or terminal (<{include.target}>)")

    def check_library_include(self, include):
        where = f"{include.file}:{include.line}"
        library = library_of(include.target, self.libraries)
        if library is None:
            self.breach(where, f"<{include.target}> belongs to no library that is listed")
            return
        rule = self.folders[folder_of(include.file)]
        if is_header(include.file) and self.is_listed(include.file):
            allowed = rule.get("header_libraries", [])
            place = f"public headers of {folder_of(include.file)}"
        else:
            allowed = list(rule.get("libraries", []))
            place = folder_of(include.file)
            if is_test(include.file):
                allowed += self.test_libraries + rule.get("test_libraries", [])
                place = f"tests of {place}"
        if library not in allowed:
            self.breach(where, f"{place} may not include {library} (<{include.target}>)")

    def check_file_cycles(self):
        graph = {f: [i.target for i in includes_in(f, self.files[f]) if i.quoted]
                 for f in self.sources}
        if around := path_round(graph):
            self.breach(around[0], f"includes itself: {' -> '.join(around)}")

    def is_listed(self, file):
        """Whether the folder's CMakeLists.txt names the file. A header it does not name is private."""
        folder = folder_of(file)
        listing = re.sub(r"#.*", "", self.files.get(f"{folder}/CMakeLists.txt", ""))
        return str(PurePosixPath(file).relative_to(folder)) in re.split(r"[\s()]+", listing)

    def check_lists(self):
        """A source that no CMakeLists.txt names is never compiled, nor its tests ever run."""
        for file in self.sources:
            if not is_header(file) and not self.is_listed(file):
                self.breach(file, f"is not listed in {place_of(folder_of(file))}/CMakeLists.txt")


def read_sources(project):
    files = {}
    for root, below in [(project / "src", "*"), *((project, name) for name in BESIDE_SRC)]:
        for path in (found for folder in root.glob(below) for found in folder.rglob("*")):
            if path.suffix in (".h", ".cpp") or path.name == "CMakeLists.txt":
                files[path.relative_to(root).as_posix()] = path.read_text(encoding="utf-8")
    return files


def main(arguments):
    project = Path(arguments[0]) if arguments else Path(__file__).resolve().parent.parent
    with open(project / "tools" / "architecture.toml", "rb") as stream:
        architecture = tomllib.load(stream)
    checker = Checker(architecture, read_sources(project))
    breaches = checker.run()
    for line in breaches:
        print(line)
    if breaches:
        print(f"{len(breaches)} breaches of the include rules (docs/architecture.md says why)")
        return 1
    print(f"{len(checker.sources)} files keep the include rules")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
