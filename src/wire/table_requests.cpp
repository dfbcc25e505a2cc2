// The requests of tables_json.h. A body may hold a hundred megabytes, so its texts are moved and
// not copied.
#include "exchange/column_mapping.h"
#include "wire/base64.h"
#include "wire/sent_json.h"
#include "wire/tables_json.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <span>
#include <utility>

namespace keenfall::wire {

namespace {

using base::Problem;
using Problems = std::vector<Problem>;

// Not the kind that keeps the order of its keys: looking one up there takes longer the more it has.
using Sent = nlohmann::json;

constexpr std::size_t kMostTables = 100;
constexpr std::size_t kLongestName = 1000;
constexpr std::size_t kMostUnknownFields = 10;  // that are named

// The fields of one object; those that were not asked for are not known.
class Fields {
 public:
  Fields(Sent& object, std::string path, Problems& problems)
      : object_(object), path_(std::move(path)), problems_(problems) {}

  // nullptr: it is not there.
  Sent* asked(const std::string& field) {
    known_.push_back(field);
    const auto found = object_.find(field);
    return found == object_.end() ? nullptr : &*found;
  }

  std::optional<std::string> text(const std::string& field) {
    Sent* const value = asked(field);
    if (value == nullptr) return std::nullopt;
    if (value->is_string()) return std::move(value->get_ref<std::string&>());
    refuse(field, "a text");
    return std::nullopt;
  }

  std::string name(const std::string& field) {
    std::string name = text(field).value_or("");
    const auto instead = taken_instead(name, Lines::one, kLongestName);
    if (!instead) return name;
    refuse(field, *instead);
    return {};
  }

  bool flag(const std::string& field) {
    Sent* const value = asked(field);
    if (value == nullptr) return false;
    if (value->is_boolean()) return value->get<bool>();
    refuse(field, "true or false");
    return false;
  }

  // Nothing where it is not there, or no list.
  std::span<Sent> list(const std::string& field, const std::string& accepted) {
    Sent* const value = asked(field);
    if (value == nullptr) return {};
    if (value->is_array()) return value->get_ref<Sent::array_t&>();
    refuse(field, accepted);
    return {};
  }

  void refuse(const std::string& field, const std::string& accepted) {
    problems_.push_back({.kind = base::ProblemKind::bad_value,
                         .sentence = "“" + path_ + field + "” cannot be used.",
                         .place = {.column = path_ + field},
                         .accepted = accepted});
  }

  void refuse_unknown() {
    std::size_t unknown = 0;
    for (const auto& item : object_.items()) {
      if (std::ranges::find(known_, item.key()) != known_.end()) continue;
      if (++unknown > kMostUnknownFields) return;
      std::string key = item.key().substr(0, kLongestName);
      problems_.push_back({.kind = base::ProblemKind::unknown_name,
                           .sentence = "“" + path_ + key + "” is no field of this request.",
                           .place = {.column = path_ + key}});
    }
  }

  [[nodiscard]] std::string path_of(const std::string& field, std::size_t index) const {
    return path_ + field + "[" + std::to_string(index) + "]";
  }

 private:
  Sent& object_;
  std::string path_;
  Problems& problems_;
  std::vector<std::string> known_;
};

// Reads what ReadTable and TakeTable share, and then what only one of them has.
class TableRequest {
 public:
  explicit TableRequest(std::string_view body) {
    if (auto problem = too_much_sent(body)) {
      be_unreadable(std::move(*problem));
      return;
    }
    json_ = Sent::parse(body.begin(), body.end(), nullptr, false);
    if (json_.is_object()) return;
    be_unreadable({.kind = base::ProblemKind::bad_value,
                   .sentence = json_.is_discarded() ? "What was sent is not JSON."
                                                    : "What was sent is JSON, but not an object.",
                   .accepted = "an object, as docs/wire/api.json describes it"});
  }

  ReadTables read() {
    ReadTables read;
    read.tables = tables();
    if (Sent* const choices = fields_.asked("choices")) read.options = options(*choices);
    read.trial = fields_.name("trial");
    return read;
  }

  Fields& fields() { return fields_; }

  // Once every field was asked for.
  Problems problems() && {
    if (!is_unreadable_) fields_.refuse_unknown();
    return std::move(problems_);
  }

 private:
  void be_unreadable(Problem problem) {
    problems_.push_back(std::move(problem));
    json_ = Sent::object();
    is_unreadable_ = true;
  }

  std::vector<exchange::TableInHand> tables() {
    constexpr const char* kAccepted = "a list of 1 to 100 tables";
    const auto sources = fields_.list("sources", kAccepted);
    std::vector<exchange::TableInHand> tables;
    if (sources.size() > kMostTables || (sources.empty() && !is_unreadable_)) {
      fields_.refuse("sources", kAccepted);
      return tables;
    }
    for (std::size_t i = 0; i < sources.size(); ++i) {
      const std::string path = fields_.path_of("sources", i);
      if (sources[i].is_object()) {
        tables.push_back(table(sources[i], path));
      } else {
        fields_.refuse("sources", "a list of objects, each a table");
      }
    }
    return tables;
  }

  exchange::TableInHand table(Sent& json, const std::string& path) {
    Fields source(json, path + ".", problems_);
    std::string name = source.name("name");
    if (name.find_first_not_of(" \t\r\n") == name.npos) {
      source.refuse("name", "a name: that of the file, or one of your own");
    }
    auto text = source.text("text");
    const auto base64 = source.text("base64");
    Sent* const cells = source.asked("cells");
    const int count = (text ? 1 : 0) + (base64 ? 1 : 0) + (cells != nullptr ? 1 : 0);
    if (count != 1) source.refuse("text", "one of text, base64 and cells");
    source.refuse_unknown();
    if (count != 1) return {};
    if (text) return {.name = std::move(name), .bytes = std::move(*text)};
    if (cells != nullptr) return typed(std::move(name), *cells, source);
    auto bytes = bytes_from_base64(*base64);
    if (!bytes) source.refuse("base64", "bytes in base64, with its padding");
    return {.name = std::move(name), .bytes = std::move(bytes).value_or("")};
  }

  static exchange::TableInHand typed(std::string name, Sent& cells, Fields& source) {
    exchange::TypedRows rows;
    const auto is_text = [](const Sent& cell) { return cell.is_string(); };
    const auto is_row = [&](const Sent& row) {
      return row.is_array() && std::ranges::all_of(row, is_text);
    };
    if (!cells.is_array() || !std::ranges::all_of(cells, is_row)) {
      source.refuse("cells", "a list of rows, each a list of texts");
      return {};
    }
    for (Sent& row : cells) {
      std::vector<std::string>& typed = rows.emplace_back();
      for (Sent& cell : row) typed.push_back(std::move(cell.get_ref<std::string&>()));
    }
    return exchange::typed_table(std::move(name), rows);
  }

  exchange::TableOptions options(Sent& json) {
    exchange::TableOptions options;
    if (!json.is_object()) {
      fields_.refuse("choices", "an object");
      return options;
    }
    Fields choices(json, "choices.", problems_);
    options.columns = columns(choices);
    if (const auto shape = choices.text("shape")) {
      options.shape = exchange::table_shape_named(*shape).value_or(exchange::TableShape::decide);
      if (options.shape == exchange::TableShape::decide) {
        choices.refuse("shape", "long, wide or runs");
      }
    }
    if (const auto decimal = choices.text("decimal")) {
      if (*decimal == "comma") options.decimal_mark = exchange::DecimalMark::comma;
      if (*decimal == "point") options.decimal_mark = exchange::DecimalMark::point;
      if (options.decimal_mark == exchange::DecimalMark::decide) {
        choices.refuse("decimal", "comma or point");
      }
    }
    for (Sent& sheet : choices.list("sheets", "a list of texts")) {
      if (sheet.is_string()) {
        options.sheets.push_back(sheet.get<std::string>());
      } else {
        choices.refuse("sheets", "a list of texts");
      }
    }
    options.default_kind = choices.name("kind");
    choices.refuse_unknown();
    return options;
  }

  exchange::ColumnMap columns(Fields& choices) {
    exchange::ColumnMap map;
    constexpr const char* kAccepted = "a list of objects with ours and theirs";
    auto given = choices.list("columns", kAccepted);
    for (std::size_t i = 0; i < given.size(); ++i) {
      if (!given[i].is_object()) {
        choices.refuse("columns", kAccepted);
        continue;
      }
      Fields column(given[i], choices.path_of("columns", i) + ".", problems_);
      map.push_back({.ours = column.name("ours"), .theirs = column.text("theirs").value_or("")});
      if (map.back().ours.empty()) column.refuse("ours", "a column, as docs/table.md names it");
      if (map.back().theirs.empty()) column.refuse("theirs", "a header, as the table writes it");
      column.refuse_unknown();
    }
    return map;
  }

  Sent json_;
  Problems problems_;
  bool is_unreadable_ = false;
  Fields fields_{json_, "", problems_};
};

}  // namespace

base::ResultOrProblems<ReadTables> read_tables_from(std::string_view body) {
  TableRequest request(body);
  ReadTables read = request.read();
  Problems problems = std::move(request).problems();
  if (!problems.empty()) return tl::unexpected<Problems>(std::move(problems));
  return read;
}

base::ResultOrProblems<TakeTables> take_tables_from(std::string_view body) {
  TableRequest request(body);
  TakeTables take{.read = request.read(), .trial_name = {}};
  take.trial_name = request.fields().name("trial_name");
  take.keeps_good = request.fields().flag("keep_good");
  if (!take.read.trial.empty() && !take.trial_name.empty()) {
    request.fields().refuse("trial_name", "none, where the tables go into a trial that is there");
  }
  Problems problems = std::move(request).problems();
  if (!problems.empty()) return tl::unexpected<Problems>(std::move(problems));
  return take;
}

}  // namespace keenfall::wire
