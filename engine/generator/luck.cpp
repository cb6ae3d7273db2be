#include "engine/generator/luck.hpp"

#include "sim/optics/random.hpp"

#include <algorithm>

namespace matula::generator {

namespace {

/// FNV-1a (Fowler, Noll, Vo).
std::uint64_t hash_of(std::string_view name) {
  std::uint64_t hash = 0xcbf29ce484222325ULL;
  for (const char letter : name) {
    hash = (hash ^ static_cast<unsigned char>(letter)) * 0x100000001b3ULL;
  }
  return hash;
}

constexpr double farthest = 2.5;

} // namespace

double exponential(double x) {
  constexpr int terms = 40; // the last is below 1e-15 of the sum for |x| up to 5
  double sum = 0;
  for (int k = terms; k >= 1; --k) {
    sum = (sum + 1) * (x / k);
  }
  return sum + 1;
}

Luck::Luck(std::string_view pattern, std::uint64_t seed, int attempt, bool typical)
    : seed_(optics::hash(optics::hash(hash_of(pattern) ^ optics::hash(seed)) +
                         static_cast<std::uint64_t>(attempt))),
      typical_(typical) {}

double Luck::normal(std::string_view name) const {
  if (typical_) {
    return 0;
  }
  optics::Stream stream(seed_ ^ hash_of(name));
  constexpr int uniforms = 12;
  double sum = -uniforms / 2.0;
  for (int i = 0; i < uniforms; ++i) {
    sum += stream.next();
  }
  return std::clamp(sum, -farthest, farthest);
}

double Luck::lognormal(std::string_view name, double spread) const {
  return exponential(spread * normal(name));
}

std::size_t Luck::pick(std::string_view name, std::size_t count) const {
  optics::Stream stream(seed_ ^ hash_of(name));
  return std::min(count - 1, static_cast<std::size_t>(stream.next() * static_cast<double>(count)));
}

double draw(const Measured& measured, const char* name, const Luck& luck) {
  return std::clamp(measured.typical + measured.spread * luck.normal(name), measured.low, measured.high);
}

int Luck::scenario_seed() const {
  constexpr std::uint64_t most = 2147483647;
  return static_cast<int>(optics::hash(seed_) % most) + 1;
}

} // namespace matula::generator
