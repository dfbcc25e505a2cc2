// Which parts of tables are to be left out, and the sentence that says why, for each of them once.
//
// Of very many different sentences only the first are kept; parts with a later one have none.
#pragma once

#include "exchange/table_part.h"

#include <cstddef>
#include <map>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

namespace keenfall::exchange {

class BlamedParts {
 public:
  static constexpr std::size_t kMostReasons = 1000;

  struct Blame {
    std::size_t reason = 0;  // among those kept; kMostReasons: not kept
    std::string header;      // over a cell that is known by it
  };

  // The first reason stands.
  void add(std::span<const TablePart> parts,
           const std::string& sentence,
           const std::string& header = "") {
    const auto known = number_of_.find(sentence);
    std::size_t reason = kMostReasons;
    if (known != number_of_.end()) {
      reason = known->second;
    } else if (reasons_.size() < kMostReasons) {
      reason = reasons_.size();
      number_of_.emplace(sentence, reason);
      reasons_.push_back(sentence);
    }
    for (const TablePart& part : parts) parts_.emplace(part, Blame{reason, header});
  }

  void add_all_of(const BlamedParts& others) {
    for (const auto& [part, blame] : others.parts_) {
      add({&part, 1}, others.sentence_of(blame), blame.header);
    }
  }

  [[nodiscard]] const std::map<TablePart, Blame>& parts() const { return parts_; }
  // Empty: not kept.
  [[nodiscard]] std::string sentence_of(const Blame& blame) const {
    return blame.reason < reasons_.size() ? reasons_[blame.reason] : std::string();
  }

 private:
  std::map<TablePart, Blame> parts_;
  std::vector<std::string> reasons_;
  std::unordered_map<std::string, std::size_t> number_of_;
};

}  // namespace keenfall::exchange
