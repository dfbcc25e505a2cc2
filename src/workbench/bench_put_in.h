// Which runs of the bench were put into their trial, by the journal. Private to the folder.
//
// A run is put into its trial by one entry of the journal, which is known again by its client id.
#pragma once

#include "notebook/notebook.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>

namespace keenfall::workbench {

// How such a client id begins.
[[nodiscard]] std::string put_in_client_id(const std::string& run_uid);

// The newest of them that holds; and how many there were.
struct PutIn {
  std::optional<notebook::JournalEntry> holds;
  std::size_t times = 0;
};

[[nodiscard]] PutIn put_in(std::span<const notebook::JournalEntry> journal,
                           const std::string& run_uid);
[[nodiscard]] PutIn put_in(const notebook::Notebook& opened, const std::string& run_uid);

}  // namespace keenfall::workbench
