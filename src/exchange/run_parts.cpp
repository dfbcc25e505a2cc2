#include "exchange/run_parts.h"

#include "base/plain_number.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

namespace {

SaidBy& said(std::vector<SaidBy>& all, const std::string& words, Origin at) {
  const auto known = std::ranges::find(all, words, &SaidBy::words);
  if (known != all.end()) return *known;
  all.push_back({.words = words, .first = at, .by = {}});
  return all.back();
}

void add_once(std::vector<TablePart>& parts, TablePart part) {
  if (parts.empty() || parts.back() != part) parts.push_back(part);
}

void add_said(std::vector<SaidBy>& all, std::vector<SaidBy>&& others) {
  for (SaidBy& other : others) {
    SaidBy& one = said(all, other.words, other.first);
    one.first = std::min(one.first, other.first);
    one.by.insert(one.by.end(), other.by.begin(), other.by.end());
  }
}

}  // namespace

void RunParts::add(const TableRow& row, TablePart part) {
  add_once(all, part);
  if (const RowCell& steel = row[Column::steel]; !steel.text.empty()) {
    add_once(said(steels, std::string(steel.text), row.origin_of(Column::steel)).by, part);
  }
  if (const RowCell& hardness = row[Column::hardness]; hardness.number) {
    add_once(
        said(hardnesses, base::plain_number(*hardness.number), row.origin_of(Column::hardness)).by,
        part);
  }
}

void RunParts::add_all_of(RunParts&& others) {
  all.insert(all.end(), others.all.begin(), others.all.end());
  add_said(steels, std::move(others.steels));
  add_said(hardnesses, std::move(others.hardnesses));
}

}  // namespace keenfall::exchange
