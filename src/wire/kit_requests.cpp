#include "wire/kit_json.h"
#include "wire/plan_reader.h"
#include "wire/request_reader.h"

#include <array>
#include <optional>
#include <utility>

namespace keenfall::wire {

namespace {

constexpr NumberRange kHardness{
    .highest = 10'000, .above_lowest = true, .words = "a number above 0 and at most 10,000"};
constexpr NumberRange kLotLength{
    .highest = 1e6, .above_lowest = true, .words = "metres, above 0 and at most 1,000,000"};
constexpr std::size_t kMostSpecimens = 1'000;
constexpr std::array<std::string_view, 2> kScales{"HRC", "HV"};
constexpr std::array<std::string_view, 3> kHowKnown{"declared_by_maker", "mill_sheet", "measured"};
constexpr std::array<std::string_view, 2> kKeenerWhen{"lower", "higher"};

// Without the blanks around it, which nobody sees and by which two names would differ.
std::string optional_lines(RequestReader& reader, const std::string& field) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const std::string text = reader.lines(field).value_or("");
  const std::size_t first = text.find_first_not_of(kBlanks);
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) + 1 - first);
}

std::string optional_text(RequestReader& reader, const std::string& field) {
  std::string text = optional_lines(reader, field);
  const auto instead = taken_instead(text, Lines::one, kLongestText);
  if (!instead) return text;
  reader.refuse(field, *instead);
  return {};
}

std::string name_in(RequestReader& reader, const std::string& what_it_is) {
  reader.require("name", what_it_is);
  return optional_text(reader, "name");
}

std::optional<trials::Hardness> hardness_from(RequestReader& whole) {
  auto reader = whole.object("hardness");
  if (!reader) return std::nullopt;
  trials::Hardness hardness;
  reader->require("reading", kHardness.words);
  reader->require("scale", "HRC, HV");
  hardness.reading = reader->number("reading", kHardness).value_or(0);
  hardness.scale = reader->choice("scale", kScales).value_or(0) == 0
                       ? trials::HardnessScale::rockwell_c
                       : trials::HardnessScale::vickers;
  hardness.error = reader->number("error", kHardness);
  if (const auto how = reader->choice("how_known", kHowKnown)) {
    hardness.how_known = std::array{trials::HowKnown::declared_by_maker,
                                    trials::HowKnown::mill_sheet,
                                    trials::HowKnown::measured}
                             .at(*how);
  }
  return hardness;
}

notebook::KitThing blade_from(RequestReader& reader) {
  trials::Blade blade{.name = name_in(reader, "what the blade is called"),
                      .steel = optional_text(reader, "steel"),
                      .hardness = hardness_from(reader),
                      .specimens = {}};
  auto pieces = reader.objects("specimens");
  if (pieces.size() > kMostSpecimens) reader.refuse("specimens", "at most 1,000 specimens");
  for (RequestReader& piece : pieces) {
    blade.specimens.push_back(
        {.name = name_in(piece, "how the piece is marked"), .hardness = hardness_from(piece)});
  }
  return blade;
}

notebook::KitThing named_edge_from(RequestReader& reader) {
  trials::NamedEdge edge{.name = name_in(reader, "what you call the edge"), .edge = {}, .note = {}};
  reader.require("edge", "an object, which may be empty");
  if (auto prepared = reader.object("edge")) edge.edge = edge_from(*prepared);
  edge.note = optional_lines(reader, "note");
  return edge;
}

notebook::KitThing medium_from(RequestReader& reader) {
  return trials::Medium{.name = name_in(reader, "what is cut"),
                        .condition = optional_text(reader, "condition")};
}

notebook::KitThing lot_from(RequestReader& reader) {
  reader.require("medium", "what is cut, by name");
  return trials::MediumLot{.medium = {.name = optional_text(reader, "medium"),
                                      .condition = optional_text(reader, "condition")},
                           .name = name_in(reader, "which batch it is: roll 3"),
                           .length_m = reader.number("length_m", kLotLength),
                           .note = optional_lines(reader, "note")};
}

notebook::KitThing thread_from(RequestReader& reader) {
  reader.require("kind", "a kind of reading: thread_push");
  return trials::Thread{.kind = optional_text(reader, "kind"),
                        .name = name_in(reader, "which it is: 0.25 mm polyester"),
                        .lot = optional_text(reader, "lot")};
}

notebook::KitThing kind_from(RequestReader& reader) {
  reader.require("words", "how sentences say it: flank wear");
  reader.require("unit", "the unit it is read in: mm");
  reader.require("keener_when", "lower, higher");
  (void)reader.flag("own");
  return trials::ReadingKind{.name = name_in(reader, "how tables write it: flank_wear"),
                             .words = optional_text(reader, "words"),
                             .unit = optional_text(reader, "unit"),
                             .keener_when = reader.choice("keener_when", kKeenerWhen) == 1
                                                ? trials::KeenerWhen::higher
                                                : trials::KeenerWhen::lower};
}

notebook::KitThing stone_from(RequestReader& reader) {
  return trials::KitStone{.name = name_in(reader, "what you call the stone"),
                          .abrasive = optional_text(reader, "abrasive"),
                          .grit = optional_text(reader, "grit"),
                          .note = optional_lines(reader, "note")};
}

notebook::KitThing thing_in(std::size_t shelf, RequestReader& reader) {
  using Read = notebook::KitThing (*)(RequestReader&);
  constexpr std::array<Read, kKitShelves.size()> kRead{
      blade_from, named_edge_from, medium_from, lot_from, thread_from, kind_from, stone_from};
  reader.pass_over("uid");
  reader.pass_over("revision");
  reader.pass_over("used_in");
  return kRead.at(shelf)(reader);
}

}  // namespace

base::ResultOrProblems<notebook::KitThing> kit_thing_from(std::size_t shelf,
                                                          const std::string& body) {
  RequestReader reader(body);
  notebook::KitThing thing = thing_in(shelf, reader);
  return unless_problems(reader, std::move(thing));
}

base::ResultOrProblems<KitChange> kit_change_from(std::size_t shelf, const std::string& body) {
  RequestReader reader(body);
  KitChange change;
  reader.require("thing", "an object: the thing as it is to be");
  if (auto thing = reader.object("thing")) {
    change.thing = thing_in(shelf, *thing);
    thing->require("revision", "the revision that the kit tells of it");
    change.revision = thing->text("revision").value_or("");
  }
  change.why = optional_lines(reader, "why");
  return unless_problems(reader, std::move(change));
}

}  // namespace keenfall::wire
