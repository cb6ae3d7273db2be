#include "engine/attribution/words.hpp"

#include "engine/scoring/explain.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace matula::attribution {
namespace {

double step_of(bool in_grades) {
  return in_grades ? 0.5 : 0.001;
}

/// Whole steps that sum to the whole of all, those with the most left over rounded up first.
std::vector<int> whole_steps(const std::vector<Share>& shares, double total, double step) {
  std::vector<int> steps;
  int given = 0;
  for (const auto& share : shares) {
    steps.push_back(static_cast<int>(std::floor(share.amount / step)));
    given += steps.back();
  }
  std::vector<std::size_t> order(shares.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    order[i] = i;
  }
  const auto left = [&](std::size_t i) { return shares[i].amount / step - steps[i]; };
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return left(a) > left(b); });
  const int wanted = static_cast<int>(std::lround(total / step));
  for (std::size_t i = 0; i < order.size() && given < wanted; ++i, ++given) {
    ++steps[order[i]];
  }
  return steps;
}

std::string say_steps(int steps, bool in_grades) {
  const int size = std::abs(steps);
  if (!in_grades) {
    return fmt::format("{:.3f}", size * step_of(false));
  }
  static constexpr std::array<const char*, 6> numbers{"no", "one", "two", "three", "four", "five"};
  const auto whole = static_cast<std::size_t>(std::min(size / 2, 5));
  if (size % 2 == 0) {
    return fmt::format("{} grade{}", numbers[whole], whole == 1 ? "" : "s");
  }
  return whole == 0 ? "half a grade" : fmt::format("{} and a half grades", numbers[whole]);
}

/// "one and a half" (of the two grades).
std::string say_part(int steps, bool in_grades) {
  std::string words = say_steps(steps, in_grades);
  for (const char* noun : {" a grade", " grades", " grade"}) {
    if (const auto at = words.rfind(noun); in_grades && at != std::string::npos) {
      return words.substr(0, at);
    }
  }
  return words;
}

std::string say_shown(const Explanation& e) {
  if (!e.in_grades) {
    return e.shares.empty()
               ? fmt::format("You came to {}: nothing had to be put right.", scoring::say_gravity(e.found))
               : fmt::format("You came to {}; with everything put right it is {}.",
                             scoring::say_gravity(e.found), scoring::say_gravity(e.put_right));
  }
  if (e.found_word == e.book_word) {
    return fmt::format("{} showed {}, and so does the same specimen by the book.",
                       scoring::capital(e.own_tube), e.found_word);
  }
  return fmt::format("{} showed {}; the same specimen by the book shows {}.", scoring::capital(e.own_tube),
                     e.found_word, e.book_word);
}

/// Each deviation with its part.
std::string say_shares(const Explanation& e, int whole) {
  const auto parts = whole_steps(e.shares, e.put_right - e.found, step_of(e.in_grades));
  std::string text;
  for (std::size_t i = 0; i < e.shares.size(); ++i) {
    const auto& share = e.shares[i];
    text += " " + scoring::capital(share.words) + ": ";
    const int part = parts[i];
    const bool against = part * whole < 0;
    if (part == 0) {
      text += e.in_grades ? "less than half a grade" : "less than 0.001";
    } else if (against) {
      text += say_steps(part, e.in_grades) + " the other way";
    } else if (std::abs(part) == std::abs(whole)) {
      text += "the whole difference, " + say_steps(whole, e.in_grades);
    } else {
      text += whole == 0 ? say_steps(part, e.in_grades)
                         : say_part(part, e.in_grades) + " of the " + say_steps(whole, e.in_grades);
    }
    text += within_method(share) ? " (within the method, yet it shows)." : ".";
  }
  return text;
}

std::string say_rest(const Explanation& e) {
  const double left = e.by_the_book - e.put_right;
  if (std::abs(left) >= e.visible) {
    return fmt::format(" What is left ({}) comes from what no single step of the work accounts for.",
                       std::abs(left) < step_of(e.in_grades)
                           ? (e.in_grades ? "less than half a grade" : "less than 0.001")
                           : say_difference(left, e.in_grades));
  }
  if (e.harmless.empty()) {
    return e.shares.empty() ? "" : " The rest was right.";
  }
  std::string all;
  for (const auto& words : e.harmless) {
    all += (all.empty() ? "" : "; ") + words;
  }
  return fmt::format(" Not as the method has it, but it changed nothing to be seen: {}.", all);
}

} // namespace

bool within_method(const Share& share) {
  static constexpr std::array<const char*, 4> measured{"volume.", "heat.", "time", "wait."};
  return share.rule.empty() && std::any_of(measured.begin(), measured.end(),
                                           [&](const char* start) { return share.key.rfind(start, 0) == 0; });
}

std::string say_difference(double amount, bool in_grades) {
  return say_steps(static_cast<int>(std::lround(amount / step_of(in_grades))), in_grades);
}

std::string say(const Explanation& e) {
  const int whole = static_cast<int>(std::lround((e.put_right - e.found) / step_of(e.in_grades)));
  std::string text = say_shown(e);
  if (!e.shares.empty()) {
    text += say_shares(e, whole);
    if (whole == 0 && e.shares.size() > 1) {
      text += " Together they all but cancel.";
    }
  }
  return text + say_rest(e);
}

} // namespace matula::attribution
