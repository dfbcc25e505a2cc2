#include "exchange/blade_statements.h"

#include "base/plain_number.h"
#include "exchange/text_lines.h"

#include <cstddef>
#include <string>
#include <unordered_map>
#include <utility>

namespace keenfall::exchange {

namespace {

// Reports when the same thing was said otherwise before.
class Statements {
 public:
  explicit Statements(ProblemList& problems) : problems_(problems) {}

  // True when nothing was said of `whose` before.
  bool is_first(const std::string& whose, const std::string& what, const ToldCell& cell) {
    const std::string said = cell.number ? base::plain_number(*cell.number) : cell.text;
    const auto [place, is_new] = said_.emplace(whose + what, std::pair(said, cell.at));
    const auto& [said_before, where] = place->second;
    if (said_before != said) {
      const bool is_known_order = where < cell.at;
      const std::string sentence =
          whose + " has the " + what + " " + in_quotes(is_known_order ? said_before : said) +
          " in " + problems_.place_in_words(is_known_order ? where : cell.at) + " and " +
          in_quotes(is_known_order ? said : said_before) + " here. One blade has one " + what +
          "; give the second its own name" +
          (what == "hardness" ? ", or name the specimens." : ".");
      problems_.add_once(whose + what,
                         is_known_order ? cell.at : where,
                         {.kind = base::ProblemKind::conflicting,
                          .sentence = sentence,
                          .place = {.column = what == "hardness" ? "hardness_hrc" : what,
                                    .found = excerpt(is_known_order ? said : said_before)}},
                         Concerns::others);
    }
    return is_new;
  }

 private:
  ProblemList& problems_;
  std::unordered_map<std::string, std::pair<std::string, Origin>> said_;
};

}  // namespace

std::vector<trials::Blade> blades_told(std::span<const RunDraft> drafts, ProblemList& problems) {
  std::vector<trials::Blade> blades;
  std::unordered_map<std::string, std::size_t> blade_index;
  std::unordered_map<std::string, std::size_t> specimen_index;
  Statements statements(problems);
  for (const RunDraft& draft : drafts) {
    const std::string& name = draft[Column::blade].text;
    const auto [place, is_new] = blade_index.emplace(name, blades.size());
    if (is_new) blades.push_back({.name = name});
    trials::Blade& blade = blades[place->second];
    std::string whose = "Blade " + in_quotes(name);
    if (const ToldCell& steel = draft[Column::steel]; !steel.is_blank()) {
      if (statements.is_first(whose, "steel", steel)) blade.steel = steel.text;
      if (draft.other_steel) (void)statements.is_first(whose, "steel", *draft.other_steel);
    }
    std::optional<trials::Hardness>* hardness = &blade.hardness;
    if (const ToldCell& specimen = draft[Column::specimen]; !specimen.is_blank()) {
      whose += ", specimen " + in_quotes(specimen.text) + ",";
      const auto [index, is_new_piece] = specimen_index.emplace(whose, blade.specimens.size());
      if (is_new_piece) blade.specimens.push_back({.name = specimen.text});
      hardness = &blade.specimens[index->second].hardness;
    }
    const ToldCell& hrc = draft[Column::hardness];
    if (!hrc.number) continue;
    if (statements.is_first(whose, "hardness", hrc)) {
      *hardness = trials::Hardness{.reading = *hrc.number};
    }
    if (draft.other_hardness) (void)statements.is_first(whose, "hardness", *draft.other_hardness);
  }
  return blades;
}

}  // namespace keenfall::exchange
