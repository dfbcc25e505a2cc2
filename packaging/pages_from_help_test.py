import subprocess
import unittest

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

    def test_bash_takes_the_completion(self):
        script = pages.bash_completion({"judge": pages.parts_of(HELP), "help": [pages.Part()]})
        asked = f"{script}\nCOMP_WORDS=(keenfall ju) COMP_CWORD=1; _keenfall; echo ${{COMPREPLY[*]}}"
        done = subprocess.run(["bash", "-c", asked], capture_output=True, text=True, check=True)
        self.assertEqual(done.stdout.strip(), "judge")


if __name__ == "__main__":
    unittest.main()
