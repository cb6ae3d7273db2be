#include "engine/quality/multirules.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace matula::quality {

namespace {

bool any_beyond(const Run& run, double limit) {
  return std::any_of(run.begin(), run.end(), [limit](double z) { return std::abs(z) > limit; });
}

bool all_above(const std::vector<double>& values, double limit) {
  return std::all_of(values.begin(), values.end(), [limit](double z) { return z > limit; });
}

bool same_side(const std::vector<double>& values, double limit) {
  std::vector<double> turned = values;
  for (double& z : turned) {
    z = -z;
  }
  return all_above(values, limit) || all_above(turned, limit);
}

/// The last `count` values of one material; empty when there are not so many.
std::vector<double> along(const std::vector<Run>& runs, std::size_t material, std::size_t count) {
  std::vector<double> values;
  for (std::size_t back = 0; back < count; ++back) {
    if (back >= runs.size() || material >= runs[runs.size() - 1 - back].size()) {
      return {};
    }
    values.push_back(runs[runs.size() - 1 - back][material]);
  }
  return values;
}

/// The last `count` values of all materials, run by run; empty when the runs do not make up that number.
std::vector<double> across(const std::vector<Run>& runs, std::size_t count) {
  std::vector<double> values;
  for (std::size_t back = 0; values.size() < count; ++back) {
    if (back >= runs.size()) {
      return {};
    }
    const Run& run = runs[runs.size() - 1 - back];
    values.insert(values.end(), run.begin(), run.end());
  }
  return values.size() == count ? values : std::vector<double>{};
}

/// `count` consecutive values beyond the same limit, of one material or over all.
bool consecutive(const std::vector<Run>& runs, std::size_t count, double limit) {
  for (std::size_t material = 0; material < runs.back().size(); ++material) {
    const std::vector<double> values = along(runs, material, count);
    if (!values.empty() && same_side(values, limit)) {
      return true;
    }
  }
  const std::vector<double> values = across(runs, count);
  return runs.back().size() > 1 && !values.empty() && same_side(values, limit);
}

bool range_broken(const Run& run, RangeWording wording) {
  const auto [low, high] = std::minmax_element(run.begin(), run.end());
  return wording == RangeWording::Spread ? *high - *low > 4 : *high > 2 && *low < -2;
}

} // namespace

std::string to_word(Rule rule) {
  switch (rule) {
  case Rule::OneTwoS:
    return "1-2s";
  case Rule::OneThreeS:
    return "1-3s";
  case Rule::TwoTwoS:
    return "2-2s";
  case Rule::RangeFourS:
    return "R-4s";
  case Rule::FourOneS:
    return "4-1s";
  case Rule::TenX:
    return "10-x";
  }
  return "";
}

std::string meaning(Rule rule) {
  switch (rule) {
  case Rule::OneTwoS:
    return "one value beyond 2 s: a warning, look at the others";
  case Rule::OneThreeS:
    return "one value beyond 3 s: stop, chance or a blunder";
  case Rule::TwoTwoS:
    return "two values in a row beyond the same 2 s: stop, something has shifted";
  case Rule::RangeFourS:
    return "one control beyond + 2 s, the other beyond - 2 s in the same run: stop, scatter has grown";
  case Rule::FourOneS:
    return "four values in a row beyond the same 1 s: stop, something drifts";
  case Rule::TenX:
    return "ten values in a row on one side of the mean: stop, something drifts";
  }
  return "";
}

bool rejects(Rule rule) {
  return rule != Rule::OneTwoS;
}

bool breaks(Rule rule, const std::vector<Run>& runs, RangeWording wording) {
  if (runs.empty() || runs.back().empty()) {
    return false;
  }
  switch (rule) {
  case Rule::OneTwoS:
    return any_beyond(runs.back(), 2);
  case Rule::OneThreeS:
    return any_beyond(runs.back(), 3);
  case Rule::TwoTwoS:
    return consecutive(runs, 2, 2);
  case Rule::RangeFourS:
    return range_broken(runs.back(), wording);
  case Rule::FourOneS:
    return consecutive(runs, 4, 1);
  case Rule::TenX:
    return consecutive(runs, 10, 0);
  }
  return false;
}

std::vector<Rule> broken_rules(const std::vector<Run>& runs, RangeWording wording) {
  std::vector<Rule> broken;
  for (const Rule rule : all_rules) {
    if (breaks(rule, runs, wording)) {
      broken.push_back(rule);
    }
  }
  return broken;
}

Baseline baseline(const std::vector<double>& values) {
  if (values.size() < 2) {
    throw std::invalid_argument("a mean and a deviation need at least two values");
  }
  const auto count = static_cast<double>(values.size());
  Baseline made{0, 0};
  for (const double value : values) {
    made.mean += value / count;
  }
  double squares = 0;
  for (const double value : values) {
    squares += (value - made.mean) * (value - made.mean);
  }
  made.deviation = std::sqrt(squares / (count - 1));
  return made;
}

} // namespace matula::quality
