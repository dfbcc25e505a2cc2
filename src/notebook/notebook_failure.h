// What goes wrong with a notebook that is nobody's slip: the disk is full, a page is damaged.
// Thrown; what() is a sentence for a person, without the file's name.
#pragma once

#include <stdexcept>

namespace keenfall::notebook {

// The machine failed. What was acknowledged before is there; the change being made is not, or the
// sentence says that it may be.
class NotebookFailure : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

// The file is not as it was written. `keenfall check` says where.
class NotebookDamaged : public NotebookFailure {
 public:
  using NotebookFailure::NotebookFailure;
};

}  // namespace keenfall::notebook
