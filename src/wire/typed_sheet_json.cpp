#include "wire/typed_sheet_json.h"

#include "wire/json_pieces.h"
#include "wire/request_reader.h"

#include <cstddef>
#include <utility>

namespace keenfall::wire {

base::ResultOrProblems<SheetToKeep> sheet_to_keep_from(const std::string& body) {
  constexpr NumberRange kRevision{.highest = 9007199254740991.0,
                                  .words = "the revision it goes on from; 0 where there was none"};
  RequestReader reader(body);
  reader.require("goes_on_from", kRevision.words);
  reader.require("cells", "a list of rows, each a list of texts");
  SheetToKeep sheet{.goes_on_from = static_cast<std::int64_t>(
                        reader.whole("goes_on_from", kRevision).value_or(0)),
                    .cells = in_one_line(Json(reader.rows_of_texts("cells")))};
  return unless_problems(reader, std::move(sheet));
}

std::string cells_in_json(const exchange::TypedRows& rows) { return in_one_line(Json(rows)); }

bool holds_more_than_labels(const std::string& cells) {
  const Json rows = Json::parse(cells, nullptr, false);
  if (!rows.is_array()) return false;
  std::size_t filled = 0;
  for (std::size_t row = 1; row < rows.size(); ++row) {
    for (std::size_t column = 1; column < rows[row].size(); ++column) {
      const Json& cell = rows[row][column];
      if (cell.is_string() && !cell.get_ref<const std::string&>().empty()) ++filled;
    }
  }
  return filled > 1;
}

std::string typed_sheet_to_json(const std::optional<notebook::TypedSheet>& sheet) {
  Json object = {{"revision", sheet ? sheet->revision : 0}};
  if (sheet) {
    if (!sheet->cells.empty()) object["cells"] = Json::parse(sheet->cells, nullptr, false);
    object["at_utc"] = sheet->at_utc;
    object["who"] = sheet->who;
  }
  return in_one_line(object);
}

std::string kept_sheet_to_json(std::int64_t revision) {
  return in_one_line(Json{{"revision", revision}});
}

}  // namespace keenfall::wire
