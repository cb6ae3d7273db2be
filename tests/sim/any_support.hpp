#pragma once

#include "engine/assets/world.hpp"
#include "sim/optics/random.hpp"
#include "tests/sim/conserved.hpp"

#include <functional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace matula::tests {

[[nodiscard]] const assets::World& any_world();

/// Chance with the few shapes that the mixing test needs; the same on every platform.
class Dice {
public:
  explicit Dice(std::uint64_t seed) : stream_(seed) {}
  double between(double low, double high) { return low + (high - low) * stream_.next(); }
  double log_between(double low, double high);
  bool yes(double probability) { return stream_.next() < probability; }
  std::size_t below(std::size_t count);

private:
  optics::Stream stream_;
};

/// Any substance a scenario may hold, each with a chance, up to its limit; any solid, any pH of a scenario.
[[nodiscard]] specimen::Specimen any_specimen(Dice& dice);

/// Drops to several millilitres of a bottle, at 4 to 40 °C.
[[nodiscard]] matter::Mixture any_dose(const matter::Reagent& reagent, double most_ml, Dice& dice);

using Pair = std::pair<std::size_t, std::size_t>; ///< Rows of the reagent list, the lower first.

/// What met in one vessel, and the sums of all that was put in.
struct Contents {
  std::set<std::size_t> reagents;
  bool urine = false;
};
void meet(Contents& contents, std::size_t reagent, std::set<Pair>& met);

/// Laws of one portion: finite, nothing negative, temperature from 0 to 110 °C, pH inside its scale and
/// charges in balance there. Empty when they hold, else what is wrong.
[[nodiscard]] std::string broken_law(const matter::Mixture& mixture);

/// Finite colours that a display can show, for a column against every card. Empty when they hold.
[[nodiscard]] std::string broken_looks(const column::Column& column);

/// Whether the sums are still what they were. Empty when they are. `lost` allows less (boiled over), never
/// more.
[[nodiscard]] std::string broken_sums(const std::vector<double>& before, const matter::Mixture& now,
                                      bool lost);

[[nodiscard]] const ConservedSums& conserved();

} // namespace matula::tests
