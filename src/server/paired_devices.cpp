#include "server/paired_devices.h"

#include "server/key.h"
#include "workbench/written_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <utility>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace keenfall::server {

namespace {

using std::chrono::minutes;
using std::chrono::seconds;

// Without those that look alike: 0 and O, 1, I and L.
constexpr std::string_view kLetters = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
constexpr std::size_t kCodeLength = 8;
constexpr minutes kCodeLives{10};
constexpr unsigned kMostWrongTries = 100;
constexpr std::ptrdiff_t kMostWrongAMinute = 5;  // from one address
constexpr seconds kSeenKeptEvery{60};

// As it was meant: in capitals, without what stands between.
std::string bare(std::string_view code) {
  std::string letters;
  for (const char c : code) {
    const bool is_small = c >= 'a' && c <= 'z';
    const char capital = is_small ? static_cast<char>(c - 'a' + 'A') : c;
    if (kLetters.find(capital) != std::string_view::npos) letters += capital;
  }
  return letters;
}

std::vector<wire::Device> kept_in(const std::string& path) {
  std::ifstream file(path);
  const std::string text((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
  return wire::kept_devices_from(text).value_or(std::vector<wire::Device>());
}

// Another one once it was written: it is replaced as a whole then. Empty: there is none.
std::string which_file(const std::string& path) {
  struct stat facts {};
  if (stat(path.c_str(), &facts) != 0) return {};
  return std::to_string(facts.st_ino) + " " + std::to_string(facts.st_mtim.tv_sec) + " " +
         std::to_string(facts.st_mtim.tv_nsec);
}

// No other program that asks for the same holds it meanwhile; it goes with the process, too.
class LockedBeside {
 public:
  explicit LockedBeside(const std::string& path)
      : file_(open((path + ".lock").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, S_IRUSR | S_IWUSR)) {
    is_held_ = file_ >= 0 && flock(file_, LOCK_EX) == 0;
  }
  LockedBeside(const LockedBeside&) = delete;
  LockedBeside& operator=(const LockedBeside&) = delete;
  LockedBeside(LockedBeside&&) = delete;
  LockedBeside& operator=(LockedBeside&&) = delete;
  ~LockedBeside() {
    if (file_ >= 0) close(file_);
  }
  [[nodiscard]] bool is_held() const { return is_held_; }

 private:
  int file_ = -1;
  bool is_held_ = false;
};

Refusal wrong_code() {
  return {.status = 403,
          .kind = "not_allowed",
          .sentence =
              "This code lets nobody in. A code is good once, and for ten minutes: ask for "
              "a new one at the desk."};
}

}  // namespace

PairedDevices::PairedDevices(Settings settings) : settings_(std::move(settings)) {
  if (!settings_.now) settings_.now = [] { return Clock::now(); };
  look_at_file();
}

PairingCode PairedDevices::new_code() {
  const std::string letters = random_text(kLetters, kCodeLength);
  const std::size_t half = kCodeLength / 2;
  const std::scoped_lock lock(mutex_);
  live_ = {.code = letters.substr(0, half) + "-" + letters.substr(half),
           .until = settings_.now() + kCodeLives};
  return {.code = live_->code, .left = kCodeLives};
}

std::optional<PairingCode> PairedDevices::code() {
  const std::scoped_lock lock(mutex_);
  if (!live_ || settings_.now() >= live_->until) return std::nullopt;
  return PairingCode{.code = live_->code,
                     .left = std::chrono::ceil<seconds>(live_->until - settings_.now())};
}

bool PairedDevices::is_right(std::string_view code) {
  if (!live_ || settings_.now() >= live_->until) return false;
  if (is_key(bare(code), bare(live_->code))) return true;
  if (++live_->wrong_tries >= kMostWrongTries) live_.reset();
  return false;
}

void PairedDevices::forget_old_tries() {
  const auto before = settings_.now() - kCodeLives;
  while (!wrong_tries_.empty() && wrong_tries_.front().at <= before) wrong_tries_.pop_front();
}

std::string PairedDevices::wrong_tries_in_words() {
  const std::scoped_lock lock(mutex_);
  forget_old_tries();
  if (wrong_tries_.empty()) return {};
  const std::size_t count = wrong_tries_.size();
  return (count == 1 ? std::string("A wrong code was")
                     : std::to_string(count) + " wrong codes were") +
         " tried in the last ten minutes, the last from " + wrong_tries_.back().from + ".";
}

tl::expected<std::string, Refusal> PairedDevices::let_in(const wire::AskToBeLetIn& ask,
                                                         const std::string& from) {
  {
    const std::scoped_lock lock(mutex_);
    forget_old_tries();
    const auto a_minute_ago = settings_.now() - minutes{1};
    const auto is_from_there = [&](const WrongTry& one) {
      return one.from == from && one.at > a_minute_ago;
    };
    if (std::ranges::count_if(wrong_tries_, is_from_there) >= kMostWrongAMinute) {
      return tl::unexpected(
          Refusal{.status = 429,
                  .kind = "not_allowed",
                  .sentence = "Too many wrong codes were tried from here. Wait a minute."});
    }
    if (!is_right(ask.code)) {
      wrong_tries_.push_back({.from = from, .at = settings_.now()});
      return tl::unexpected(wrong_code());
    }
    live_.reset();
  }
  const std::string key = random_key();
  const std::string now = settings_.utc_now();
  const wire::Device device{.id = random_key(),
                            .name = ask.name,
                            .key_digest = digest_of_key(key),
                            .let_in_at_utc = now,
                            .last_seen_at_utc = now};
  if (keep([&](auto& devices) { devices.push_back(device); })) return key;
  return tl::unexpected(Refusal{.status = 500,
                                .kind = "failed",
                                .sentence = "This device cannot be let in: " + settings_.file +
                                            " cannot be written on the machine at the desk."});
}

bool PairedDevices::is_let_in(std::string_view key) {
  const std::string digest = digest_of_key(key);
  const std::scoped_lock lock(mutex_);
  look_at_file();
  const auto device = std::ranges::find(devices_, digest, &wire::Device::key_digest);
  if (device == devices_.end()) return false;
  device->last_seen_at_utc = settings_.utc_now();
  seen_at_[device->id] = device->last_seen_at_utc;
  return true;
}

void PairedDevices::keep_seen() {
  std::map<std::string, std::string> seen_at;
  {
    const std::scoped_lock lock(mutex_);
    if (seen_at_.empty() || settings_.now() < seen_kept_at_ + kSeenKeptEvery) return;
    seen_kept_at_ = settings_.now();
    seen_at.swap(seen_at_);
  }
  // When one was seen may be lost; it is let in all the same.
  (void)keep([&seen_at](auto& devices) {
    for (wire::Device& device : devices) {
      const auto seen = seen_at.find(device.id);
      if (seen != seen_at.end()) device.last_seen_at_utc = seen->second;
    }
  });
}

std::vector<wire::Device> PairedDevices::all() {
  const std::scoped_lock lock(mutex_);
  look_at_file();
  return devices_;
}

bool PairedDevices::put_out(const std::string& id) {
  std::size_t gone = 0;
  const bool is_kept = keep([&](auto& devices) {
    gone = std::erase_if(devices, [&id](const wire::Device& device) { return device.id == id; });
  });
  if (is_kept || gone == 0) return gone > 0;
  throw std::runtime_error("the device cannot be put out, since " + settings_.file +
                           " cannot be written");
}

void PairedDevices::look_at_file() {
  if (settings_.file.empty()) return;
  const std::string now = which_file(settings_.file);
  if (now == file_as_read_) return;
  file_as_read_ = now;
  devices_ = kept_in(settings_.file);
}

bool PairedDevices::keep(const Change& change) {
  const std::scoped_lock alone(keeping_);
  if (settings_.file.empty()) {
    const std::scoped_lock lock(mutex_);
    change(devices_);
    return true;
  }
  const LockedBeside locked(settings_.file);
  std::vector<wire::Device> devices = kept_in(settings_.file);
  change(devices);
  const bool is_kept =
      locked.is_held() &&
      !workbench::write_whole_file(
          settings_.file, wire::kept_devices_to_json(devices), workbench::Existing::is_replaced);
  if (!is_kept) return false;
  const std::scoped_lock lock(mutex_);
  file_as_read_ = which_file(settings_.file);
  devices_ = std::move(devices);
  return true;
}

}  // namespace keenfall::server
