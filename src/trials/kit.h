// The kit: what a person has to compare and to compare with, before any trial speaks of it.
//
// Blades and media are those of trials (blade.h, cutting.h); here is what trials only copy from:
// edges by name, batches, threads, kinds of reading of one's own, stones. Values only.
#pragma once

#include "trials/blade.h"
#include "trials/cutting.h"
#include "trials/edge.h"
#include "trials/reading_kind.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::trials {

struct NamedEdge {
  std::string name;  // "fine", as the person calls it
  EdgePreparation edge;
  std::string note;

  bool operator==(const NamedEdge&) const = default;
};

// A batch of a medium: one roll, one bale.
struct MediumLot {
  Medium medium;
  std::string name;
  std::optional<double> length_m;  // how much of it there was
  std::string note;

  bool operator==(const MediumLot&) const = default;
};

// What is pushed or drawn through, for readings with a thread or a card.
struct Thread {
  std::string kind;  // of reading, by name: thread_push
  std::string name;  // "0.25 mm polyester"
  std::string lot;   // empty: not said

  bool operator==(const Thread&) const = default;
};

struct KitStone {
  std::string name;      // "the coarse plate"
  std::string abrasive;  // "fused alumina", "diamond"
  std::string grit;      // with its system: "FEPA-F 220", "45 µm"; a bare number is not one
  std::string note;

  bool operator==(const KitStone&) const = default;
};

struct Kit {
  std::vector<Blade> blades;
  std::vector<NamedEdge> edges;
  std::vector<Medium> media;
  std::vector<MediumLot> lots;
  std::vector<Thread> threads;
  std::vector<ReadingKind> kinds;  // defined by oneself
  std::vector<KitStone> stones;

  bool operator==(const Kit&) const = default;
};

}  // namespace keenfall::trials
