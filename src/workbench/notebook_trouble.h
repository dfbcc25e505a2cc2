// What goes wrong with a notebook that is nobody's slip, with the file's name: the disk is full, a
// page is damaged. Thrown; what() is for a person, in whole sentences.
#pragma once

#include <stdexcept>

namespace keenfall::workbench {

class NotebookTrouble : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

}  // namespace keenfall::workbench
