#include "notebook/disk_record.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>

namespace keenfall::notebook::testing {

namespace {

constexpr std::uint64_t kSectorBytes = 512;

void grow_into_anything(std::string& content, std::uint64_t size, DiskRecord::Random& random) {
  const bool is_zeros = random() % 2 == 0;
  while (content.size() < size) content += is_zeros ? '\0' : static_cast<char>(random());
}

}  // namespace

bool DiskRecord::knows(const std::string& name) const { return now_.contains(name); }

void DiskRecord::found(const std::string& name, const std::string& content) {
  now_[name] = std::make_shared<Content>(Content{.certain = content});
  certain_[name] = now_[name];
}

void DiskRecord::made(const std::string& name) { now_[name] = std::make_shared<Content>(); }

void DiskRecord::wrote(const std::string& name, std::uint64_t place, const std::string& bytes) {
  now_.at(name)->since.push_back({.place = place, .bytes = bytes});
}

void DiskRecord::resized(const std::string& name, std::uint64_t size) {
  now_.at(name)->since.push_back({.place = size, .is_resize = true});
}

void DiskRecord::removed(const std::string& name) { now_.erase(name); }

void DiskRecord::synced(const std::string& name) {
  Content& content = *now_.at(name);
  Random unused;  // nothing is left open: writes in their order leave no room unwritten
  for (const Write& write : content.since) put(content.certain, write, unused);
  content.since.clear();
}

void DiskRecord::folder_synced() { certain_ = now_; }

void DiskRecord::put(std::string& content, const Write& write, Random& random) {
  const std::uint64_t end = write.place + write.bytes.size();
  if (write.is_resize && content.size() > end) content.resize(end);
  grow_into_anything(content, end, random);
  std::ranges::copy(write.bytes, content.begin() + static_cast<std::ptrdiff_t>(write.place));
}

void DiskRecord::put_torn(std::string& content, const Write& write, Random& random) {
  std::uint64_t done = 0;
  while (done < write.bytes.size()) {
    const std::uint64_t place = write.place + done;
    const std::uint64_t size =
        std::min<std::uint64_t>(kSectorBytes - place % kSectorBytes, write.bytes.size() - done);
    if (random() % 2 == 0) {
      put(content, {.place = place, .bytes = write.bytes.substr(done, size)}, random);
    }
    done += size;
  }
}

std::string DiskRecord::one_of_its_states(const Content& content, Random& random) {
  std::string state = content.certain;
  std::vector<Write> writes = content.since;
  constexpr std::uint64_t kMost = 8;
  const std::uint64_t eighths_that_arrive = random() % (kMost + 1);  // none up to all
  const bool in_order = random() % 4 == 0;
  if (!in_order) std::ranges::shuffle(writes, random);
  std::uint64_t longest = state.size();
  for (const Write& write : writes) {
    longest = std::max<std::uint64_t>(longest, write.place + write.bytes.size());
    if (random() % kMost >= eighths_that_arrive) continue;
    if (random() % 4 == 0 && !write.is_resize) {
      put_torn(state, write, random);
    } else {
      put(state, write, random);
    }
  }
  if (random() % 4 == 0) grow_into_anything(state, longest, random);
  return state;
}

void DiskRecord::leave(const std::string& folder, Random& random) const {
  std::set<std::string> names;
  for (const auto& [name, content] : now_) names.insert(name);
  for (const auto& [name, content] : certain_) names.insert(name);
  for (const std::string& name : names) {
    const Names& source = random() % 2 == 0 ? now_ : certain_;
    const auto found = source.find(name);
    if (found == source.end()) continue;
    const std::string bytes = one_of_its_states(*found->second, random);
    std::ofstream(std::filesystem::path(folder) / name, std::ios::binary)
        .write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  }
}

}  // namespace keenfall::notebook::testing
