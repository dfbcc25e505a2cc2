#include "workbench/notebook_package.h"

#include "exchange/data_package.h"
#include "exchange/text_file.h"
#include "exchange/trial_rules.h"
#include "notebook/digest.h"
#include "notebook/kept_trials.h"
#include "workbench/new_folder.h"

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <map>
#include <set>
#include <system_error>
#include <utility>

namespace keenfall::workbench {

namespace {

using base::Problem;
using base::ProblemKind;
using Problems = std::vector<Problem>;

constexpr const char* kDescriptor = "datapackage.json";
constexpr const char* kFormat = "keenfall_format";
constexpr const char* kNotebookUid = "keenfall_notebook_uid";
constexpr int kFormatVersion = 1;
constexpr std::size_t kMostProblems = 200;

exchange::FieldType field_type(notebook::ColumnType type) {
  switch (type) {
    case notebook::ColumnType::whole:
      return exchange::FieldType::integer;
    case notebook::ColumnType::real:
      return exchange::FieldType::number;
    case notebook::ColumnType::text:
      break;
  }
  return exchange::FieldType::string;
}

exchange::PackageTable package_table(const notebook::ContentTable& table) {
  exchange::PackageTable described{.name = table.name, .primary_key = table.key};
  for (const notebook::ContentColumn& column : table.columns) {
    described.fields.push_back({.name = column.name,
                                .type = field_type(column.type),
                                .may_be_missing = column.may_be_null});
  }
  for (const notebook::ContentReference& reference : table.references) {
    described.references.push_back({.field = reference.column,
                                    .table = reference.table,
                                    .other_field = reference.other_column});
  }
  return described;
}

// Who changed what, when and why; without the changes themselves, which only the notebook can use.
exchange::PackageTable journal_table() {
  using enum exchange::FieldType;
  return {.name = "journal",
          .fields = {{"entry", integer, false},
                     {"client_id", string, false},
                     {"at_utc", string, false},
                     {"who", string, false},
                     {"what", string, false},
                     {"why", string, false},
                     {"undoes", integer, true}},
          .primary_key = {"entry"},
          .references = {{.field = "undoes", .table = "journal", .other_field = "entry"}}};
}

exchange::EachRow each_entry(const notebook::Notebook& notebook) {
  return [&notebook](const std::function<void(const exchange::PackageRow&)>& use) {
    for (const notebook::JournalEntry& entry : notebook.journal()) {
      use({entry.entry,
           entry.client_id,
           entry.at_utc,
           entry.who,
           entry.what,
           entry.why,
           notebook::cell_or_null(entry.undoes)});
    }
  };
}

exchange::EachRow each_row_of(const notebook::Notebook& notebook, const std::string& table) {
  return [&notebook, table](const std::function<void(const exchange::PackageRow&)>& use) {
    notebook::each_content_row(notebook, table, use);
  };
}

std::string sha256_hex(std::string_view bytes) {
  return notebook::in_hex(notebook::sha256_of(bytes));
}

std::optional<Problem> write_table(NewFolder& folder,
                                   const exchange::PackageTable& table,
                                   const exchange::EachRow& each_row,
                                   std::vector<exchange::PackageResource>& resources) {
  const auto csv = exchange::csv_of(table, each_row);
  if (!csv) return csv.error();
  const std::string name = table.name + ".csv";
  if (auto problem = folder.write(name, csv->text)) return problem;
  resources.push_back({.table = table,
                       .path = name,
                       .missing_marker = csv->missing_marker,
                       .bytes = csv->text.size(),
                       .sha256_hex = sha256_hex(csv->text)});
  return std::nullopt;
}

std::string descriptor_path(const std::string& path) {
  std::error_code ignored;  // what it is comes out when it is read
  return std::filesystem::is_directory(path, ignored)
             ? (std::filesystem::path(path) / kDescriptor).string()
             : path;
}

// A package of a notebook, of a format this program knows.
std::optional<Problem> problem_of_origin(const exchange::DescribedPackage& package,
                                         const std::string& path) {
  const auto& own = package.about.own_properties;
  const auto format = own.find(kFormat);
  int version = 0;
  if (format != own.end()) {
    const std::string& digits = format->second;
    (void)std::from_chars(digits.data(), digits.data() + digits.size(), version);
  }
  if (version >= 1 && version <= kFormatVersion) return std::nullopt;
  return Problem{.kind = ProblemKind::unreadable,
                 .sentence = version == 0
                                 ? "This data package is not one of a notebook: it does not say "
                                   "which format it has."
                                 : "This data package was written by a newer Keenfall (format " +
                                       format->second + ").",
                 .place = {.file = path, .column = kFormat},
                 .accepted = version == 0 ? "a package that keenfall export wrote; a single table "
                                            "can be taken as a table"
                                          : "a newer Keenfall"};
}

auto resource_of(const exchange::DescribedPackage& package, const std::string& table) {
  return std::ranges::find(package.resources, table, &exchange::DescribedResource::name);
}

// The schema of the notebook that it is of: that of the newest table in it. What later ones have it
// lacks of right; any other table that is not there was lost on the way.
std::int64_t version_of(const exchange::DescribedPackage& package,
                        const std::vector<notebook::ContentTable>& tables) {
  std::int64_t version = 1;
  for (const notebook::ContentTable& table : tables) {
    if (resource_of(package, table.name) != package.resources.end()) {
      version = std::max(version, table.since_version);
    }
  }
  return version;
}

class Reading {
 public:
  explicit Reading(const std::string& path)
      : descriptor_(descriptor_path(path)),
        folder_(std::filesystem::path(descriptor_).parent_path()) {}

  base::ResultOrProblems<ReadPackage> read() {
    const auto text = exchange::read_text_file(descriptor_);
    if (!text) return base::failed_by(text.error());
    const auto package = exchange::described_package(*text, descriptor_);
    if (!package) return base::failed_by(package.error());
    if (auto problem = problem_of_origin(*package, descriptor_)) return base::failed_by(*problem);
    const auto tables = notebook::content_of(content_->notebook());
    const std::int64_t version = version_of(*package, tables);
    for (const notebook::ContentTable& table : tables) {
      const auto resource = resource_of(*package, table.name);
      if (resource != package->resources.end()) {
        read_table(package_table(table), *resource);
      } else if (table.since_version <= version) {
        add({.kind = ProblemKind::missing,
             .sentence = "This package has no table \"" + table.name + "\", so it is not whole.",
             .place = {.file = descriptor_},
             .accepted = "the descriptor as keenfall export wrote it; a table may be empty"});
      }
    }
    remark_on_the_rest(*package);
    if (!problems_.empty()) return tl::unexpected(std::move(problems_));
    if (const auto flaw = content_->flaw()) {
      return base::failed_by(
          {.kind = ProblemKind::bad_value,
           .sentence = "The rows of this package do not fit together: " + *flaw + ".",
           .place = {.file = descriptor_}});
    }
    look_at_trials();
    if (!problems_.empty()) return tl::unexpected(std::move(problems_));
    return ReadPackage{.content = std::move(content_), .remarks = std::move(remarks_)};
  }

 private:
  void add(Problem problem) {
    if (problems_.size() < kMostProblems) problems_.push_back(std::move(problem));
  }

  void read_table(const exchange::PackageTable& table,
                  const exchange::DescribedResource& resource) {
    known_.insert(resource.name);
    if (resource.fault) return add(*resource.fault);
    const std::string file = (folder_ / resource.path).string();
    files_[resource.name] = file;
    const auto text = exchange::read_text_file(file);
    if (!text) return add(text.error());
    if (resource.sha256_hex && *resource.sha256_hex != sha256_hex(*text)) {
      return add({.kind = ProblemKind::conflicting,
                  .sentence = "This file is not the one that the package was written with: its "
                              "SHA-256 is another than the descriptor says.",
                  .place = {.file = file},
                  .accepted = "the file as it was; or, if it was changed on purpose, a descriptor "
                              "without the \"hash\" and \"bytes\" of this file"});
    }
    const auto rows = exchange::read_rows(
        resource, table, *text, [&](const exchange::PackageRow& row, std::size_t line) {
          if (problems_.size() >= kMostProblems) return;
          if (const auto refusal = content_->add(table.name, row)) {
            add({.kind = ProblemKind::bad_value,
                 .sentence = *refusal,
                 .place = {.file = file, .line = line}});
          }
        });
    if (!rows) {
      for (Problem problem : rows.error()) {
        problem.place.file = file;
        add(std::move(problem));
      }
      return;
    }
    for (const std::string& column : rows->unknown_columns) {
      remarks_.push_back("Not taken, because not known: the column " + column + " of " +
                         resource.path + ".");
    }
  }

  // What the schema lets pass and no table may say.
  void look_at_trials() {
    for (const std::string& name : notebook::trial_names(content_->notebook())) {
      const auto trial = notebook::kept_trial(content_->notebook(), name);
      if (!trial) return add(trial.error());
      for (exchange::BrokenRule& rule : exchange::broken_rules(*trial)) {
        rule.problem.place.file = files_[rule.table];
        add(std::move(rule.problem));
      }
    }
  }

  void remark_on_the_rest(const exchange::DescribedPackage& package) {
    for (const exchange::DescribedResource& resource : package.resources) {
      if (known_.contains(resource.name)) continue;
      remarks_.push_back(resource.name == journal_table().name
                             ? "The journal of the notebook it came from is not taken: this one "
                               "has its own."
                             : "Not taken, because not known: " + resource.name + ".");
    }
  }

  std::string descriptor_;
  std::filesystem::path folder_;
  std::unique_ptr<notebook::GatheredContent> content_ =
      std::make_unique<notebook::GatheredContent>();
  std::set<std::string> known_;
  std::map<std::string, std::string> files_;  // of tables
  std::vector<std::string> remarks_;
  Problems problems_;
};

}  // namespace

bool is_package(const std::string& path) {
  std::error_code ignored;
  if (std::filesystem::is_directory(path, ignored)) {
    return std::filesystem::exists(std::filesystem::path(path) / kDescriptor, ignored);
  }
  return std::filesystem::path(path).filename() == kDescriptor;
}

std::optional<Problem> write_package(const notebook::Notebook& notebook,
                                     const std::string& folder,
                                     const std::string& at_utc) {
  const notebook::OneMoment moment(notebook);
  NewFolder made(folder);
  if (auto problem = made.make()) return problem;
  std::vector<exchange::PackageResource> resources;
  for (const notebook::ContentTable& table : notebook::content_of(notebook)) {
    auto problem =
        write_table(made, package_table(table), each_row_of(notebook, table.name), resources);
    if (problem) return problem;
  }
  if (auto problem = write_table(made, journal_table(), each_entry(notebook), resources)) {
    return problem;
  }
  const exchange::PackageAbout about{
      .name = "keenfall-notebook",
      .title = "Notebook " + std::filesystem::path(notebook.path()).filename().string(),
      .description =
          "Knife-cutting trials as they were recorded: what is struck out, voided or "
          "doubtful is in it. A notebook takes it back with: keenfall take.",
      .created = at_utc,
      .own_properties = {{kFormat, std::to_string(kFormatVersion)},
                         {kNotebookUid, notebook.identity().uid}}};
  if (auto problem = made.write(kDescriptor, exchange::descriptor_of(about, resources))) {
    return problem;
  }
  return made.give_name();
}

base::ResultOrProblems<ReadPackage> read_package(const std::string& path) {
  return Reading(path).read();
}

}  // namespace keenfall::workbench
