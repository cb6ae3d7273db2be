#include "engine/learner/confusion.hpp"

#include "engine/statistics/normal.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::learner {

namespace {

/// Chance that at least `least` of independent things with these chances happen (S.D. Poisson 1837).
double at_least(int least, const std::vector<double>& chances) {
  std::vector<double> of_number(chances.size() + 1);
  of_number[0] = 1;
  for (std::size_t i = 0; i < chances.size(); ++i) {
    for (std::size_t n = i + 1; n > 0; --n) {
      of_number[n] = of_number[n] * (1 - chances[i]) + of_number[n - 1] * chances[i];
    }
    of_number[0] *= 1 - chances[i];
  }
  double sum = 0;
  for (auto n = static_cast<std::size_t>(std::max(least, 0)); n < of_number.size(); ++n) {
    sum += of_number[n];
  }
  return sum;
}

std::string about(const Swap& swap) {
  return fmt::format(
      "Of {} tubes that were {} or {}, you took {} for the other; your unsteadiness with the other "
      "colours explains about {:.0f}. Light, the card behind the tube and haste can do that. If it "
      "stays so in good daylight, it suggests an eye test; it says no more than that.",
      swap.tubes, swap.one, swap.other, swap.swapped, swap.explained);
}

Swap swap_at(std::size_t line, const Group& copper, const statistics::Boundaries& own, const Rules& rules) {
  Swap swap;
  swap.one = rules.colours[line];
  swap.other = rules.colours[line + 1];
  auto either = copper.readings; // Which of the two was called is left out of account.
  for (auto& reading : either) {
    if (reading.grade == static_cast<int>(line) || reading.grade == static_cast<int>(line) + 1) {
      reading.grade = static_cast<int>(line);
      reading.at_most = reading.grade + 1;
    }
  }
  const auto steady = statistics::fit_boundaries(either);
  if (!steady) {
    return swap;
  }
  std::vector<double> chances;
  for (const auto& reading : copper.readings) {
    const bool of_the_two = (line == 0 || reading.intensity > own.line[line - 1]) &&
                            (line + 1 == statistics::lines || reading.intensity < own.line[line + 1]);
    const bool called_one = reading.grade == static_cast<int>(line);
    if (!of_the_two || !(called_one || reading.grade == static_cast<int>(line) + 1)) {
      continue;
    }
    ++swap.tubes;
    const bool is_one = reading.intensity < own.line[line];
    swap.swapped += is_one != called_one ? 1 : 0;
    chances.push_back(
        statistics::normal_below(-std::abs(reading.intensity - own.line[line]) / steady->spread));
    swap.explained += chances.back();
  }
  swap.chance = at_least(swap.swapped, chances);
  if (swap.swapped - swap.explained >= rules.least_swaps && swap.chance < rules.least_swap_chance) {
    swap.sentence = about(swap);
  }
  return swap;
}

} // namespace

std::vector<Swap> swapped_colours(const std::vector<Group>& groups, const Rules& rules) {
  const auto copper = std::find_if(groups.begin(), groups.end(),
                                   [](const Group& group) { return group.key == copper_group; });
  std::vector<Swap> swaps;
  if (copper == groups.end() || static_cast<int>(copper->readings.size()) < rules.confusion_from ||
      copper->words.size() != statistics::grades) {
    return swaps;
  }
  if (const auto own = statistics::fit_boundaries(copper->readings)) {
    for (std::size_t line = 0; line < statistics::lines; ++line) {
      swaps.push_back(swap_at(line, *copper, *own, rules));
    }
  }
  return swaps;
}

} // namespace matula::learner
