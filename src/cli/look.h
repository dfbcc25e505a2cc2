// How text may look where it is going: how wide, which characters, colour or not.
#pragma once

namespace keenfall::cli {

struct Look {
  int width = 80;  // columns, 60 to 120
  bool unicode = true;
  bool colour = false;

  bool operator==(const Look&) const = default;
};

inline constexpr int kNarrowest = 60;
inline constexpr int kWidest = 120;

}  // namespace keenfall::cli
