// A file that is made only where nothing is, and gone again unless it is kept. Private to the
// folder.
//
// What lies beside the name is another's: where a log (-wal, -journal) with something in it does,
// SQLite would take it for the new file's, and the file is not made.
#pragma once

#include "base/result.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

// The problem with making a file of this name, if any: it is taken, or a log lies beside it.
// `kind`: "notebook", "copy".
[[nodiscard]] std::optional<base::Problem> problem_of_new_name(const std::string& path,
                                                               const std::string& kind);

class NewFile {
 public:
  [[nodiscard]] static base::Result<NewFile> make(const std::string& path, const std::string& kind);

  NewFile(NewFile&& other) noexcept;
  NewFile& operator=(NewFile&&) = delete;
  NewFile(const NewFile&) = delete;
  NewFile& operator=(const NewFile&) = delete;
  ~NewFile();  // takes away the file, and what was not beside it when it was made

  void keep() { made_.clear(); }

 private:
  explicit NewFile(std::vector<std::string> made);

  std::vector<std::string> made_;  // paths
};

}  // namespace keenfall::notebook
