#include "notebook/row_reader.h"

#include "notebook/notebook_failure.h"

#include <utility>

namespace keenfall::notebook {

namespace {

template <class T>
const T& as(const Cell& cell) {
  if (const T* value = std::get_if<T>(&cell)) return *value;
  throw NotebookDamaged("a row holds something of another type than its column's");
}

int narrowed(std::int64_t whole) {
  if (!std::in_range<int>(whole)) throw NotebookDamaged("a number is too large for its column");
  return static_cast<int>(whole);
}

bool is_null(const Cell& cell) { return std::holds_alternative<std::monostate>(cell); }

}  // namespace

const Cell& RowReader::next() {
  if (next_ >= row_.size()) throw NotebookDamaged("a row is too short");
  return row_[next_++];
}

std::int64_t RowReader::whole() { return as<std::int64_t>(next()); }
int RowReader::small_whole() { return narrowed(whole()); }
double RowReader::real() { return as<double>(next()); }
std::string RowReader::text() { return as<std::string>(next()); }
bool RowReader::yes() { return whole() != 0; }

std::optional<int> RowReader::whole_if_any() {
  const Cell& cell = next();
  if (is_null(cell)) return std::nullopt;
  return narrowed(as<std::int64_t>(cell));
}

std::optional<double> RowReader::real_if_any() {
  const Cell& cell = next();
  if (is_null(cell)) return std::nullopt;
  return as<double>(cell);
}

std::optional<std::string> RowReader::text_if_any() {
  const Cell& cell = next();
  if (is_null(cell)) return std::nullopt;
  return as<std::string>(cell);
}

}  // namespace keenfall::notebook
