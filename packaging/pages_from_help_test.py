import subprocess
import tempfile
import unittest
from pathlib import Path

import pages_from_help as pages

HELP = """keenfall judge TABLE... [options]

Says which edge stays keen longer,
and how sure that is.

How to judge
  --worth-it=1.5          a ratio of lasting below which you would not act
                          (above 1)
  --stop-reading=400gf, --stop
                          compare all edges at this one reading
  keenfall take FILE.keen TABLE...
                          put tables into a notebook
  --json, --json=FILE     the whole answer

Exit code 0: done. 2: an option
is wrong.
"""


class PartsOfAHelpText(unittest.TestCase):
    def setUp(self):
        self.parts = pages.parts_of(HELP)

    def test_paragraphs_are_joined(self):
        self.assertEqual(
            self.parts[0].paragraphs,
            ["keenfall judge TABLE... [options]", "Says which edge stays keen longer, and how sure that is."],
        )

    def test_entries_stand_under_their_heading(self):
        self.assertEqual(self.parts[1].heading, "How to judge")
        self.assertEqual(
            self.parts[1].entries,
            [
                ("--worth-it=1.5", "a ratio of lasting below which you would not act (above 1)"),
                ("--stop-reading=400gf, --stop", "compare all edges at this one reading"),
                ("keenfall take FILE.keen TABLE...", "put tables into a notebook"),
                ("--json, --json=FILE", "the whole answer"),
            ],
        )

    def test_what_follows_entries_is_a_paragraph_again(self):
        self.assertEqual(self.parts[2].paragraphs, ["Exit code 0: done. 2: an option is wrong."])

    def test_options_are_named_once(self):
        self.assertEqual(
            list(pages.options_of(self.parts)), ["--worth-it=", "--stop-reading=", "--stop", "--json", "--json="]
        )


class WhatIsMadeOfThem(unittest.TestCase):
    def test_a_line_of_roff_never_begins_as_a_command(self):
        self.assertEqual(pages.roff(".keen is not a request"), "\\&.keen is not a request")

    def test_a_long_paragraph_is_broken_and_no_line_begins_as_a_command(self):
        lines = pages.roff("an option " * 20 + "of the file .keen " * 20).splitlines()
        self.assertLessEqual(max(map(len, lines)), 78)
        self.assertFalse([line for line in lines if line.startswith(".")])

    def test_an_option_takes_a_value_everywhere_if_it_does_somewhere(self):
        found = pages.options_by_command(
            {
                "judge": pages.parts_of("keenfall judge\n\n  --kind=NAME             the kind\n  --json, --json=FILE     all\n"),
                "take": pages.parts_of("keenfall take\n\n  --kind, --same          as with judge\n"),
            }
        )
        self.assertEqual(list(found["take"]), ["--kind=", "--same"])
        self.assertEqual(list(found["judge"]), ["--kind=", "--json", "--json="])


class CompletedByBash(unittest.TestCase):
    def completed(self, *words):
        by_command = {
            "judge": pages.parts_of(HELP),
            "steels": pages.parts_of("keenfall steels [NAME]\n"),
            "help": [pages.Part(paragraphs=["keenfall help [COMMAND]"])],
        }
        asked = f"""{pages.bash_completion(by_command)}
            compopt() {{ :; }}
            COMP_WORDS=(keenfall "$@") COMP_CWORD=$#
            _keenfall keenfall "${{@: -1}}"; printf '%s\\n' "${{COMPREPLY[@]}}" """
        with tempfile.TemporaryDirectory() as folder:
            for name in ("a bench.keen", "b.CSV", "c.txt"):
                Path(folder, name).touch()
            Path(folder, "trials").mkdir()
            done = subprocess.run(
                ["bash", "-c", asked, "bash", *words], capture_output=True, text=True, check=True, cwd=folder
            )
        return done.stdout.splitlines()

    def test_commands(self):
        self.assertEqual(self.completed("ju"), ["judge"])
        self.assertEqual(self.completed("help", "st"), ["steels"])

    def test_options(self):
        self.assertEqual(self.completed("judge", "--sto"), ["--stop-reading=", "--stop"])

    def test_notebooks_tables_and_folders(self):
        self.assertEqual(sorted(self.completed("judge", "")), ["a bench.keen", "b.CSV", "trials"])

    def test_no_files_where_none_are_taken_and_all_of_them_as_a_value(self):
        self.assertEqual(self.completed("steels", ""), [""])
        self.assertEqual(self.completed("judge", "--json", "=", "c"), [""])  # left to bash: any file


if __name__ == "__main__":
    unittest.main()
