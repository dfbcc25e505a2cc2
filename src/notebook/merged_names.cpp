#include "notebook/merged_names.h"

#include <algorithm>
#include <set>
#include <utility>

namespace keenfall::notebook {

namespace {

// Of blades or trials.
struct NamesByUid {
  std::map<std::string, std::string> names;  // by uid
  std::map<std::string, std::string> uids;   // by name
};

NamesByUid names_in(SQLite::Database& database, const std::string& table) {
  NamesByUid found;
  SQLite::Statement rows(database, "SELECT uid, name FROM " + table + " ORDER BY " + table + "_id");
  while (rows.executeStep()) {
    const std::string uid = rows.getColumn(0).getString();
    const std::string name = rows.getColumn(1).getString();
    found.names[uid] = name;
    found.uids[name] = uid;
  }
  return found;
}

std::set<std::string> texts_of(SQLite::Database& database,
                               const std::string& query,
                               const std::string& trial) {
  std::set<std::string> found;
  SQLite::Statement rows(database, query + " WHERE trial.name = ?");
  rows.bind(1, trial);
  while (rows.executeStep()) found.insert(rows.getColumn(0).getString());
  return found;
}

std::set<std::string> tables_of(SQLite::Database& database, const std::string& trial) {
  return texts_of(database, "SELECT sha256 FROM taken_table JOIN trial USING (trial_id)", trial);
}

std::set<std::string> blades_of(SQLite::Database& database, const std::string& trial) {
  return texts_of(database,
                  "SELECT blade.name FROM trial_blade JOIN trial USING (trial_id) JOIN blade USING "
                  "(blade_id)",
                  trial);
}

bool have_one_in_common(const std::set<std::string>& one, const std::set<std::string>& other) {
  return std::ranges::any_of(one, [&](const std::string& text) { return other.contains(text); });
}

class Matching {
 public:
  Matching(SQLite::Database& here, SQLite::Database& there, const MergeRules& rules)
      : here_(here), there_(there), rules_(rules) {}

  MergedNames names() {
    match("trial", found_.trials, [&](const std::string& name) {
      return have_one_in_common(tables_of(here_, name), tables_of(there_, name));
    });
    const std::set<std::string> sure = blades_of_one_trials();
    match("blade", found_.blades, [&](const std::string& name) { return sure.contains(name); });
    return std::move(found_);
  }

 private:
  template <class IsSurelyOne>
  void match(const std::string& what,
             std::map<std::string, std::string>& names,
             IsSurelyOne is_surely_one) {
    const NamesByUid ours = names_in(here_, what);
    const NamesByUid theirs = names_in(there_, what);
    for (const auto& [name, uid] : theirs.uids) {
      const auto by_uid = ours.names.find(uid);
      if (by_uid != ours.names.end()) {
        names[name] = by_uid->second;
        continue;
      }
      names[name] = name;
      if (!ours.uids.contains(name) || is_surely_one(name)) continue;
      switch (rules_.alike_names) {
        case AlikeNames::are_one:
          break;
        case AlikeNames::are_apart:
          set_apart(what, name, ours.uids, names);
          break;
        case AlikeNames::in_conflict:
          names.erase(name);
          add_conflict(what, name);
          break;
      }
    }
    refuse_two_in_one(what, names);
  }

  // Two of there that would be one here.
  void refuse_two_in_one(const std::string& what, std::map<std::string, std::string>& names) {
    std::map<std::string, std::string> first;  // there, by name here
    for (const auto& [there, here] : names) {
      const auto [other, is_new] = first.try_emplace(here, there);
      if (is_new) continue;
      found_.problems.push_back({.kind = base::ProblemKind::conflicting,
                                 .sentence = "The other notebook's " + what + "s " + other->second +
                                             " and " + there + " would both be " + here + " here.",
                                 .accepted = "--apart with another name"});
    }
  }

  void set_apart(const std::string& what,
                 const std::string& name,
                 const std::map<std::string, std::string>& ours,
                 std::map<std::string, std::string>& names) {
    const std::string apart = name + " (" + rules_.apart + ")";
    if (ours.contains(apart)) return add_conflict(what, apart);
    names[name] = apart;
    found_.remarks.push_back("The other notebook's " + what + " " + name + " is called " + apart +
                             " here.");
  }

  void add_conflict(const std::string& what, const std::string& name) {
    found_.problems.push_back(
        {.kind = base::ProblemKind::conflicting,
         .sentence = "Both notebooks have a " + what + " called " + name +
                     ", and nothing says that it is the same one.",
         .accepted = "--same, if what is called alike is the same; --apart=NAME, if it is not"});
  }

  std::set<std::string> blades_of_one_trials() {
    std::set<std::string> sure;
    const NamesByUid ours = names_in(here_, "trial");
    for (const auto& [there, here] : found_.trials) {
      if (!ours.uids.contains(here)) continue;
      const std::set<std::string> of_ours = blades_of(here_, here);
      for (const std::string& name : blades_of(there_, there)) {
        if (of_ours.contains(name)) sure.insert(name);
      }
    }
    return sure;
  }

  SQLite::Database& here_;
  SQLite::Database& there_;
  const MergeRules& rules_;
  MergedNames found_;
};

}  // namespace

MergedNames merged_names(SQLite::Database& here, SQLite::Database& there, const MergeRules& rules) {
  return Matching(here, there, rules).names();
}

}  // namespace keenfall::notebook
