"""Tests of mutants.py: what may be spoiled, how, and which tests then have to notice."""

import tempfile
import unittest
from pathlib import Path

from mutants import (
    Mutant,
    Results,
    all_mutants,
    code_only,
    fails_unspoiled,
    folders_above,
    listed_for_use,
    operators_in,
    spoiled,
    summary,
)


class WhatMayBeSpoiled(unittest.TestCase):
    def test_operators_between_blanks_are_found_with_their_place(self):
        found = list(operators_in("int a;\nreturn a * b <= c;\n"))

        self.assertEqual(found, [(2, 10, "*"), (2, 14, "<=")])

    def test_templates_pointers_and_references_are_no_operators(self):
        text = "std::vector<double> f(const int* p, T&& x);\ntemplate <class T>\n#include <map>\n"

        self.assertEqual(list(operators_in(text)), [])

    def test_comments_and_words_in_quotes_are_left_alone(self):
        text = '// a + b\nconst auto s = "a + b";  /* c < d */\nx = a + b;\n'

        self.assertEqual(list(operators_in(text)), [(3, 7, "+")])

    def test_blanking_out_keeps_every_place(self):
        text = 'a = "x\\"y" + b; // + c\nd'

        self.assertEqual(len(code_only(text)), len(text))
        self.assertEqual(code_only(text).index("+"), text.index("+"))

    def test_an_operator_at_the_end_of_a_line_counts(self):
        self.assertEqual(list(operators_in("x = a &&\n    b;\n")), [(1, 7, "&&")])


class WhatIsInUse(unittest.TestCase):
    CMAKE = """keenfall_folder(low
  HEADERS a.h made_a.h   # b.h is for a.cpp alone
  SOURCES a.cpp deep/c.cpp
  DEPENDS base)
keenfall_tests(low SOURCES a_test.cpp deep/made_up.cpp
               LONG_SOURCES deep/made_up.cpp)
"""

    def test_only_what_the_folder_itself_is_built_of_is_listed(self):
        self.assertEqual(listed_for_use(self.CMAKE), {"a.h", "made_a.h", "a.cpp", "deep/c.cpp"})
        self.assertEqual(listed_for_use("keenfall_tests(low SOURCES a_test.cpp)"), set())

    def test_what_is_compiled_into_tests_alone_is_not_spoiled(self):
        files = {
            "CMakeLists.txt": self.CMAKE,
            "a.h": "x = a + b;\n",
            "a.cpp": '#include "low/a.h"\n#include "low/b.h"\n#include "high/h.h"\n#include <map>\nx = a + b;\n',
            "b.h": "x = a + b;\n",
            "made_a.h": "x = a + b;\n",
            "deep/c.cpp": "x = a + b;\n",
            "deep/made_up.h": "x = a + b;\n",
            "deep/made_up.cpp": '#include "low/deep/made_up.h"\nx = a + b;\n',
            "a_test.cpp": '#include "low/deep/made_up.h"\nx = a + b;\n',
        }
        with tempfile.TemporaryDirectory() as root:
            for name, text in files.items():
                path = Path(root) / "src/low" / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, encoding="utf-8")

            drawn = all_mutants(Path(root), ["low"])

        self.assertEqual(
            [mutant.file for mutant in drawn],
            ["src/low/a.cpp", "src/low/a.h", "src/low/b.h", "src/low/deep/c.cpp"],
        )


class Spoiling(unittest.TestCase):
    def test_only_the_named_operator_changes(self):
        mutant = Mutant("src/a/a.cpp", 2, 7, "<", ">=")

        self.assertEqual(spoiled("p < q\nx = a < b < c;\n", mutant), "p < q\nx = a >= b < c;\n")

    def test_a_file_that_has_changed_meanwhile_is_refused(self):
        with self.assertRaisesRegex(ValueError, "src/a/a.cpp:1 is not as it was"):
            spoiled("x = a + b;\n", Mutant("src/a/a.cpp", 1, 3, "<", ">="))


class WhoMustNotice(unittest.TestCase):
    def test_the_folder_itself_comes_first_then_those_above(self):
        architecture = {
            "folders": {
                "low": {"includes": []},
                "mid": {"includes": ["low"]},
                "aside": {"includes": []},
                "high": {"includes": ["low", "mid"]},
                "benchmarks": {"includes": ["low"]},
            }
        }

        self.assertEqual(folders_above("low", architecture), ["low", "mid", "high"])
        self.assertEqual(folders_above("mid", architecture), ["mid", "high"])


class Programs:
    """Stands in for the workshop: which programs build, and which pass."""

    def __init__(self, building, passing):
        self.built = building.__contains__
        self.passes = passing.__contains__


class ProgramsOfTests(unittest.TestCase):
    def test_that_fail_unspoiled_are_named(self):
        self.assertEqual(fails_unspoiled(Programs({"a", "b"}, {"a"}), {"a", "b"}), "b fails even unspoiled")
        self.assertEqual(fails_unspoiled(Programs({"a"}, {"a"}), {"a", "b"}), "b does not build even unspoiled")

    def test_that_pass_are_sound(self):
        self.assertIsNone(fails_unspoiled(Programs({"a"}, {"a"}), {"a"}))


class WhatIsKept(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.file = Path(folder.name) / "results.jsonl"
        self.mutant = Mutant("src/low/a.cpp", 1, 2, "+", "-")

    def test_the_last_word_on_a_mutant_counts(self):
        results = Results(self.file, "abc")
        results.keep(self.mutant, "survived the tests of its folder")
        results.keep(self.mutant, "killed by keenfall_high_test")

        self.assertEqual(Results(self.file, "abc").fates, {self.mutant: "killed by keenfall_high_test"})

    def test_what_was_found_of_another_commit_does_not_count(self):
        Results(self.file, "abc").keep(self.mutant, "survived")

        self.assertEqual(Results(self.file, "def").tried(), 0)


class TheClosingLines(unittest.TestCase):
    def test_mutants_that_do_not_compile_do_not_count(self):
        made = {"file": "src/low/a.cpp", "line": 1, "column": 2, "operator": "+", "replacement": "-"}
        fates = ["killed by keenfall_low_test", "survived", "does not compile"]

        lines = list(summary([{**made, "fate": fate} for fate in fates]))

        self.assertEqual(lines[-1], "1 of 2 mutants killed (50.0 %)")
        self.assertIn("  survived: src/low/a.cpp:1:2  + became -", lines)


if __name__ == "__main__":
    unittest.main()
