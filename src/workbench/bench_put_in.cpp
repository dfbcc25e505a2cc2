#include "workbench/bench_put_in.h"

namespace keenfall::workbench {

std::string put_in_client_id(const std::string& run_uid) { return "bench " + run_uid + " "; }

PutIn put_in(std::span<const notebook::JournalEntry> journal, const std::string& run_uid) {
  PutIn found;
  for (const notebook::JournalEntry& entry : journal) {
    if (!entry.client_id.starts_with(put_in_client_id(run_uid))) continue;
    ++found.times;
    if (!entry.undone_by) found.holds = entry;
  }
  return found;
}

PutIn put_in(const notebook::Notebook& opened, const std::string& run_uid) {
  return put_in(opened.journal(), run_uid);
}

}  // namespace keenfall::workbench
