#include "wire/notebook_json.h"

#include "notebook/content.h"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <optional>
#include <variant>

namespace keenfall::wire {

namespace {

using nlohmann::ordered_json;

ordered_json value_of(const notebook::Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return *whole;
  if (const auto* real = std::get_if<double>(&cell)) return *real;
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  return nullptr;
}

// Bytes that are not UTF-8 become U+FFFD: an export never fails for a name.
std::string dumped(const ordered_json& value) {
  return value.dump(-1, ' ', false, ordered_json::error_handler_t::replace);
}

std::string table_text(const notebook::Notebook& notebook, const notebook::ContentTable& table) {
  std::string text = dumped(table.name) + ": [";
  const char* before = "\n  ";
  notebook::each_content_row(notebook, table.name, [&](const notebook::ContentRow& row) {
    ordered_json object = ordered_json::object();
    for (std::size_t i = 0; i < row.size(); ++i) object[table.columns[i].name] = value_of(row[i]);
    text += before + dumped(object);
    before = ",\n  ";
  });
  return text + "]";
}

std::string journal_text(const notebook::Notebook& notebook) {
  std::string text = "[";
  const char* before = "\n  ";
  for (const notebook::JournalEntry& entry : notebook.journal()) {
    ordered_json object = {{"entry", entry.entry},
                           {"client_id", entry.client_id},
                           {"at_utc", entry.at_utc},
                           {"who", entry.who},
                           {"what", entry.what},
                           {"why", entry.why}};
    if (entry.undoes) object["undoes"] = *entry.undoes;
    if (entry.undone_by) object["undone_by"] = *entry.undone_by;
    text += before + dumped(object);
    before = ",\n  ";
  }
  return text + "]";
}

}  // namespace

std::string notebook_to_json(const notebook::Notebook& notebook,
                             const std::string& program_version) {
  const notebook::OneMoment moment(notebook);
  const notebook::NotebookIdentity identity = notebook.identity();
  const ordered_json head = {{"format", "keenfall-notebook"},
                             {"format_version", kNotebookDocumentVersion},
                             {"program_version", program_version},
                             {"notebook",
                              {{"uid", identity.uid},
                               {"made_at_utc", identity.made_at_utc},
                               {"made_by", identity.made_by},
                               {"schema_version", identity.schema_version}}}};
  std::string text = dumped(head);
  text.pop_back();
  text += ",\n\"tables\": {";
  const char* before = "\n ";
  for (const notebook::ContentTable& table : notebook::content_of(notebook)) {
    text += before + table_text(notebook, table);
    before = ",\n ";
  }
  return text + "},\n\"journal\": " + journal_text(notebook) + "}\n";
}

}  // namespace keenfall::wire
