#include "workbench/said_on_a_page.h"

#include "exchange/plain_columns.h"

#include <array>
#include <string>
#include <string_view>
#include <utility>

namespace keenfall::workbench {

namespace {

struct Wording {
  std::string_view of_the_command;
  std::string_view of_a_page;
};

// All that the sentences of exchange and notebook say of options when a table is taken.
constexpr std::array<Wording, 13> kWordings = {{
    {"are decimal marks, say --decimal=comma",
     "are decimal marks, choose the decimal comma under “Read it otherwise”"},
    {"or say --decimal=comma", "or choose the decimal comma under “Read it otherwise”"},
    {"with --kind, or in a column kind", "under “Read it otherwise”, or in a column kind"},
    {", or your own by --define-kind", ""},
    {"Say which with --shape", "Choose which under “Read it otherwise”"},
    {"--shape=long, --shape=wide or --shape=runs",
     "a row a reading, cuts down and runs across, or a line a run"},
    {"; --sheet says which", "; choose which"},
    {", or no --sheet", ", or no sheet chosen"},
    {" (--trial NAME)", ""},
    {": --trial NAME", ""},
    {": keenfall strike", ""},
    {"--kind", "kind"},
    {"--sheet", "sheet"},
}};

void replace_all(std::string& text, const Wording& wording) {
  for (std::size_t at = text.find(wording.of_the_command); at != text.npos;
       at = text.find(wording.of_the_command, at + wording.of_a_page.size())) {
    text.replace(at, wording.of_the_command.size(), wording.of_a_page);
  }
}

// "say so: --column cuts="..."" for whichever column.
void replace_column_option(std::string& text) {
  constexpr std::string_view kBegin = "say so: --column ";
  constexpr std::string_view kEnd = "=\"...\"";
  const std::size_t begin = text.find(kBegin);
  const std::size_t end = begin == text.npos ? begin : text.find(kEnd, begin);
  if (end != text.npos)
    text.replace(begin, end + kEnd.size() - begin, "choose it under “What the columns hold”");
}

}  // namespace

base::Problem said_on_a_page(base::Problem problem) {
  replace_column_option(problem.sentence);
  for (const Wording& wording : kWordings) {
    // What a person wrote is quoted in a sentence, and may hold anything: only whole phrases of
    // ours are long enough to be looked for there.
    if (wording.of_the_command.size() > 10) replace_all(problem.sentence, wording);
    replace_all(problem.accepted, wording);
    if (problem.place.column == wording.of_the_command) {
      problem.place.column = wording.of_a_page;
    }
  }
  if (problem.place.column == "--column") problem.place.column = "columns";
  problem.sentence = exchange::said_plainly(problem.sentence);
  problem.accepted = exchange::said_plainly(problem.accepted);
  return problem;
}

std::vector<base::Problem> said_on_a_page(std::vector<base::Problem> problems) {
  for (base::Problem& problem : problems) problem = said_on_a_page(std::move(problem));
  return problems;
}

}  // namespace keenfall::workbench
