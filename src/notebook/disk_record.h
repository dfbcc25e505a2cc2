// For tests: what a disk may hold after the power went, of files whose every write is known.
//
// Strict: what a finished sync of a file covered is there. What was written since may be there in
// any order, as a whole, torn at 512 bytes, or not at all, and room that a file grew into without
// being written holds anything. A name that was made or taken away since its folder was last synced
// is as before or as after.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <random>
#include <string>
#include <vector>

namespace keenfall::notebook::testing {

class DiskRecord {
 public:
  using Random = std::mt19937_64;

  // `name` is without its folder; all lie in one.
  [[nodiscard]] bool knows(const std::string& name) const;          // and it was not removed
  void found(const std::string& name, const std::string& content);  // there for long
  void made(const std::string& name);                               // just now, empty
  void wrote(const std::string& name, std::uint64_t place, const std::string& bytes);
  void resized(const std::string& name, std::uint64_t size);
  void removed(const std::string& name);
  void synced(const std::string& name);
  void folder_synced();

  // Puts one of the states that may be left into an empty folder.
  void leave(const std::string& folder, Random& random) const;

 private:
  struct Write {
    std::uint64_t place = 0;
    std::string bytes;
    bool is_resize = false;  // to `place`
  };
  struct Content {
    std::string certain;
    std::vector<Write> since;
  };
  using Names = std::map<std::string, std::shared_ptr<Content>>;

  static void put(std::string& content, const Write& write, Random& random);
  static void put_torn(std::string& content, const Write& write, Random& random);
  static std::string one_of_its_states(const Content& content, Random& random);

  Names now_;
  Names certain_;
};

}  // namespace keenfall::notebook::testing
