// A folder of results held by one program at a time, so that two do not write over each other's.
// The hold ends with the program, however it ends.
#pragma once

#include "base/result.h"

#include <filesystem>

namespace keenfall::trust {

class HeldFolder {
 public:
  // Makes the folder where it is missing. Refused: another holds it, or it cannot be made.
  [[nodiscard]] static base::Result<HeldFolder> hold(const std::filesystem::path& folder);

  HeldFolder(HeldFolder&& other) noexcept;
  HeldFolder& operator=(HeldFolder&& other) = delete;
  HeldFolder(const HeldFolder&) = delete;
  HeldFolder& operator=(const HeldFolder&) = delete;
  ~HeldFolder();

 private:
  explicit HeldFolder(int file) : file_(file) {}

  int file_;  // -1: held by nobody
};

}  // namespace keenfall::trust
