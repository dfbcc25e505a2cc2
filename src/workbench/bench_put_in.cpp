#include "workbench/bench_put_in.h"

namespace keenfall::workbench {

std::string put_in_client_id(const std::string& run_uid) { return "bench " + run_uid + " "; }

std::string take_out_client_id(const std::string& run_uid) { return "bench out " + run_uid + " "; }

PutIn put_in(std::span<const notebook::JournalEntry> journal, const std::string& run_uid) {
  PutIn found;
  for (const notebook::JournalEntry& entry : journal) {
    const bool takes_out =
        !entry.undone_by && entry.client_id.starts_with(take_out_client_id(run_uid));
    if (takes_out) found.holds.reset();
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
