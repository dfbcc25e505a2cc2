#include "exchange/described_resource.h"
#include "exchange/package_names.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

namespace {

using StatedJson = nlohmann::json;

constexpr std::string_view kSha256Prefix = "sha256:";
constexpr std::size_t kSha256Digits = 64;

const StatedJson* property(const StatedJson& object, const char* name) {
  const auto found = object.find(name);
  return found == object.end() || found->is_null() ? nullptr : &*found;
}

std::string small_letters(std::string text) {
  std::ranges::transform(text, text.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  return text;
}

bool is_part_of_numbers(char c) {
  return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == 'e' || c == 'E';
}

// Version 2 of the standard also has objects {"value": ..., "label": ...} for markers.
std::optional<std::vector<std::string>> markers_of(const StatedJson& stated) {
  if (!stated.is_array()) return std::nullopt;
  std::vector<std::string> markers;
  for (const StatedJson& entry : stated) {
    const StatedJson* marker = entry.is_object() ? property(entry, "value") : &entry;
    if (marker == nullptr || !marker->is_string()) return std::nullopt;
    markers.push_back(marker->get<std::string>());
  }
  return markers;
}

// Reads one resource; of its faults the first is kept.
class StatedResource {
 public:
  StatedResource(const StatedJson& stated, const std::string& name) : stated_(stated) {
    resource_.name = name;
  }

  base::Result<DescribedResource> read() && {
    if (const auto refusal = read_path())
      return base::failed({.kind = base::ProblemKind::unreadable, .sentence = *refusal});
    read_integrity();
    read_format();
    read_dialect();
    read_schema();
    return std::move(resource_);
  }

 private:
  void fault(const std::string& why) {
    if (resource_.fault) return;
    resource_.fault = base::Problem{
        .kind = base::ProblemKind::unreadable,
        .sentence = "The resource " + in_quotes(resource_.name) + " cannot be read: " + why + ".",
        .place = {.file = resource_.path}};
  }

  // A resource without a path holds its rows in the descriptor; several paths are parts of one
  // file.
  std::optional<std::string> read_path() {
    const StatedJson* path = property(stated_, "path");
    if (path == nullptr) {
      fault("it names no file");
      return std::nullopt;
    }
    if (!path->is_array()) return take_path(*path);
    if (path->size() != 1) fault("it is in several files, or in none; one is read");
    for (const StatedJson& part : *path) {
      if (auto refusal = take_path(part)) return refusal;
    }
    return std::nullopt;
  }

  std::optional<std::string> take_path(const StatedJson& stated) {
    if (!stated.is_string()) return "The path of " + in_quotes(resource_.name) + " is not a text.";
    const auto path = stated.get<std::string>();
    if (const auto why = path_fault(path)) {
      return "The path " + in_quotes(path) + " of " + in_quotes(resource_.name) + " " + *why +
             "; only files in the package's own folder are read.";
    }
    if (resource_.path.empty()) resource_.path = path;
    return std::nullopt;
  }

  void read_integrity() {
    if (const StatedJson* bytes = property(stated_, "bytes")) {
      if (bytes->is_number_unsigned()) {
        resource_.bytes = bytes->get<std::size_t>();
      } else {
        fault("“bytes” is not a whole number");
      }
    }
    const std::string hash = small_letters(text("hash"));
    if (!hash.starts_with(kSha256Prefix)) return;
    const std::string digits = hash.substr(kSha256Prefix.size());
    if (digits.size() == kSha256Digits &&
        digits.find_first_not_of("0123456789abcdef") == std::string::npos) {
      resource_.sha256_hex = digits;
    } else {
      fault("its SHA-256 has not 64 hexadecimal digits");
    }
  }

  void read_format() {
    const std::string format = small_letters(text("format"));
    if (format == "tsv") resource_.delimiter = '\t';
    if (!format.empty() && format != "csv" && format != "tsv") {
      fault("it is " + in_quotes(format) + ", and only CSV is read");
    }
    const std::string encoding = small_letters(text("encoding"));
    if (!encoding.empty() && encoding != "utf-8" && encoding != "utf8" && encoding != "us-ascii") {
      fault("its encoding is " + in_quotes(encoding) + ", and only UTF-8 is read");
    }
    if (!text("compression").empty()) fault("it is compressed; unpack it first");
  }

  void read_dialect() {
    const StatedJson* dialect = property(stated_, "dialect");
    if (dialect == nullptr) return;
    if (!dialect->is_object()) return fault("its dialect is stated elsewhere");
    read_character(*dialect, "delimiter", resource_.delimiter);
    if (dialect->contains("quoteChar") && dialect->at("quoteChar").is_null())
      resource_.quote = '\0';
    read_character(*dialect, "quoteChar", resource_.quote);
    read_character(*dialect, "commentChar", resource_.comment);
    if (resource_.delimiter == resource_.quote || resource_.delimiter == resource_.comment) {
      fault("its delimiter is its quote or comment sign too");
    }
    resource_.has_header = flag(*dialect, "header", true);
    resource_.skips_blanks_before_cells = flag(*dialect, "skipInitialSpace", false);
    if (!flag(*dialect, "doubleQuote", true)) fault("quotes in its cells are not doubled");
    if (property(*dialect, "escapeChar") != nullptr) fault("it has a sign that escapes others");
    const StatedJson* header_rows = property(*dialect, "headerRows");
    if (header_rows != nullptr && *header_rows != StatedJson::array({1})) {
      fault("its header is not its first line");
    }
    if (const StatedJson* null_text = property(*dialect, "nullSequence")) {
      if (!null_text->is_string()) return fault("its “nullSequence” is not a text");
      null_sequence_ = null_text->get<std::string>();
    }
  }

  void read_character(const StatedJson& dialect, const char* name, char& character) {
    const StatedJson* stated = property(dialect, name);
    if (stated == nullptr) return;
    const std::string sign = stated->is_string() ? stated->get<std::string>() : "";
    const bool is_usable = sign.size() == 1 && sign != "\n" && sign != "\r" && sign[0] > '\0';
    if (!is_usable) return fault("its “" + std::string(name) + "” is not one ASCII character");
    character = sign[0];
  }

  bool flag(const StatedJson& object, const char* name, bool by_default) {
    const StatedJson* stated = property(object, name);
    if (stated == nullptr) return by_default;
    if (!stated->is_boolean()) fault("“" + std::string(name) + "” is neither true nor false");
    return stated->is_boolean() ? stated->get<bool>() : by_default;
  }

  void read_schema() {
    const StatedJson* schema = property(stated_, "schema");
    if (schema == nullptr) return add_null_sequence();
    if (!schema->is_object()) return fault("its schema is stated elsewhere");
    if (const StatedJson* missing = property(*schema, "missingValues")) {
      auto markers = markers_of(*missing);
      if (!markers) return fault("“missingValues” is not a list of texts");
      resource_.missing_values = std::move(*markers);
    }
    add_null_sequence();
    const StatedJson* fields = property(*schema, "fields");
    if (fields == nullptr) return;
    if (!fields->is_array()) return fault("“fields” is not a list");
    for (const StatedJson& field : *fields) read_field(field);
  }

  void add_null_sequence() {
    if (null_sequence_) resource_.missing_values.push_back(*null_sequence_);
  }

  void read_field(const StatedJson& stated) {
    const StatedJson* name = stated.is_object() ? property(stated, "name") : nullptr;
    if (name == nullptr || !name->is_string()) return fault("one of its fields has no name");
    DescribedField field{.name = name->get<std::string>()};
    if (const StatedJson* type = property(stated, "type"); type != nullptr && type->is_string()) {
      field.type = type->get<std::string>();
    }
    read_character(stated, "decimalChar", field.decimal_mark);
    read_character(stated, "groupChar", field.group_mark);
    if (field.decimal_mark == field.group_mark || is_part_of_numbers(field.decimal_mark) ||
        is_part_of_numbers(field.group_mark)) {
      fault("its numbers cannot be told from their decimal marks or grouping");
    }
    field.is_bare_number = flag(stated, "bareNumber", true);
    if (const StatedJson* missing = property(stated, "missingValues")) {
      field.missing_values = markers_of(*missing);
      if (!field.missing_values) return fault("“missingValues” is not a list of texts");
    }
    resource_.fields.push_back(std::move(field));
  }

  [[nodiscard]] std::string text(const char* name) const {
    const StatedJson* stated = property(stated_, name);
    return stated != nullptr && stated->is_string() ? stated->get<std::string>() : "";
  }

  const StatedJson& stated_;
  DescribedResource resource_;
  std::optional<std::string> null_sequence_;
};

}  // namespace

base::Result<DescribedResource> described_resource(const nlohmann::json& stated,
                                                   const std::string& name) {
  return StatedResource(stated, name).read();
}

}  // namespace keenfall::exchange
