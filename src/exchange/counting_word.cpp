#include "exchange/counting_word.h"

#include "base/begun_large.h"
#include "exchange/text_lines.h"

namespace keenfall::exchange {

void CountingWord::take(const TableRow& row, const MatchedColumns& file_columns) {
  for (const Column column : {Column::cuts, Column::lasted, Column::failed_by}) {
    const auto position = file_columns.positions[index_of(column)];
    if (!position || row[column].is_blank()) continue;
    const std::string& header = file_columns.headers[*position];
    if (header != last_header_) {
      last_header_ = header;
      take_words(header, row.origin_of(column), header);
    }
    if (column != Column::cuts) take_words(row[column].written, row.origin_of(column), header);
  }
}

void CountingWord::take_words(std::string_view words, Origin at, const std::string& header) {
  const auto counted = trials::counted_in_words(words);
  if (!counted) return;
  if (!found_) {
    found_ = counted;
    first_at_ = at;
  }
  if (*counted == *found_) return;
  problems_.add_once("counting " + counted->many,
                     at,
                     {.kind = base::ProblemKind::conflicting,
                      .sentence = base::begun_large(counted->many) + " are counted here, and " +
                                  found_->many + " in " + problems_.place_in_words(first_at_) +
                                  ". They do not stand on one axis: convert one of the two, or "
                                  "judge them apart.",
                      .place = {.column = excerpt(header), .found = excerpt(words)},
                      .accepted = "one word for what is counted, such as " + found_->many});
}

}  // namespace keenfall::exchange
