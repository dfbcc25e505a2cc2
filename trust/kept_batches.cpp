#include "trust/kept_batches.h"

#include "trust/measuring/text_hash.h"

#include <charconv>
#include <fstream>
#include <optional>
#include <string_view>
#include <utility>

namespace keenfall::trust {

namespace {

constexpr std::string_view kBatch = "batch ";

struct BatchLine {
  int batch = 0;
  Sums sums;
};

// "batch 12: trials=50;..."
std::optional<BatchLine> batch_in(std::string_view line) {
  if (!line.starts_with(kBatch)) return std::nullopt;
  line.remove_prefix(kBatch.size());
  BatchLine found;
  const auto number = std::from_chars(line.data(), line.data() + line.size(), found.batch);
  line.remove_prefix(static_cast<std::size_t>(number.ptr - line.data()));
  if (number.ec != std::errc() || !line.starts_with(": ")) return std::nullopt;
  auto sums = sums_in(line.substr(2));
  if (!sums) return std::nullopt;
  found.sums = std::move(*sums);
  return found;
}

std::string text_of(int batch, const Sums& sums) {
  return std::string(kBatch) + std::to_string(batch) + ": " + in_one_line(sums) + "\n";
}

// "keenfall trust; definition 0123...; code 4567...; commit 89ab..."
std::string up_to_commit(const std::string& head) { return head.substr(0, head.rfind(';')); }

}  // namespace

KeptBatches::KeptBatches(const std::filesystem::path& folder,
                         const Experiment& experiment,
                         const MadeBy& made_by)
    : file_(folder / (experiment.name + ".txt")),
      head_("keenfall trust; definition " + text_hash_digits(experiment.definition) + "; code " +
            (made_by.code.empty() ? "uncommitted" : made_by.code) + "; commit " +
            (made_by.commit.empty() ? "none" : made_by.commit)) {
  std::filesystem::create_directories(folder);
  read(made_by.code);
}

void KeptBatches::read(const std::string& code) {
  std::ifstream in(file_);
  std::string line;
  if (!std::getline(in, line)) return;
  if (code.empty() || up_to_commit(line) != up_to_commit(head_)) {
    others_were_there_ = true;
    return;
  }
  head_ = line;
  while (std::getline(in, line)) {
    if (in.eof()) break;  // no line's end: cut off
    if (auto found = batch_in(line)) batches_[found->batch] = std::move(found->sums);
  }
}

Sums KeptBatches::total() const {
  Sums sums;
  for (const auto& kept : batches_) add_all(sums, kept.second);
  return sums;
}

void KeptBatches::begin_file() const {
  std::ofstream out;
  out.exceptions(std::ios::badbit | std::ios::failbit);
  out.open(file_, std::ios::trunc);
  out << head_ << '\n';
  for (const auto& [batch, sums] : batches_) out << text_of(batch, sums);
}

void KeptBatches::keep(int batch, const Sums& sums) {
  if (!begun_) begin_file();
  begun_ = true;
  std::ofstream out;
  out.exceptions(std::ios::badbit | std::ios::failbit);
  out.open(file_, std::ios::app);
  out << text_of(batch, sums) << std::flush;
  batches_[batch] = sums;
}

}  // namespace keenfall::trust
