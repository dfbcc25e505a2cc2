#include "workbench/app_journal.h"

#include "workbench/notebook_changes.h"
#include "workbench/notebook_pages.h"

namespace keenfall::workbench {

base::Result<wire::JournalPage> journal_page(const std::string& notebook,
                                             const JournalWanted& wanted) {
  const auto journal = journal_in(notebook);
  if (!journal) return base::failed(journal.error());
  wire::JournalPage page;
  for (auto entry = journal->rbegin(); entry != journal->rend(); ++entry) {
    if (wanted.before && entry->entry >= *wanted.before) continue;
    if (page.entries.size() == wanted.limit) {
      page.next_before = page.entries.back().entry;
      break;
    }
    page.entries.push_back(*entry);
  }
  return page;
}

base::Result<wire::Changed> undone(const std::string& notebook,
                                   std::int64_t entry,
                                   const Hand& hand) {
  const auto undoing = undo_in(notebook, entry, hand);
  if (!undoing) return base::failed(undoing.error());
  return wire::Changed{
      .entry = undoing->entry, .last_entry = undoing->entry, .what = undoing->what};
}

}  // namespace keenfall::workbench
