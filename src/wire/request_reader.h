// Reads the body of a request, field by field: what is missing, of another type, out of its range
// or not known is a problem that names the field. Private to this folder (it shows the library).
//
// A reader is of one object. What is wrong is gathered, also of objects within; whoever has read
// all fields asks for the problems once, with those fields that nobody asked for.
#pragma once

#include "base/result.h"
#include "wire/json_pieces.h"
#include "wire/sent_json.h"

#include <nlohmann/json.hpp>

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace keenfall::wire {

// Of a number; both ends belong to it unless said otherwise.
struct NumberRange {
  double lowest = 0;
  double highest = 1e300;
  bool above_lowest = false;
  std::string_view words;  // "a number above 1"
};

// A ratio below which nobody would act.
inline constexpr NumberRange kMarginRange{
    .lowest = 1, .highest = 100, .above_lowest = true, .words = "a ratio above 1 and at most 100"};
// In bytes of UTF-8.
inline constexpr std::size_t kLongestText = 1'000;
inline constexpr std::size_t kLongestPath = 4'096;
// A seed that every reader of JSON keeps as it is.
inline constexpr NumberRange kSeedRange{.highest = 9007199254740991.0,
                                        .words = "a whole number, 0 or more"};

// What a request says. Not the kind that keeps the order of its keys: looking one up there takes
// longer the more it has, and reading it does so for each of them.
using SentJson = nlohmann::json;

class RequestReader {
 public:
  // Of a whole body; where it is no JSON object, every field is absent and that is the problem.
  explicit RequestReader(const std::string& body);

  [[nodiscard]] bool has(const std::string& field) const;

  // Absent fields are nothing, and so are those with a problem.
  // A name or the like, on one line and of visible characters.
  [[nodiscard]] std::optional<std::string> text(const std::string& field);
  // Where a file lies or is to lie, as it was written.
  [[nodiscard]] std::optional<std::string> path(const std::string& field);
  // A sentence or more: a reason, a note, a claim.
  [[nodiscard]] std::optional<std::string> lines(const std::string& field);
  [[nodiscard]] std::optional<double> number(const std::string& field, const NumberRange& range);
  [[nodiscard]] std::optional<std::uint64_t> whole(const std::string& field,
                                                   const NumberRange& range);
  [[nodiscard]] std::optional<bool> flag(const std::string& field);
  // Place of the word among those known.
  [[nodiscard]] std::optional<std::size_t> choice(const std::string& field,
                                                  std::span<const std::string_view> known);
  [[nodiscard]] std::vector<std::string> texts(const std::string& field);
  // A table as it was typed: a list of rows, each a list of texts of any kind.
  [[nodiscard]] std::vector<std::vector<std::string>> rows_of_texts(const std::string& field);
  // Known, and of no consequence: what was told along comes back so.
  void pass_over(const std::string& field);
  [[nodiscard]] std::vector<double> numbers(const std::string& field, const NumberRange& range);
  // Of a list in which null says that nothing is said of that one.
  [[nodiscard]] std::vector<std::optional<double>> numbers_or_null(const std::string& field,
                                                                   const NumberRange& range);
  [[nodiscard]] std::vector<std::uint64_t> wholes(const std::string& field,
                                                  const NumberRange& range);
  // An object, or each object of a list; their problems come to this reader's.
  [[nodiscard]] std::optional<RequestReader> object(const std::string& field);
  [[nodiscard]] std::vector<RequestReader> objects(const std::string& field);

  // It must be there, and a text must not be blank.
  void require(const std::string& field, std::string_view accepted);
  // A field that is there, and cannot be used though its type is right.
  void refuse(const std::string& field, std::string_view accepted);
  void add(base::Problem problem);

  // All that is wrong, once every field was asked for; of fields that no one asked for, too.
  [[nodiscard]] std::vector<base::Problem> problems();

 private:
  struct Shared;
  RequestReader(SentJson object, std::string path, std::shared_ptr<Shared> shared);

  // Of the field, where it is there and not null.
  [[nodiscard]] const SentJson* asked(const std::string& field);
  [[nodiscard]] RequestReader within(const SentJson& object, const std::string& name);
  [[nodiscard]] std::optional<std::string> asked_text(const std::string& field,
                                                      Lines lines,
                                                      std::size_t most_bytes);
  // The list, where there is one and each of it is as it should be; else a problem, if it is there.
  [[nodiscard]] const SentJson* asked_list(const std::string& field,
                                           const NumberRange& range,
                                           bool (*fits)(const SentJson& one,
                                                        const NumberRange& range));

  SentJson object_;
  std::string path_;  // "question.", of an object within
  std::shared_ptr<Shared> shared_;
};

// What was read, unless there are problems.
template <class Value>
[[nodiscard]] base::ResultOrProblems<Value> unless_problems(RequestReader& reader, Value value) {
  auto problems = reader.problems();
  if (problems.empty()) return value;
  return tl::unexpected<std::vector<base::Problem>>(std::move(problems));
}

}  // namespace keenfall::wire
