#include "exchange/table_columns.h"

#include "exchange/header_meaning.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kMostHeadersListed = 40;

std::string list_of_headers(const std::vector<std::string>& headers) {
  std::string list;
  std::size_t listed = 0;
  for (const std::string& header : headers) {
    if (header.empty()) continue;
    if (++listed > kMostHeadersListed) return list + ", …";
    list += (list.empty() ? "" : ", ") + excerpt(header);
  }
  return list;
}

// Matches one file's headers; collects what cannot be matched.
class HeaderMatch {
 public:
  HeaderMatch(const Record& header,
              ProblemList& problems,
              std::span<const trials::ReadingKind> defined_kinds)
      : line_(header.line), problems_(problems), defined_kinds_(defined_kinds) {
    for (const Cell& cell : header.cells) {
      matched_.headers.push_back(std::string(cell.text));
      folded_.push_back(folded_header(cell.text));
    }
    is_taken_.resize(folded_.size(), false);
  }

  void map(const ColumnMap& mappings) {
    for (const ColumnMapping& mapping : mappings) {
      const ColumnDefinition* const definition = find_definition(mapping.ours);
      if (definition == nullptr) {
        report(unknown_own_column(mapping.ours));
      } else if (matched_.has(definition->column)) {
        report({.kind = base::ProblemKind::conflicting,
                .sentence = std::string(definition->name) + " is mapped to two columns.",
                .place = {.column = "--column", .found = excerpt(mapping.theirs)}});
      } else {
        map_one(*definition, mapping.theirs);
      }
    }
  }

  // Our own names before other usual ones.
  void match_own_names() {
    const std::vector<bool> is_mapped = is_taken_;
    const auto were_matched = matched_.positions;
    for (const bool own_names : {true, false}) {
      const auto before = own_names ? were_matched : matched_.positions;
      for (std::size_t i = 0; i < folded_.size(); ++i) {
        if (is_mapped[i]) continue;
        const auto meaning = meaning_of_header(matched_.headers[i], defined_kinds_);
        if (!meaning || meaning->is_own_name != own_names) continue;
        if (before[index_of(meaning->column)]) continue;
        take(definition_of(meaning->column), i);
        matched_.units[index_of(meaning->column)] = meaning->unit;
      }
    }
  }

  void refuse_doubtful_angles() {
    for (std::size_t i = 0; i < folded_.size(); ++i) {
      if (is_taken_[i] || !is_doubtful_angle(matched_.headers[i])) continue;
      report({.kind = base::ProblemKind::conflicting,
              .sentence = in_quotes(matched_.headers[i]) +
                          " does not say whether the angle is per side or inclusive.",
              .place = {.column = excerpt(matched_.headers[i])},
              .accepted = "a header such as bevel angle per side (deg), or bevel angle inclusive "
                          "(deg)"});
    }
  }

  // Which columns there are is said once.
  void require_columns(std::size_t needed) {
    std::string found = " Columns found: " + list_of_headers(matched_.headers) + ".";
    for (std::size_t i = 0; i < needed; ++i) {
      const ColumnDefinition& definition = column_definitions()[i];
      if (matched_.has(definition.column) || unmatched_mapping_[i]) continue;
      const std::string name(definition.name);
      report({.kind = base::ProblemKind::missing,
              .sentence = "There is no column " + name + ". It must hold " +
                          std::string(definition.must_hold) +
                          ". If it has another name here, say so: --column " + name + "=\"...\"." +
                          std::exchange(found, ""),
              .place = {.column = name}});
    }
  }

  [[nodiscard]] std::optional<MatchedColumns> result() && {
    if (failed_) return std::nullopt;
    for (std::size_t i = 0; i < is_taken_.size(); ++i) {
      if (!is_taken_[i] && !folded_[i].empty()) matched_.not_used.push_back(matched_.headers[i]);
    }
    return std::move(matched_);
  }

 private:
  void report(base::Problem problem) {
    failed_ = true;
    problems_.add({problems_.current_file(), line_}, std::move(problem));
  }

  void map_one(const ColumnDefinition& definition, const std::string& theirs) {
    const std::string wanted = folded_header(theirs);
    bool is_found = false;
    for (std::size_t i = 0; i < folded_.size(); ++i) {
      if (folded_[i] != wanted || wanted.empty()) continue;
      is_found = true;
      take(definition, i);
      matched_.units[index_of(definition.column)] =
          unit_in_header(matched_.headers[i], definition.column, defined_kinds_);
    }
    if (is_found) return;
    unmatched_mapping_[index_of(definition.column)] = true;
    report({.kind = base::ProblemKind::missing,
            .sentence = std::string(definition.name) + " is mapped to " + in_quotes(theirs) +
                        ", but the table has no such column. Columns found: " +
                        list_of_headers(matched_.headers) + ".",
            .place = {.column = "--column", .found = excerpt(theirs)}});
  }

  void take(const ColumnDefinition& definition, std::size_t position) {
    std::optional<std::size_t>& kept = matched_.positions[index_of(definition.column)];
    if (kept) {
      report({.kind = base::ProblemKind::conflicting,
              .sentence = "Columns " + std::to_string(*kept + 1) + " and " +
                          std::to_string(position + 1) + " are both named " +
                          in_quotes(matched_.headers[position]) + ": which one holds " +
                          std::string(definition.name) + " cannot be told. Rename one.",
              .place = {.column = excerpt(matched_.headers[position])}});
      return;
    }
    kept = position;
    is_taken_[position] = true;
  }

  std::size_t line_;
  ProblemList& problems_;
  std::span<const trials::ReadingKind> defined_kinds_;
  MatchedColumns matched_;
  std::vector<std::string> folded_;
  std::vector<bool> is_taken_;
  std::array<bool, kColumnCount> unmatched_mapping_{};
  bool failed_ = false;
};

}  // namespace

std::string MatchedColumns::header_of(Column column) const {
  const auto& position = positions[index_of(column)];
  return position ? excerpt(headers[*position]) : std::string(definition_of(column).name);
}

std::optional<MatchedColumns> match_columns(const Record& header,
                                            const ColumnMap& mappings,
                                            ProblemList& problems,
                                            std::span<const trials::ReadingKind> defined_kinds,
                                            std::size_t needed) {
  HeaderMatch match(header, problems, defined_kinds);
  match.map(mappings);
  match.match_own_names();
  match.refuse_doubtful_angles();
  match.require_columns(needed);
  return std::move(match).result();
}

}  // namespace keenfall::exchange
