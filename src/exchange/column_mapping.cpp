#include "exchange/column_mapping.h"

#include "exchange/table_columns.h"
#include "exchange/text_lines.h"

namespace keenfall::exchange {

base::Result<ColumnMapping> parse_column_mapping(std::string_view text) {
  const std::size_t equals = text.find('=');
  const std::string_view ours = trimmed(text.substr(0, equals));
  const std::string_view theirs =
      equals == text.npos ? std::string_view{} : trimmed(text.substr(equals + 1));
  if (ours.empty() || theirs.empty()) {
    return base::failed(
        {.sentence = "A column is mapped as ours=theirs; " + in_quotes(text) + " lacks a side.",
         .place = {.column = "--column", .found = excerpt(text)},
         .accepted = "cuts=strokes, where the table's header is strokes"});
  }
  const ColumnDefinition* const definition = find_definition(ours);
  if (definition == nullptr) return base::failed(unknown_own_column(ours));
  return ColumnMapping{.ours = std::string(definition->name), .theirs = std::string(theirs)};
}

}  // namespace keenfall::exchange
