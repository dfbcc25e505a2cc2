#include "server/paired_devices.h"

#include "server/key.h"
#include "workbench/written_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <utility>

namespace keenfall::server {

namespace {

using std::chrono::minutes;
using std::chrono::seconds;

// Without those that look alike: 0 and O, 1, I and L.
constexpr std::string_view kLetters = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
constexpr std::size_t kCodeLength = 8;
constexpr minutes kCodeLives{10};
constexpr unsigned kMostWrongTries = 5;
constexpr std::size_t kMostWrongAMinute = 20;
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

Refusal wrong_code() {
  return {.status = 403,
          .kind = "not_allowed",
          .sentence =
              "This code lets nobody in. A code is good once, for ten minutes, and not "
              "after five wrong ones: ask for a new one at the desk."};
}

}  // namespace

PairedDevices::PairedDevices(Settings settings) : settings_(std::move(settings)) {
  if (!settings_.now) settings_.now = [] { return Clock::now(); };
  if (!settings_.file.empty()) devices_ = kept_in(settings_.file);
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

tl::expected<std::string, Refusal> PairedDevices::let_in(const wire::AskToBeLetIn& ask) {
  const std::string key = random_key();
  wire::Device device{.id = random_key(),
                      .name = ask.name,
                      .key_digest = digest_of_key(key),
                      .let_in_at_utc = settings_.utc_now(),
                      .last_seen_at_utc = settings_.utc_now()};
  const std::scoped_lock lock(mutex_);
  while (!wrong_tries_.empty() && wrong_tries_.front() <= settings_.now() - minutes{1}) {
    wrong_tries_.pop_front();
  }
  if (wrong_tries_.size() >= kMostWrongAMinute) {
    return tl::unexpected(Refusal{.status = 429,
                                  .kind = "not_allowed",
                                  .sentence = "Too many codes were tried. Wait a minute."});
  }
  if (!is_right(ask.code)) {
    wrong_tries_.push_back(settings_.now());
    return tl::unexpected(wrong_code());
  }
  live_.reset();
  devices_.push_back(std::move(device));
  if (keep()) return key;
  devices_.pop_back();
  return tl::unexpected(Refusal{.status = 500,
                                .kind = "failed",
                                .sentence = "This device cannot be let in: " + settings_.file +
                                            " cannot be written on the machine at the desk."});
}

bool PairedDevices::is_let_in(std::string_view key) {
  const std::string digest = digest_of_key(key);
  const std::scoped_lock lock(mutex_);
  const auto device = std::ranges::find(devices_, digest, &wire::Device::key_digest);
  if (device == devices_.end()) return false;
  device->last_seen_at_utc = settings_.utc_now();
  if (settings_.now() >= seen_kept_at_ + kSeenKeptEvery) {
    seen_kept_at_ = settings_.now();
    (void)keep();  // when it was seen may be lost; it is let in all the same
  }
  return true;
}

std::vector<wire::Device> PairedDevices::all() {
  const std::scoped_lock lock(mutex_);
  return devices_;
}

bool PairedDevices::put_out(const std::string& id) {
  const std::scoped_lock lock(mutex_);
  const auto device = std::ranges::find(devices_, id, &wire::Device::id);
  if (device == devices_.end()) return false;
  devices_.erase(device);
  if (keep()) return true;
  throw std::runtime_error("the device is put out until Keenfall is stopped, since " +
                           settings_.file + " cannot be written");
}

bool PairedDevices::keep() {
  if (settings_.file.empty()) return true;
  return !workbench::write_whole_file(
      settings_.file, wire::kept_devices_to_json(devices_), workbench::Existing::is_replaced);
}

}  // namespace keenfall::server
