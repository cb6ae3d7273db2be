#include "engine/learner/lines.hpp"

#include <cmath>
#include <fmt/format.h>

namespace matula::learner {

namespace {

constexpr double ninety_percent = 1.6448536269514722; ///< Standard errors to either side.

Estimate estimate(double value, double se) {
  return {value, value - ninety_percent * se, value + ninety_percent * se};
}

std::string about_shift(const GroupLines& group) {
  const double by = group.shift->value;
  return fmt::format(
      "In {} you write about {:.1f} of a grade {} than the tube shows, over all grades ({} readings; "
      "{:.1f} to {:.1f}).",
      group.title, std::abs(by), by < 0 ? "more" : "less", group.readings,
      std::min(std::abs(group.shift->low), std::abs(group.shift->high)),
      std::max(std::abs(group.shift->low), std::abs(group.shift->high)));
}

std::string about_line(const GroupLines& group, const OwnLine& line) {
  const bool early = line.own.value < line.reference;
  return fmt::format(
      "{}: you {} write {} for tubes that the reference reader {} calls {} ({} readings near that line).",
      group.title, early ? "already" : "still", early ? line.above : line.below, early ? "still" : "already",
      early ? line.below : line.above, line.near);
}

std::string capital(std::string words) {
  words[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(words[0])));
  return words;
}

void add_lines(GroupLines& found, const Group& group, const statistics::Boundaries& fitted,
               const Rules& rules) {
  for (std::size_t k = 0; k + 1 < group.words.size(); ++k) {
    OwnLine line;
    line.below = group.words[k];
    line.above = group.words[k + 1];
    line.reference = statistics::reference_lines[k];
    const double se = rules.speaking.widening * fitted.line_se[k];
    line.own = estimate(fitted.line[k], se);
    line.near = statistics::readings_near(group.readings, k, rules.speaking.near);
    line.chance =
        statistics::chance_of_shift(fitted.line[k] - line.reference, se, rules.speaking.least_shift);
    if (statistics::may_speak_of_line(fitted, k, group.readings, rules.speaking)) {
      line.sentence = capital(about_line(found, line));
    }
    found.lines.push_back(std::move(line));
  }
}

GroupLines lines_of(const Group& group, const Rules& rules) {
  GroupLines found{group.key, group.title, group.words, static_cast<int>(group.readings.size()), 0, {},
                   0,         "",          {}};
  if (found.readings < rules.shift_from) {
    return found;
  }
  const auto fitted = statistics::fit_boundaries(group.readings, {}, group.words.size());
  if (!fitted) {
    return found;
  }
  found.spread = fitted->spread;
  const double se = rules.speaking.widening * fitted->shift_se;
  found.shift = estimate(fitted->shift, se);
  found.shift_chance = statistics::chance_of_shift(fitted->shift, se, rules.speaking.least_shift);
  if (found.shift_chance > rules.speaking.least_chance) {
    found.sentence = about_shift(found);
  }
  if (found.readings >= rules.lines_from) {
    add_lines(found, group, *fitted, rules);
  }
  return found;
}

} // namespace

std::vector<GroupLines> own_lines(const std::vector<Group>& groups, const Rules& rules) {
  std::vector<GroupLines> all;
  for (const Group& group : groups) {
    all.push_back(lines_of(group, rules));
  }
  return all;
}

} // namespace matula::learner
