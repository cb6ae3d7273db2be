#include "engine/attribution/gaps.hpp"

#include <algorithm>

namespace matula::attribution {
namespace {

double wait_before(const Work& work, std::size_t step) {
  return step < work.steps.size() ? work.steps[step].wait_s : work.last_wait_s;
}

Change waiting(std::size_t at, double seconds) {
  Change change;
  change.kind = Change::Kind::Wait;
  change.at = at;
  change.value = seconds;
  return change;
}

/// Takes time off the waits in the order given.
std::vector<Change> take_off(const Work& work, const std::vector<std::size_t>& order, double seconds) {
  std::vector<Change> changes;
  for (const std::size_t step : order) {
    const double there = wait_before(work, step);
    const double off = std::min(there, seconds);
    if (off > 0) {
      changes.push_back(waiting(step, there - off));
      seconds -= off;
    }
  }
  return changes;
}

std::vector<std::size_t> all_between(std::size_t from, std::size_t to) {
  std::vector<std::size_t> steps;
  for (std::size_t i = from; i <= to; ++i) {
    steps.push_back(i);
  }
  return steps;
}

} // namespace

std::vector<Change> stretch(const Work& work, std::size_t from, std::size_t to, double seconds) {
  auto order = all_between(from, to);
  if (order.empty()) {
    return {};
  }
  if (seconds < 0) {
    std::reverse(order.begin(), order.end());
    return take_off(work, order, -seconds);
  }
  const auto longest = *std::max_element(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return wait_before(work, a) < wait_before(work, b);
  });
  return {waiting(longest, wait_before(work, longest) + seconds)};
}

std::vector<Change> shorten(const Work& work, std::size_t from, std::size_t to, double seconds) {
  auto order = all_between(from, to);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return wait_before(work, a) > wait_before(work, b); });
  return take_off(work, order, seconds);
}

} // namespace matula::attribution
