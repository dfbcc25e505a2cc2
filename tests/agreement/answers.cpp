#include "tests/agreement/answers.h"

#include "exchange/long_table.h"

#include <array>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sstream>
#include <stdexcept>

namespace keenfall::agreement {

namespace {

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream rest(line);
  for (std::string cell; std::getline(rest, cell, ',');) cells.push_back(cell);
  return cells;
}

bool is_name(const std::string& column) { return column == "trial" || column == "what"; }

Answer answer_of(const std::vector<std::string>& columns, const std::vector<std::string>& cells) {
  Answer answer;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (columns[i] == "trial") answer.trial = cells.at(i);
    if (columns[i] == "what") answer.what = cells.at(i);
    // R writes NA where a number does not exist: then the name is not there either.
    if (is_name(columns[i]) || cells.at(i) == "NA") continue;
    answer.numbers[columns[i]] = std::stod(cells.at(i));
  }
  return answer;
}

}  // namespace

std::vector<Answer> answers_in(const std::string& file) {
  std::ifstream in(std::string(KEENFALL_SOURCE_DIR "/tests/agreement/") + file);
  std::string line;
  if (!std::getline(in, line)) throw std::runtime_error(file + " cannot be read");
  const std::vector<std::string> columns = cells_of(line);
  std::vector<Answer> answers;
  while (std::getline(in, line)) answers.push_back(answer_of(columns, cells_of(line)));
  return answers;
}

std::vector<Answer> answers_about(const std::string& trial, const std::vector<Answer>& answers) {
  std::vector<Answer> about;
  for (const Answer& answer : answers) {
    if (answer.trial == trial) about.push_back(answer);
  }
  return about;
}

std::vector<std::string> trial_names() {
  std::vector<std::string> names;
  for (int number = 1; number <= 20; ++number) {
    names.push_back((number < 10 ? "trial_0" : "trial_") + std::to_string(number));
  }
  names.push_back("reference");
  return names;
}

trials::Trial trial_named(const std::string& name) {
  const std::string folder = KEENFALL_SOURCE_DIR "/tests/";
  const std::array paths{name == "reference" ? folder + "reference/two_blades_two_media.csv"
                                             : folder + "agreement/trials/" + name + ".csv"};
  auto trial = exchange::take_tables(paths, {});
  if (!trial) throw std::runtime_error(name + " cannot be taken in");
  return std::move(*trial);
}

}  // namespace keenfall::agreement
