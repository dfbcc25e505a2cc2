#include "exchange/data_package.h"
#include "exchange/described_resource.h"
#include "exchange/package_names.h"
#include "exchange/text_lines.h"

#include <set>
#include <utility>

#include <nlohmann/json.hpp>

namespace keenfall::exchange {

namespace {

using DescriptorJson = nlohmann::json;

// A descriptor has some 100 bytes for a column; as JSON values they need ten times the memory.
constexpr std::size_t kLargestDescriptorBytes = std::size_t{16} * 1000 * 1000;

tl::unexpected<base::Problem> refused(const std::string& file_name, std::string sentence) {
  return base::failed({.kind = base::ProblemKind::unreadable,
                       .sentence = std::move(sentence),
                       .place = {.file = file_name},
                       .accepted = "the datapackage.json of a Data Package"});
}

std::string text_property(const DescriptorJson& object, const char* name) {
  const auto found = object.find(name);
  return found != object.end() && found->is_string() ? found->get<std::string>() : "";
}

PackageAbout about_of(const DescriptorJson& package) {
  PackageAbout about{.name = text_property(package, "name"),
                     .title = text_property(package, "title"),
                     .description = text_property(package, "description"),
                     .created = text_property(package, "created")};
  for (const auto& [name, value] : package.items()) {
    if (value.is_string() && !is_standard_property(name)) {
      about.own_properties[name] = value.get<std::string>();
    }
  }
  return about;
}

base::Result<DescriptorJson> parsed(std::string_view json, const std::string& file_name) {
  try {
    return DescriptorJson::parse(json);
  } catch (const DescriptorJson::parse_error& error) {
    auto problem = refused(file_name, "This is not JSON: it cannot be read on from here.");
    problem.value().place.line = line_at(json, error.byte > 0 ? error.byte - 1 : 0);
    return problem;
  } catch (const DescriptorJson::exception&) {
    return refused(file_name, "This is not JSON: it holds a number that is too large.");
  }
}

}  // namespace

base::Result<DescribedPackage> described_package(std::string_view json,
                                                 const std::string& file_name) {
  if (json.size() > kLargestDescriptorBytes) {
    return base::failed({.kind = base::ProblemKind::too_large,
                         .sentence = "The description of the package is larger than 16 MB.",
                         .place = {.file = file_name}});
  }
  const auto package = parsed(json, file_name);
  if (!package) return base::failed(package.error());
  if (!package->is_object() || !package->contains("resources") ||
      !package->at("resources").is_array()) {
    return refused(file_name, "The JSON describes no Data Package: it has no list “resources”.");
  }
  DescribedPackage described{.about = about_of(*package), .resources = {}};
  std::set<std::string> names;
  for (const DescriptorJson& stated : package->at("resources")) {
    const std::string name = stated.is_object() ? text_property(stated, "name") : "";
    const std::string place = "Resource " + std::to_string(described.resources.size() + 1);
    if (name.empty()) return refused(file_name, place + " has no name.");
    if (!names.insert(name).second) {
      return refused(file_name,
                     place + " has the name " + in_quotes(name) +
                         " of one before it; names tell resources apart.");
    }
    auto resource = described_resource(stated, name);
    if (!resource) return refused(file_name, resource.error().sentence);
    described.resources.push_back(std::move(*resource));
  }
  return described;
}

}  // namespace keenfall::exchange
