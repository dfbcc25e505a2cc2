#include "numerics/random.h"

#include "base/require.h"

#include <boost/random/exponential_distribution.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/student_t_distribution.hpp>
#include <boost/random/uniform_01.hpp>
#include <boost/random/uniform_int_distribution.hpp>

#include <array>

namespace keenfall::numerics {

namespace {

// SplitMix64 (Steele, Lea & Flood 2014): spreads neighbouring seeds far apart.
std::uint64_t split_mix(std::uint64_t& state) {
  state += 0x9e3779b97f4a7c15ULL;
  std::uint64_t z = state;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}

std::mt19937_64 seeded(base::Seed seed, std::uint64_t stream) {
  std::uint64_t state = seed.number;
  std::uint64_t mixed = split_mix(state) ^ (stream * 0xd1342543de82ef95ULL);
  std::array<std::uint32_t, 8> words{};
  for (std::size_t i = 0; i < words.size(); i += 2) {
    const std::uint64_t word = split_mix(mixed);
    words[i] = static_cast<std::uint32_t>(word);
    words[i + 1] = static_cast<std::uint32_t>(word >> 32);
  }
  std::seed_seq sequence(words.begin(), words.end());
  return std::mt19937_64(sequence);
}

}  // namespace

RandomStream::RandomStream(base::Seed seed, std::uint64_t stream)
    : generator_(seeded(seed, stream)) {}

double RandomStream::uniform() {
  double u = 0;
  while (u == 0) u = boost::random::uniform_01<double>()(generator_);
  return u;
}

double RandomStream::normal() { return boost::random::normal_distribution<double>()(generator_); }

double RandomStream::exponential() {
  return boost::random::exponential_distribution<double>()(generator_);
}

double RandomStream::student_t(double degrees_of_freedom) {
  return boost::random::student_t_distribution<double>(degrees_of_freedom)(generator_);
}

std::uint64_t RandomStream::below(std::uint64_t bound) {
  base::require(bound > 0, "a random choice needs at least one possibility");
  return boost::random::uniform_int_distribution<std::uint64_t>(0, bound - 1)(generator_);
}

}  // namespace keenfall::numerics
