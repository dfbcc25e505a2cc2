// A folder that gets its name once all is in it, and is gone again if it does not come to that.
//
// Until then it lies in one that nobody else has, beside where it is to be. What was there before
// is never touched: a name that is taken is a Problem, as is one that cannot be had.
#pragma once

#include "base/result.h"

#include <filesystem>
#include <optional>
#include <string>

namespace keenfall::workbench {

class NewFolder {
 public:
  explicit NewFolder(const std::string& path);  // with a slash behind it or without
  ~NewFolder();
  NewFolder(const NewFolder&) = delete;
  NewFolder& operator=(const NewFolder&) = delete;
  NewFolder(NewFolder&&) = delete;
  NewFolder& operator=(NewFolder&&) = delete;

  // Each: nothing where it was done. In this order; write() as often as there are files.
  [[nodiscard]] std::optional<base::Problem> make();
  [[nodiscard]] std::optional<base::Problem> write(const std::string& name,
                                                   const std::string& text);
  [[nodiscard]] std::optional<base::Problem> give_name();

 private:
  [[nodiscard]] std::filesystem::path unfinished() const;
  [[nodiscard]] std::optional<base::Problem> problem_of_name() const;
  [[nodiscard]] base::Problem name_is_taken() const;
  [[nodiscard]] base::Problem cannot_be_made(const std::string& why) const;

  std::filesystem::path path_;
  std::filesystem::path scratch_;  // empty until it is made
};

}  // namespace keenfall::workbench
