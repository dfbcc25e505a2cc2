// Which runs of the bench were put into their trial, by the journal. Private to the folder.
//
// A run is put into its trial by one entry of the journal, which is known again by its client id.
// It is out again where that was undone, or by an entry that takes it out.
#pragma once

#include "notebook/notebook.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>

namespace keenfall::workbench {

// How such client ids begin.
[[nodiscard]] std::string put_in_client_id(const std::string& run_uid);
[[nodiscard]] std::string take_out_client_id(const std::string& run_uid);

// The newest that put it in and holds; and how often it was put in.
struct PutIn {
  std::optional<notebook::JournalEntry> holds;
  std::size_t times = 0;
};

[[nodiscard]] PutIn put_in(std::span<const notebook::JournalEntry> journal,
                           const std::string& run_uid);
[[nodiscard]] PutIn put_in(const notebook::Notebook& opened, const std::string& run_uid);

}  // namespace keenfall::workbench
