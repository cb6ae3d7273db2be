#pragma once

#include "engine/generator/measured.hpp"

#include <cstdint>
#include <string_view>

namespace matula::generator {

/// Chance of one variant. Every draw has a name, so that a line added to a pattern leaves all others as they
/// were. Only sums and products of doubles: the same bits on every machine, whatever its library of
/// functions.
class Luck {
public:
  /// `attempt` counts the tries until a variant is consistent. `typical` makes every draw the middle one.
  Luck(std::string_view pattern, std::uint64_t seed, int attempt, bool typical);

  /// Normal deviate, mean 0, deviation 1, held within 2.5: twelve uniform numbers added up.
  [[nodiscard]] double normal(std::string_view name) const;
  /// exp(spread * normal): 1 in the middle.
  [[nodiscard]] double lognormal(std::string_view name, double spread) const;
  /// Even in 0 to count - 1; count at least 1. Chosen also for the typical variant.
  [[nodiscard]] std::size_t pick(std::string_view name, std::size_t count) const;
  /// A whole number from 1 to 2147483647 for the scenario.
  [[nodiscard]] int scenario_seed() const;

private:
  std::uint64_t seed_;
  bool typical_;
};

/// A number of a pattern for one variant, held between its ends.
[[nodiscard]] double draw(const Measured& measured, const char* name, const Luck& luck);

/// e to the x for |x| up to about 5, by its series.
[[nodiscard]] double exponential(double x);

} // namespace matula::generator
