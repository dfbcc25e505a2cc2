import unittest

from coverage_table import counted_by_folder, in_words


def a_file(name, lines, covered, branches=0, branches_covered=0):
    return {
        "filename": name,
        "summary": {
            "lines": {"count": lines, "covered": covered},
            "branches": {"count": branches, "covered": branches_covered},
        },
    }


class CoverageTable(unittest.TestCase):
    def test_files_of_a_folder_are_summed(self):
        files = [a_file("/a b/src/base/x.cpp", 10, 9, 4, 1), a_file("/a b/src/base/y.h", 10, 10)]

        counts = counted_by_folder(files, ["base"])

        self.assertEqual(
            in_words(counts["base"]), "lines 95.0 % (19 of 20), branches 25.0 % (1 of 4)"
        )

    def test_tests_and_other_folders_do_not_count(self):
        files = [a_file("/src/base/x_test.cpp", 10, 10), a_file("/src/cli/x.cpp", 5, 5)]

        counts = counted_by_folder(files, ["base"])

        self.assertEqual(in_words(counts["base"]), "lines none (0 of 0), branches none (0 of 0)")


if __name__ == "__main__":
    unittest.main()
