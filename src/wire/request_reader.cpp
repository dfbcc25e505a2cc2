#include "wire/request_reader.h"

#include "wire/sent_json.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>
#include <utility>

namespace keenfall::wire {

namespace {

using base::Problem;
using base::ProblemKind;

// What is shown of a value that cannot be used: all of it would be too much.
std::string found_in(const SentJson& value) {
  constexpr std::size_t kMostShown = 80;
  if (value.is_array()) return "a list of " + std::to_string(value.size());
  if (value.is_object()) return "an object";
  if (value.is_string()) return shown_of(value.get_ref<const std::string&>(), kMostShown);
  return value.dump(-1, ' ', false, SentJson::error_handler_t::replace);
}

// Nothing where the value is a text that is taken.
std::optional<std::string> text_wanted_instead(const SentJson& value,
                                               Lines lines,
                                               std::size_t most_bytes) {
  if (!value.is_string()) return "a text";
  return taken_instead(value.get_ref<const std::string&>(), lines, most_bytes);
}

bool is_blank(const std::string& text) {
  return text.find_first_not_of(" \t\r\n") == std::string::npos;
}

bool is_within(double number, const NumberRange& range) {
  const bool above = range.above_lowest ? number > range.lowest : number >= range.lowest;
  return std::isfinite(number) && above && number <= range.highest;
}

bool is_number_within(const SentJson& value, const NumberRange& range) {
  return value.is_number() && is_within(value.get<double>(), range);
}

bool is_whole_within(const SentJson& value, const NumberRange& range) {
  return value.is_number_unsigned() && is_within(value.get<double>(), range);
}

}  // namespace

struct RequestReader::Shared {
  std::vector<Problem> problems;
  std::set<std::string> asked;  // names of fields with their paths
};

RequestReader::RequestReader(const std::string& body)
    : object_(SentJson::object()), shared_(std::make_shared<Shared>()) {
  if (auto problem = too_much_sent(body)) {
    shared_->problems.push_back(std::move(*problem));
    return;
  }
  object_ = SentJson::parse(body, nullptr, false);
  if (object_.is_object()) return;
  shared_->problems.push_back({.kind = ProblemKind::unreadable,
                               .sentence = object_.is_discarded()
                                               ? "What was sent is not JSON."
                                               : "What was sent is JSON, but not an object.",
                               .accepted = "an object, as docs/wire/api.json describes it"});
  object_ = SentJson::object();
}

RequestReader::RequestReader(SentJson object, std::string path, std::shared_ptr<Shared> shared)
    : object_(std::move(object)), path_(std::move(path)), shared_(std::move(shared)) {}

bool RequestReader::has(const std::string& field) const {
  return object_.contains(field) && !object_[field].is_null();
}

const SentJson* RequestReader::asked(const std::string& field) {
  shared_->asked.insert(path_ + field);
  return has(field) ? &object_[field] : nullptr;
}

void RequestReader::refuse(const std::string& field, std::string_view accepted) {
  shared_->problems.push_back(
      {.kind = ProblemKind::bad_value,
       .sentence = "“" + path_ + field + "” cannot be used.",
       .place = {.column = path_ + field, .found = found_in(object_[field])},
       .accepted = std::string(accepted)});
}

std::optional<std::string> RequestReader::asked_text(const std::string& field,
                                                     Lines lines,
                                                     std::size_t most_bytes) {
  const SentJson* value = asked(field);
  if (value == nullptr) return std::nullopt;
  const auto instead = text_wanted_instead(*value, lines, most_bytes);
  if (!instead) return value->get<std::string>();
  refuse(field, *instead);
  return std::nullopt;
}

std::optional<std::string> RequestReader::text(const std::string& field) {
  return asked_text(field, Lines::one, kLongestText);
}

std::optional<std::string> RequestReader::path(const std::string& field) {
  return asked_text(field, Lines::any_bytes, kLongestPath);
}

std::optional<std::string> RequestReader::lines(const std::string& field) {
  return asked_text(field, Lines::many, kLongestText);
}

std::vector<std::vector<std::string>> RequestReader::rows_of_texts(const std::string& field) {
  const SentJson* const value = asked(field);
  if (value == nullptr) return {};
  const bool is_table =
      value->is_array() && std::ranges::all_of(*value, [](const SentJson& row) {
        return row.is_array() &&
               std::ranges::all_of(row, [](const SentJson& cell) { return cell.is_string(); });
      });
  if (is_table) return value->get<std::vector<std::vector<std::string>>>();
  refuse(field, "a list of rows, each a list of texts");
  return {};
}

void RequestReader::pass_over(const std::string& field) { (void)asked(field); }

std::optional<double> RequestReader::number(const std::string& field, const NumberRange& range) {
  const SentJson* value = asked(field);
  if (value == nullptr) return std::nullopt;
  if (is_number_within(*value, range)) return value->get<double>();
  refuse(field, range.words);
  return std::nullopt;
}

std::optional<std::uint64_t> RequestReader::whole(const std::string& field,
                                                  const NumberRange& range) {
  const SentJson* value = asked(field);
  if (value == nullptr) return std::nullopt;
  if (is_whole_within(*value, range)) return value->get<std::uint64_t>();
  refuse(field, range.words);
  return std::nullopt;
}

std::optional<bool> RequestReader::flag(const std::string& field) {
  const SentJson* value = asked(field);
  if (value == nullptr) return std::nullopt;
  if (value->is_boolean()) return value->get<bool>();
  refuse(field, "true or false");
  return std::nullopt;
}

std::optional<std::size_t> RequestReader::choice(const std::string& field,
                                                 std::span<const std::string_view> known) {
  const auto word = text(field);
  if (!word) return std::nullopt;
  const auto found = std::ranges::find(known, *word);
  if (found != known.end()) return static_cast<std::size_t>(found - known.begin());
  std::string accepted;
  for (const std::string_view one : known)
    accepted += (accepted.empty() ? "" : ", ") + std::string(one);
  refuse(field, accepted);
  return std::nullopt;
}

std::vector<std::string> RequestReader::texts(const std::string& field) {
  const SentJson* value = asked(field);
  std::vector<std::string> read;
  if (value == nullptr) return read;
  if (!value->is_array()) {
    refuse(field, "a list of texts");
    return read;
  }
  for (const SentJson& one : *value) {
    if (const auto instead = text_wanted_instead(one, Lines::one, kLongestText)) {
      refuse(field, "a list of texts; each of it " + *instead);
      return {};
    }
    read.push_back(one.get<std::string>());
  }
  return read;
}

const SentJson* RequestReader::asked_list(const std::string& field,
                                          const NumberRange& range,
                                          bool (*fits)(const SentJson& one,
                                                       const NumberRange& range)) {
  const SentJson* value = asked(field);
  if (value == nullptr) return nullptr;
  const bool all_fit = value->is_array() && std::ranges::all_of(*value, [&](const SentJson& one) {
                         return fits(one, range);
                       });
  if (all_fit) return value;
  refuse(field, "a list; each of it " + std::string(range.words));
  return nullptr;
}

std::vector<double> RequestReader::numbers(const std::string& field, const NumberRange& range) {
  std::vector<double> read;
  const SentJson* list = asked_list(field, range, is_number_within);
  if (list == nullptr) return read;
  for (const SentJson& one : *list) read.push_back(one.get<double>());
  return read;
}

std::vector<std::optional<double>> RequestReader::numbers_or_null(const std::string& field,
                                                                  const NumberRange& range) {
  std::vector<std::optional<double>> read;
  const SentJson* list =
      asked_list(field, range, [](const SentJson& one, const NumberRange& within) {
        return one.is_null() || is_number_within(one, within);
      });
  if (list == nullptr) return read;
  for (const SentJson& one : *list) {
    read.push_back(one.is_null() ? std::nullopt : std::optional(one.get<double>()));
  }
  return read;
}

std::vector<std::uint64_t> RequestReader::wholes(const std::string& field,
                                                 const NumberRange& range) {
  std::vector<std::uint64_t> read;
  const SentJson* list = asked_list(field, range, is_whole_within);
  if (list == nullptr) return read;
  for (const SentJson& one : *list) read.push_back(one.get<std::uint64_t>());
  return read;
}

RequestReader RequestReader::within(const SentJson& object, const std::string& name) {
  return {object, path_ + name + ".", shared_};
}

std::optional<RequestReader> RequestReader::object(const std::string& field) {
  const SentJson* value = asked(field);
  if (value == nullptr) return std::nullopt;
  if (value->is_object()) return within(*value, field);
  refuse(field, "an object");
  return std::nullopt;
}

std::vector<RequestReader> RequestReader::objects(const std::string& field) {
  const SentJson* value = asked(field);
  std::vector<RequestReader> read;
  if (value == nullptr) return read;
  const bool all_objects =
      value->is_array() &&
      std::ranges::all_of(*value, [](const SentJson& one) { return one.is_object(); });
  if (!all_objects) {
    refuse(field, "a list of objects");
    return read;
  }
  for (std::size_t i = 0; i < value->size(); ++i) {
    read.push_back(within((*value)[i], field + "[" + std::to_string(i) + "]"));
  }
  return read;
}

void RequestReader::require(const std::string& field, std::string_view accepted) {
  const SentJson* value = asked(field);
  const bool is_blank_text =
      value != nullptr && value->is_string() && is_blank(value->get<std::string>());
  if (value != nullptr && !is_blank_text) return;
  shared_->problems.push_back({.kind = ProblemKind::missing,
                               .sentence = "“" + path_ + field + "” is needed.",
                               .place = {.column = path_ + field},
                               .accepted = std::string(accepted)});
}

void RequestReader::add(Problem problem) { shared_->problems.push_back(std::move(problem)); }

std::vector<Problem> RequestReader::problems() {
  std::vector<Problem> all = shared_->problems;
  const std::function<void(const SentJson&, const std::string&)> look_into =
      [&](const SentJson& object, const std::string& path) {
        for (const auto& [field, value] : object.items()) {
          const std::string name = path + field;
          if (!shared_->asked.contains(name)) {
            all.push_back({.kind = ProblemKind::unknown_name,
                           .sentence = "Nothing here is called “" + name + "”.",
                           .place = {.column = name},
                           .accepted = "a field that docs/wire/api.json names"});
          } else if (value.is_object()) {
            look_into(value, name + ".");
          } else if (value.is_array()) {
            for (std::size_t i = 0; i < value.size(); ++i) {
              if (value[i].is_object()) look_into(value[i], name + "[" + std::to_string(i) + "].");
            }
          }
        }
      };
  look_into(object_, path_);
  return all;
}

}  // namespace keenfall::wire
