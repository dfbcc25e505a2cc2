// Reads options one after the other and keeps every problem: all that is wrong is told at once.
//
// In: an option's name and what was typed after it, or nothing. Out: the number where it was typed
// and can be read; what stood there before where it was not typed; no number (NaN) where it cannot
// be read, so that whoever works with it takes it for wrong and says nothing of what hangs on it.
#pragma once

#include "base/result.h"
#include "trials/edge.h"

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::cli {

inline constexpr double kUnread = std::numeric_limits<double>::quiet_NaN();

class OptionReader {
 public:
  void add(base::Problem problem);
  void refuse(const std::string& option, const base::Problem& problem);
  void missing(const std::string& option, const std::string& what, const std::string& example);

  // Those of options (place.column) of which nothing was refused before.
  void add_new(const std::vector<base::Problem>& problems);

  // With its unit, turned into this one.
  void quantity(const std::string& option,
                const std::optional<std::string>& text,
                std::string_view unit,
                double& into);
  void angle(const std::string& option,
             const std::optional<std::string>& text,
             trials::PerSideAngle& into);
  void plain_number(const std::string& option,
                    const std::optional<std::string>& text,
                    double& into);

  [[nodiscard]] const std::vector<base::Problem>& problems() const { return problems_; }

 private:
  std::vector<base::Problem> problems_;
};

}  // namespace keenfall::cli
