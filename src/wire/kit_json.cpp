#include "wire/kit_json.h"

#include "wire/json_pieces.h"
#include "wire/revision_text.h"
#include "wire/revisions.h"

#include <cstddef>
#include <variant>
#include <vector>

namespace keenfall::wire {

namespace {

Json kit_hardness_json(const trials::Hardness& hardness) {
  Json object = {{"reading", finite_number(hardness.reading)},
                 {"scale", hardness.scale == trials::HardnessScale::rockwell_c ? "HRC" : "HV"}};
  put_number(object, "error", hardness.error);
  switch (hardness.how_known) {
    case trials::HowKnown::not_said:
      break;
    case trials::HowKnown::declared_by_maker:
      object["how_known"] = "declared_by_maker";
      break;
    case trials::HowKnown::mill_sheet:
      object["how_known"] = "mill_sheet";
      break;
    case trials::HowKnown::measured:
      object["how_known"] = "measured";
      break;
  }
  return object;
}

void put_hardness(Json& object, const std::optional<trials::Hardness>& hardness) {
  if (hardness) object["hardness"] = kit_hardness_json(*hardness);
}

Json thing_json(const trials::Blade& blade) {
  Json object = {{"name", blade.name}};
  put_text(object, "steel", blade.steel);
  put_hardness(object, blade.hardness);
  object["specimens"] = Json::array();
  for (const trials::Specimen& specimen : blade.specimens) {
    Json piece = {{"name", specimen.name}};
    put_hardness(piece, specimen.hardness);
    object["specimens"].push_back(piece);
  }
  return object;
}

Json thing_json(const trials::NamedEdge& edge) {
  Json object = {{"name", edge.name}, {"edge", edge_json(edge.edge)}};
  put_text(object, "note", edge.note);
  return object;
}

Json thing_json(const trials::Medium& medium) {
  Json object = {{"name", medium.name}};
  put_text(object, "condition", medium.condition);
  return object;
}

Json thing_json(const trials::MediumLot& lot) {
  Json object = {{"medium", lot.medium.name}};
  put_text(object, "condition", lot.medium.condition);
  object["name"] = lot.name;
  put_number(object, "length_m", lot.length_m);
  put_text(object, "note", lot.note);
  return object;
}

Json thing_json(const trials::Thread& thread) {
  Json object = {{"kind", thread.kind}, {"name", thread.name}};
  put_text(object, "lot", thread.lot);
  return object;
}

Json thing_json(const trials::ReadingKind& kind) {
  return {{"name", kind.name},
          {"words", kind.words},
          {"unit", kind.unit},
          {"keener_when", keener_when_name(kind.keener_when)}};
}

Json thing_json(const trials::KitStone& stone) {
  Json object = {{"name", stone.name}};
  put_text(object, "abrasive", stone.abrasive);
  put_text(object, "grit", stone.grit);
  put_text(object, "note", stone.note);
  return object;
}

template <class Thing>
Json shelf_json(const std::vector<notebook::InKit<Thing>>& things) {
  Json list = Json::array();
  for (const notebook::InKit<Thing>& kept : things) {
    Json object = thing_json(kept.thing);
    const std::string revision = revision_of_told(object);
    object["uid"] = kept.uid;
    object["revision"] = revision;
    if (!kept.used_in.empty()) object["used_in"] = sentences_json(kept.used_in);
    list.push_back(object);
  }
  return list;
}

Json edges_json(const std::vector<notebook::InKit<trials::NamedEdge>>& edges,
                const materials::ToldIn& told) {
  Json list = shelf_json(edges);
  for (std::size_t e = 0; e < edges.size(); ++e) {
    list[e]["edge"] = edge_json(edges[e].thing.edge, told);
  }
  return list;
}

Json kinds_json(const std::vector<notebook::InKit<trials::ReadingKind>>& own) {
  Json list = Json::array();
  for (const trials::ReadingKind& known : trials::known_reading_kinds()) {
    list.push_back(thing_json(known));
    list.back()["own"] = false;
  }
  for (Json& kept : shelf_json(own)) {
    kept["own"] = true;
    list.push_back(kept);
  }
  return list;
}

}  // namespace

std::string revision_of(const notebook::KitThing& thing) {
  return std::visit([](const auto& one) { return revision_of_told(thing_json(one)); }, thing);
}

std::string kit_to_json(const notebook::KeptKit& kit,
                        const materials::ToldIn& told,
                        const std::vector<std::string>& remarks) {
  Json document = Json::object();
  document["blades"] = shelf_json(kit.blades);
  document["edges"] = edges_json(kit.edges, told);
  document["media"] = shelf_json(kit.media);
  document["lots"] = shelf_json(kit.lots);
  document["threads"] = shelf_json(kit.threads);
  document["kinds"] = kinds_json(kit.kinds);
  document["stones"] = shelf_json(kit.stones);
  if (!remarks.empty()) document["remarks"] = sentences_json(remarks);
  return in_one_line(document);
}

}  // namespace keenfall::wire
