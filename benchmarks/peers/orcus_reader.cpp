#include "benchmarks/peers/orcus_reader.h"

#include <orcus/csv_parser.hpp>

#include <charconv>
#include <cstddef>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string_view>
#include <vector>

namespace keenfall::benchmarks {

namespace {

double number_in(std::string_view cell) {
  double number = 0;
  const auto read = std::from_chars(cell.data(), cell.data() + cell.size(), number);
  if (read.ec != std::errc()) throw std::runtime_error("no number: " + std::string(cell));
  return number;
}

// Called by the parser for each row and cell.
class Handler : public orcus::csv_handler {
 public:
  void begin_row() { column_ = 0; }
  void end_row() { is_head_ = false; }

  void cell(const char* text, std::size_t length, bool /*is_transient*/) {
    const std::string_view content(text, length);
    if (is_head_) {
      heads_.emplace_back(content);
    } else if (heads_.at(column_) == "cuts") {
      cuts_.push_back(number_in(content));
    } else if (heads_.at(column_) == "reading") {
      readings_.push_back(number_in(content));
    } else if (heads_.at(column_) == "struck" && !content.empty()) {
      ++struck_;
    }
    ++column_;
  }

  [[nodiscard]] Findings findings() const {
    return {{"readings", static_cast<double>(readings_.size())}, {"struck", struck_}};
  }

 private:
  bool is_head_ = true;
  std::size_t column_ = 0;
  std::vector<std::string> heads_;
  std::vector<double> cuts_;
  std::vector<double> readings_;
  int struck_ = 0;
};

}  // namespace

Findings read_with_orcus(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot be read: " + path);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  Handler handler;
  orcus::csv::parser_config config;
  config.delimiters = ",";
  config.text_qualifier = '"';
  orcus::csv_parser<Handler> parser(text.data(), text.size(), handler, config);
  parser.parse();
  return handler.findings();
}

}  // namespace keenfall::benchmarks
