#include "exchange/delimited_text.h"

#include "exchange/text_lines.h"

#include <algorithm>

namespace keenfall::exchange {

namespace {

constexpr std::string_view kDelimiters = ",;\t";

bool ends_line(char c) { return c == '\n' || c == '\r'; }

// The first line with content that is no comment.
std::string_view first_written_line(std::string_view text) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    const std::string_view line = text.substr(0, end);
    if (!trimmed(line).empty() && line.front() != '#') return line;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return {};
}

std::optional<char> named_delimiter(std::string_view line) {
  if (line.size() == 5 && line.starts_with("sep=") && kDelimiters.find(line[4]) != line.npos) {
    return line[4];
  }
  return std::nullopt;
}

}  // namespace

std::optional<char> recognise_delimiter(std::string_view text) {
  const std::string_view line = first_written_line(text);
  if (const auto named = named_delimiter(line)) return named;
  std::optional<char> most;
  std::ptrdiff_t most_count = 0;
  for (const char delimiter : kDelimiters) {
    bool in_quotes = false;
    const auto count = std::ranges::count_if(line, [&in_quotes, delimiter](char c) {
      if (c == '"') in_quotes = !in_quotes;
      return c == delimiter && !in_quotes;
    });
    if (count > most_count) {
      most = delimiter;
      most_count = count;
    }
  }
  return most;
}

std::vector<char> likely_delimiters(std::string_view text) {
  const std::string_view first = first_written_line(text);
  if (const auto named = named_delimiter(first)) return {*named};
  std::vector<char> likely;
  if (const auto most = recognise_delimiter(text)) likely.push_back(*most);
  constexpr std::size_t kBytesLookedAt = 8192;
  const std::string_view head = text.substr(0, kBytesLookedAt);
  for (const char delimiter : {';', '\t', ','}) {
    const bool is_there = head.find(delimiter) != head.npos;
    if (is_there && (likely.empty() || likely.front() != delimiter)) likely.push_back(delimiter);
  }
  return likely;
}

std::optional<std::size_t> first_line_wider_than(std::size_t most_cells, std::string_view text) {
  std::size_t start = 0;
  while (start < text.size()) {
    const std::size_t end = std::min(text.find_first_of("\r\n", start), text.size());
    const std::string_view line = text.substr(start, end - start);
    if (line.size() >= most_cells) {
      for (const char delimiter : kDelimiters) {
        const auto count = static_cast<std::size_t>(std::ranges::count(line, delimiter));
        if (count >= most_cells) return line_at(text, start);
      }
    }
    start = end + 1;
  }
  return std::nullopt;
}

DelimitedReader::DelimitedReader(std::string_view text, char delimiter)
    : DelimitedReader(text, DelimitedStyle{.delimiter = delimiter}) {}

DelimitedReader::DelimitedReader(std::string_view text, const DelimitedStyle& style)
    : text_(text), style_(style) {}

std::optional<Record> DelimitedReader::next() {
  while (at_ < text_.size()) {
    if (pass_over_comment()) continue;
    const bool is_first_line = at_ == 0;
    if (style_.to_the_letter && ends_line(text_[at_])) {
      end_line();
      continue;
    }
    const Record record = read_record();
    if (style_.to_the_letter) return record;
    if (is_first_line && named_delimiter(first_written_line(text_.substr(0, at_)))) continue;
    const bool has_content =
        std::ranges::any_of(record.cells, [](const Cell& cell) { return !cell.text.empty(); });
    if (has_content || record.fault) return record;
  }
  return std::nullopt;
}

bool DelimitedReader::pass_over_comment() {
  if (style_.comment == '\0' || text_[at_] != style_.comment) return false;
  if (comment_count_++ == 0) first_comment_line_ = line_;
  skip_to_line_end();
  end_line();
  return true;
}

Record DelimitedReader::read_record() {
  cells_.clear();
  unescaped_.clear();
  const std::size_t first_line = line_;
  std::optional<QuoteFault> fault;
  while (true) {
    read_cell(fault);
    if (fault || at_ >= text_.size() || text_[at_] != style_.delimiter) break;
    ++at_;
  }
  end_line();
  return {.line = first_line, .cells = cells_, .fault = std::move(fault)};
}

void DelimitedReader::read_cell(std::optional<QuoteFault>& fault) {
  if (!style_.to_the_letter || style_.skips_blanks_before_cells) skip_blanks();
  const std::size_t start = at_;
  if (at_ < text_.size() && text_[at_] == style_.quote && style_.quote != '\0') {
    read_quoted_cell(fault);
    return;
  }
  while (!at_cell_end()) ++at_;
  cells_.push_back({.text = content(start), .line = line_});
}

void DelimitedReader::read_quoted_cell(std::optional<QuoteFault>& fault) {
  const std::size_t opening_line = line_;
  const std::size_t start = ++at_;
  bool has_doubled_quotes = false;
  while (at_ < text_.size()) {
    if (text_[at_] == style_.quote) {
      if (at_ + 1 >= text_.size() || text_[at_ + 1] != style_.quote) break;
      has_doubled_quotes = true;
      ++at_;
    } else if (text_[at_] == '\n' ||
               (text_[at_] == '\r' && (at_ + 1 >= text_.size() || text_[at_ + 1] != '\n'))) {
      ++line_;
    }
    ++at_;
  }
  Cell cell{.text = content(start), .line = opening_line};
  if (at_ >= text_.size()) {
    fault = {.sentence =
                 "A quote is opened here and never closed, so the rest of the table cannot be told "
                 "apart.",
             .cell = cell,
             .is_to_the_end = true};
    return;
  }
  ++at_;
  if (!style_.to_the_letter) skip_blanks();
  if (!at_cell_end()) {
    fault = {.sentence =
                 "After the closing quote of a cell there is more text; a quote inside a "
                 "quoted cell is written twice (\"\").",
             .cell = cell};
    skip_to_line_end();
    return;
  }
  if (has_doubled_quotes) {
    std::string plain;
    for (std::size_t i = 0; i < cell.text.size(); ++i) {
      plain += cell.text[i];
      if (cell.text[i] == style_.quote) ++i;
    }
    unescaped_.push_back(std::move(plain));
    cell.text = unescaped_.back();
  }
  cells_.push_back(cell);
}

// What was read since `start`, without blanks around it where they mean nothing.
std::string_view DelimitedReader::content(std::size_t start) const {
  const std::string_view written = text_.substr(start, at_ - start);
  return style_.to_the_letter ? written : trimmed(written);
}

bool DelimitedReader::at_cell_end() const {
  return at_ >= text_.size() || text_[at_] == style_.delimiter || ends_line(text_[at_]);
}

void DelimitedReader::skip_blanks() {
  while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t') &&
         text_[at_] != style_.delimiter) {
    ++at_;
  }
}

void DelimitedReader::skip_to_line_end() {
  while (at_ < text_.size() && !ends_line(text_[at_])) ++at_;
}

// Steps over one line end, CR LF being one.
void DelimitedReader::end_line() {
  if (at_ >= text_.size()) return;
  const bool is_pair = text_[at_] == '\r' && at_ + 1 < text_.size() && text_[at_ + 1] == '\n';
  at_ += is_pair ? 2 : 1;
  ++line_;
}

}  // namespace keenfall::exchange
