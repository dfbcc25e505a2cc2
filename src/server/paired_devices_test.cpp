#include "server/paired_devices.h"

#include "server/http_message.h"
#include "server/key.h"
#include "server/own_folder_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace keenfall::server {
namespace {

using ::testing::HasSubstr;
using ::testing::MatchesRegex;
using namespace std::chrono_literals;

const std::string kHere = "192.168.1.9";
const std::string kElsewhere = "192.168.1.66";

class PairedDevicesTest : public ::testing::Test {
 protected:
  PairedDevices devices() {
    return PairedDevices(
        {.file = file_, .now = [this] { return now_; }, .utc_now = [this] { return utc_; }});
  }
  static int refused_with(PairedDevices& devices,
                          const std::string& code,
                          const std::string& from = kHere) {
    const auto key = devices.let_in({.code = code, .name = "phone"}, from);
    return key ? 0 : key.error().status;
  }

  testing::OwnFolder scratch_{"devices"};
  std::string file_ = scratch_.file("devices.json");
  PairedDevices::Clock::time_point now_{};
  std::string utc_ = "2026-11-28T12:00:00Z";
};

TEST_F(PairedDevicesTest, AreLetInByACodeOnce) {
  PairedDevices devices = this->devices();
  const std::string code = devices.new_code().code;
  EXPECT_THAT(code, MatchesRegex("[2-9A-Z]{4}-[2-9A-Z]{4}"));

  const auto key = devices.let_in({.code = code, .name = "phone"}, kHere);

  ASSERT_TRUE(key);
  EXPECT_TRUE(devices.is_let_in(*key));
  EXPECT_FALSE(devices.code());
  EXPECT_EQ(refused_with(devices, code), 403);
  EXPECT_EQ(devices.all().size(), 1U);
}

TEST_F(PairedDevicesTest, TakeACodeAsItIsTyped) {
  PairedDevices devices = this->devices();
  std::string typed = " " + in_lower_case(devices.new_code().code) + " ";
  typed.replace(5, 1, " ");

  EXPECT_EQ(refused_with(devices, typed), 0);
}

TEST_F(PairedDevicesTest, LetNobodyInByNoCode) {
  PairedDevices devices = this->devices();

  EXPECT_EQ(refused_with(devices, ""), 403);
  EXPECT_FALSE(devices.is_let_in(""));
  (void)devices.new_code();
  EXPECT_EQ(refused_with(devices, ""), 403);
  EXPECT_EQ(refused_with(devices, "2222"), 403);
}

TEST_F(PairedDevicesTest, LetNobodyInByACodeThatIsOldOrReplaced) {
  PairedDevices devices = this->devices();
  const std::string first = devices.new_code().code;
  const std::string second = devices.new_code().code;
  EXPECT_EQ(refused_with(devices, first), 403);
  now_ += 10min - 1s;
  EXPECT_EQ(devices.code()->left, 1s);
  now_ += 1s;

  EXPECT_FALSE(devices.code());
  EXPECT_EQ(refused_with(devices, second), 403);
}

TEST_F(PairedDevicesTest, LetNobodyInByGuessing) {
  PairedDevices devices = this->devices();
  const std::string code = devices.new_code().code;

  for (int guess = 0; guess < 100; ++guess) {
    EXPECT_EQ(refused_with(devices, "AAAA-AAAA", "10.0.0." + std::to_string(guess)), 403);
  }

  EXPECT_FALSE(devices.code());
  EXPECT_EQ(refused_with(devices, code), 403);
}

TEST_F(PairedDevicesTest, LookAtNoFurtherCodeFromWhereTooManyWereTried) {
  PairedDevices devices = this->devices();
  const std::string code = devices.new_code().code;
  for (int guess = 0; guess < 5; ++guess) {
    EXPECT_EQ(refused_with(devices, "AAAA-AAAA", kElsewhere), 403);
  }

  EXPECT_EQ(refused_with(devices, code, kElsewhere), 429);
  EXPECT_EQ(devices.wrong_tries_in_words(),
            "5 wrong codes were tried in the last ten minutes, the last from 192.168.1.66.");
  EXPECT_EQ(refused_with(devices, code), 0);
  const std::string next = devices.new_code().code;
  now_ += 1min;
  EXPECT_EQ(refused_with(devices, next, kElsewhere), 0);
  now_ += 10min;
  EXPECT_EQ(devices.wrong_tries_in_words(), "");
}

TEST_F(PairedDevicesTest, ArePutOutForGood) {
  PairedDevices devices = this->devices();
  const auto phone = devices.let_in({.code = devices.new_code().code, .name = "phone"}, kHere);
  const auto tablet = devices.let_in({.code = devices.new_code().code, .name = "tablet"}, kHere);

  EXPECT_TRUE(devices.put_out(devices.all().front().id));

  EXPECT_FALSE(devices.is_let_in(*phone));
  EXPECT_TRUE(devices.is_let_in(*tablet));
  PairedDevices after = this->devices();
  EXPECT_FALSE(after.is_let_in(*phone));
  EXPECT_TRUE(after.is_let_in(*tablet));
  EXPECT_FALSE(after.put_out("nobody"));
}

TEST_F(PairedDevicesTest, AreKnownAgainByAFileThatLetsNobodyIn) {
  PairedDevices devices = this->devices();
  const auto key =
      devices.let_in({.code = devices.new_code().code, .name = "phone \"1\" ä"}, kHere);

  PairedDevices after = this->devices();

  EXPECT_EQ(after.all(), devices.all());
  EXPECT_TRUE(after.is_let_in(*key));
  EXPECT_FALSE(after.is_let_in(after.all().front().id));
  EXPECT_FALSE(after.is_let_in(after.all().front().key_digest));
}

TEST_F(PairedDevicesTest, AreTheSameForTwoProgramsThatShareTheFile) {
  PairedDevices one = devices();
  PairedDevices other = devices();
  const auto phone = one.let_in({.code = one.new_code().code, .name = "phone"}, kHere);
  const auto tablet = other.let_in({.code = other.new_code().code, .name = "tablet"}, kHere);

  EXPECT_EQ(one.all(), other.all());
  EXPECT_EQ(one.all().size(), 2U);
  EXPECT_TRUE(one.put_out(one.all().front().id));
  now_ += 30min;
  EXPECT_TRUE(other.is_let_in(*tablet));
  EXPECT_FALSE(other.is_let_in(*phone));
  EXPECT_FALSE(devices().is_let_in(*phone));
}

TEST_F(PairedDevicesTest, SayWhenTheyWereSeenLast) {
  PairedDevices devices = this->devices();
  const auto key = devices.let_in({.code = devices.new_code().code, .name = "phone"}, kHere);
  utc_ = "2026-11-28T12:30:00Z";
  now_ += 30min;

  EXPECT_TRUE(devices.is_let_in(*key));
  EXPECT_EQ(this->devices().all().front().last_seen_at_utc, "2026-11-28T12:00:00Z");
  devices.keep_seen();

  EXPECT_EQ(devices.all().front().let_in_at_utc, "2026-11-28T12:00:00Z");
  EXPECT_EQ(devices.all().front().last_seen_at_utc, utc_);
  EXPECT_EQ(this->devices().all().front().last_seen_at_utc, utc_);
}

TEST_F(PairedDevicesTest, AreNotLetInWhereThatCannotBeKept) {
  file_ = scratch_.file("no/such/folder/devices.json");
  PairedDevices devices = this->devices();

  const auto key = devices.let_in({.code = devices.new_code().code, .name = "phone"}, kHere);

  ASSERT_FALSE(key);
  EXPECT_EQ(key.error().status, 500);
  EXPECT_THAT(key.error().sentence, HasSubstr("devices.json"));
  EXPECT_TRUE(devices.all().empty());
}

TEST(RandomText, UsesEveryLetterAlike) {
  constexpr int kDraws = 31 * 1000;
  std::string all;
  for (int draw = 0; draw < kDraws / 10; ++draw) {
    all += random_text("23456789ABCDEFGHJKMNPQRSTUVWXYZ", 10);
  }

  // Each is expected a thousand times, with a standard deviation of 31.
  for (const char letter : std::string("23456789ABCDEFGHJKMNPQRSTUVWXYZ")) {
    EXPECT_NEAR(static_cast<double>(std::ranges::count(all, letter)), 1000, 6 * 31) << letter;
  }
}

// FIPS 180-4, example "abc", in base64url.
TEST(DigestOfKey, IsItsSha256) {
  EXPECT_EQ(digest_of_key("abc"), "ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa0");
}

}  // namespace
}  // namespace keenfall::server
