"""Tests of check_includes.py, on small made-up projects of two floors: `low` and, above it, `high`."""

import tempfile
import unittest
from pathlib import Path

from check_includes import Checker, read_sources

ARCHITECTURE = {
    "libraries": {"eigen": ["Eigen/"], "googletest": ["gtest/"], "json": ["nlohmann/"]},
    "tests": {"libraries": ["googletest"]},
    "engine": {
        "folders": ["low"],
        "forbidden": ["thread", "fstream"],
        "exceptions": {"low/run.cpp": ["thread"]},
    },
    "folders": {
        "low": {"includes": [], "libraries": ["eigen"]},
        "high": {"includes": ["low"], "test_libraries": ["json"]},
    },
}


def breaches(files, architecture=None):
    """files: {"low/a.cpp": text}. Every file is listed in its CMakeLists unless that is given."""
    files = dict(files)
    for folder in {name.split("/")[0] for name in files}:
        names = [n.removeprefix(f"{folder}/") for n in files if n.startswith(f"{folder}/")]
        files.setdefault(f"{folder}/CMakeLists.txt", f"keenfall_folder({' '.join(names)})\n")
    return Checker(architecture or ARCHITECTURE, files).run()


class CheckIncludes(unittest.TestCase):
    def test_a_folder_may_include_itself_and_what_lies_below(self):
        found = breaches({
            "low/a.h": "#pragma once\n#include <vector>\n",
            "high/b.h": '#include "low/a.h"\n',
            "high/b.cpp": '#include "high/b.h"\n\n#include "low/a.h"\n',
        })
        self.assertEqual(found, [])

    def test_an_include_upwards_is_named_with_file_and_line(self):
        found = breaches({"low/a.cpp": '\n#include "high/b.h"\n', "high/b.h": ""})
        self.assertEqual(found, ["src/low/a.cpp:2: low may not include high (high/b.h)"])

    def test_a_folder_nobody_listed_is_refused(self):
        found = breaches({"attic/a.cpp": ""})
        self.assertEqual(found, ["src/attic: this folder is not listed in tools/architecture.toml"])

    def test_a_library_is_welcome_only_in_its_folders(self):
        text = "#include <Eigen/Dense>\n"
        self.assertEqual(breaches({"low/a.cpp": text}), [])
        self.assertEqual(breaches({"high/a.cpp": text}),
                         ["src/high/a.cpp:1: high may not include eigen (<Eigen/Dense>)"])

    def test_a_library_stays_out_of_public_headers(self):
        found = breaches({"low/a.h": "#include <Eigen/Core>\n"})
        self.assertEqual(found, [
            "src/low/a.h:1: public headers of low may not include eigen (<Eigen/Core>)"])

    def test_a_header_that_no_list_names_is_private_and_may_include_a_library(self):
        self.assertEqual(breaches({
            "low/pieces.h": "#include <Eigen/Core>\n",
            "low/a.cpp": '#include "low/pieces.h"\n',
            "low/CMakeLists.txt": "keenfall_folder(low SOURCES a.cpp)",
        }), [])

    def test_a_private_header_is_for_its_own_folder_only(self):
        found = breaches({
            "low/pieces.h": "",
            "low/CMakeLists.txt": "",
            "high/b.cpp": '#include "low/pieces.h"\n',
        })
        self.assertEqual(found, ["src/high/b.cpp:1: low/pieces.h is private to low: "
                                 "src/low/CMakeLists.txt does not list it"])

    def test_a_public_header_never_includes_a_private_one(self):
        found = breaches({
            "low/pieces.h": "",
            "low/a.h": '#include "low/pieces.h"\n',
            "low/CMakeLists.txt": "keenfall_folder(low HEADERS a.h)",
        })
        self.assertEqual(found, ["src/low/a.h:1: a public header includes a private one, low/pieces.h"])

    def test_an_unlisted_library_is_refused_even_in_a_test(self):
        found = breaches({"low/a_test.cpp": "#include <sqlite3.h>\n"})
        self.assertEqual(found, ["src/low/a_test.cpp:1: <sqlite3.h> belongs to no library that is listed"])

    def test_test_libraries_are_for_tests_only(self):
        self.assertEqual(breaches({"low/a_test.cpp": "#include <gtest/gtest.h>\n"}), [])
        self.assertEqual(len(breaches({"low/a.cpp": "#include <gtest/gtest.h>\n"})), 1)

    def test_a_folders_own_test_libraries_do_not_spread(self):
        text = "#include <nlohmann/json.hpp>\n"
        self.assertEqual(breaches({"high/a_test.cpp": text}), [])
        self.assertEqual(len(breaches({"low/a_test.cpp": text})), 1)

    def test_a_test_header_is_for_tests_only(self):
        text = '#include "low/a_test.h"\n'
        self.assertEqual(breaches({"low/a_test.h": "", "high/b_test.cpp": text}), [])
        found = breaches({"low/a_test.h": "", "high/b.cpp": text})
        self.assertEqual(found, ["src/high/b.cpp:1: includes a test, low/a_test.h"])

    def test_a_test_is_never_included(self):
        found = breaches({"low/a_test.cpp": "", "high/b_test.cpp": '#include "low/a_test.cpp"\n'})
        self.assertEqual(found, ["src/high/b_test.cpp:1: includes a test, low/a_test.cpp"])

    def test_the_engine_has_no_thread_or_file_of_its_own(self):
        found = breaches({"low/a.cpp": "#include <thread>\n"})
        self.assertEqual(found, [
            "src/low/a.cpp:1: the engine has no file, clock, thread or terminal (<thread>)"])

    def test_an_exception_covers_one_file_and_one_header(self):
        self.assertEqual(breaches({"low/run.cpp": "#include <thread>\n"}), [])
        self.assertEqual(len(breaches({"low/run.cpp": "#include <fstream>\n"})), 1)

    def test_tests_of_the_engine_and_folders_above_it_may_read_files(self):
        self.assertEqual(breaches({"low/a_test.cpp": "#include <fstream>\n"}), [])
        self.assertEqual(breaches({"high/a.cpp": "#include <fstream>\n"}), [])

    def test_headers_that_include_each_other_are_found(self):
        found = breaches({"low/a.h": '#include "low/b.h"\n', "low/b.h": '#include "low/a.h"\n'})
        self.assertEqual(found, ["src/low/a.h: includes itself: low/a.h -> low/b.h -> low/a.h"])

    def test_rules_that_go_round_in_a_circle_are_found(self):
        round_about = {"folders": {"low": {"includes": ["high"]}, "high": {"includes": ["low"]}}}
        self.assertEqual(breaches({}, round_about), [
            "tools/architecture.toml: the folders go round in a circle: high -> low -> high"])

    def test_a_source_its_build_list_forgot_is_found(self):
        found = breaches({"low/a.cpp": "", "low/CMakeLists.txt": "# a.cpp is only in a comment\n"})
        self.assertEqual(found, ["src/low/a.cpp: is not listed in src/low/CMakeLists.txt"])

    def test_a_source_in_a_subfolder_is_listed_by_its_path_within_the_folder(self):
        listed = {"low/curves/a.cpp": "", "low/CMakeLists.txt": "keenfall_folder(low curves/a.cpp)"}
        self.assertEqual(breaches(listed), [])
        listed["low/CMakeLists.txt"] = "keenfall_folder(low a.cpp)"
        self.assertEqual(len(breaches(listed)), 1)

    def test_an_include_without_its_folder_is_refused(self):
        found = breaches({"low/a.h": "", "low/a.cpp": '#include "a.h"\n'})
        self.assertEqual(len(found), 1)
        self.assertIn("write the folder too", found[0])

    def test_includes_in_comments_do_not_count(self):
        text = '// #include "high/b.h"\n/*\n#include "high/b.h"\n*/\n'
        self.assertEqual(breaches({"low/a.cpp": text, "high/b.h": ""}), [])

    def test_a_folder_beside_src_obeys_the_rules_and_is_named_where_it_lies(self):
        rules = {**ARCHITECTURE, "folders": {**ARCHITECTURE["folders"], "benchmarks": {"includes": ["low"]}}}
        found = breaches({
            "low/a.h": "",
            "high/b.h": "",
            "benchmarks/c.cpp": '#include "low/a.h"\n#include "high/b.h"\n',
        }, rules)
        self.assertEqual(found, ["benchmarks/c.cpp:2: benchmarks may not include high (high/b.h)"])

    def test_nothing_includes_a_folder_beside_src(self):
        rules = {**ARCHITECTURE, "folders": {**ARCHITECTURE["folders"], "benchmarks": {"includes": ["low"]}}}
        found = breaches({"benchmarks/c.h": "", "high/b.cpp": '#include "benchmarks/c.h"\n'}, rules)
        self.assertIn("src/high/b.cpp:1: high may not include benchmarks (benchmarks/c.h)", found)

    def test_the_sources_of_both_places_are_read_by_their_folders(self):
        with tempfile.TemporaryDirectory() as name:
            project = Path(name)
            for file in ("src/low/a.h", "src/low/CMakeLists.txt", "benchmarks/peers/c.cpp"):
                (project / file).parent.mkdir(parents=True, exist_ok=True)
                (project / file).write_text(file, encoding="utf-8")
            self.assertEqual(read_sources(project), {
                "low/a.h": "src/low/a.h",
                "low/CMakeLists.txt": "src/low/CMakeLists.txt",
                "benchmarks/peers/c.cpp": "benchmarks/peers/c.cpp",
            })


if __name__ == "__main__":
    unittest.main()
