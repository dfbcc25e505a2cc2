// Batches that were measured already, one line each in a file beside the others, so that work that
// was stopped goes on where it was.
//
// The first line says what they were made by: the experiment's definition and the code, both as
// hashes, and the commit. Batches made by anything else are not read; a line cut off by a power
// failure is left out.
#pragma once

#include "trust/experiment.h"

#include <filesystem>
#include <map>
#include <string>

namespace keenfall::trust {

struct MadeBy {
  std::string code;    // hash of the sources that count; empty: not those of a commit
  std::string commit;  // for people
};

class KeptBatches {
 public:
  // Reads what is there. Throws std::filesystem::filesystem_error where the folder cannot be made.
  KeptBatches(const std::filesystem::path& folder,
              const Experiment& experiment,
              const MadeBy& made_by);

  [[nodiscard]] bool has(int batch) const { return batches_.contains(batch); }
  [[nodiscard]] int count() const { return static_cast<int>(batches_.size()); }
  [[nodiscard]] Sums total() const;
  // There were batches, made by another definition or other code.
  [[nodiscard]] bool others_were_there() const { return others_were_there_; }

  // Keeps it on the disk; the first one puts away what others made. Throws std::ios_base::failure.
  void keep(int batch, const Sums& sums);

 private:
  void read(const std::string& code);
  void begin_file() const;

  std::filesystem::path file_;
  std::string head_;
  std::map<int, Sums> batches_;
  bool others_were_there_ = false;
  bool begun_ = false;
};

}  // namespace keenfall::trust
