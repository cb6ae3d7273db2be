#include "engine/practice/choose.hpp"

#include "engine/practice/draws.hpp"
#include "engine/practice/handed_in.hpp"
#include "engine/practice/store.hpp"
#include "engine/practice/sum.hpp"
#include "engine/scoring/standards.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace matula::practice {

namespace {

double to_four_digits(double value) {
  return std::round(value * 1e4) / 1e4;
}

/// Which side of its grade's middle a tube lies on; the ends of a scale have one line only.
bool above_the_middle(std::size_t grade, std::size_t grades, const Draws& draws) {
  return grade == 0 || (grade + 1 < grades && draws.even("side") < 0.5);
}

} // namespace

Unknown tube_at(const Store& store, const std::string& test, const std::string& urine, std::size_t grade,
                double from_line, std::uint64_t seed) {
  const Practised* practised = store.rules.find_test(test);
  const auto* rule = store.standards->rules.find_test(test);
  if (practised == nullptr || rule == nullptr) {
    throw std::invalid_argument("no test that is practised: " + test);
  }
  const Draws draws(seed);
  const double middle = static_cast<double>(grade);
  const double line = above_the_middle(grade, rule->ordinal.grades, draws) ? middle + 0.5 : middle - 0.5;
  const double target = line > middle ? line - from_line : line + from_line;
  return {practised->skill, test, urine, to_four_digits(practised->within(grade, target)), seed};
}

Unknown float_at(const Store& store, const std::string& water, double from_half, std::uint64_t seed) {
  const Draws draws(seed);
  const auto& rules = store.rules.floats;
  const double division = store.standards->rules.gravity.division;
  const double at = std::floor(draws.between("gravity", rules.lowest, rules.highest) / division) + 0.5;
  const double side = draws.even("side") < 0.5 ? -1 : 1;
  constexpr double five_digits = 1e5;
  Unknown unknown{Skill::Meniscus, "float", water, 0, seed};
  unknown.target = std::round((at + side * from_half) * division * five_digits) / five_digits;
  return unknown;
}

Unknown random_unknown(const Store& store, Skill skill, std::uint64_t seed) {
  const Draws draws(seed);
  const std::uint64_t own = draws.seed("unknown");
  if (has_tubes(skill)) {
    const auto tests = store.rules.tests_of(skill);
    const auto& test = tests[draws.pick("test", tests.size())];
    const auto grades = store.standards->rules.find_test(test)->ordinal.grades;
    const auto& urine = store.rules.urines[draws.pick("urine", store.rules.urines.size())];
    return tube_at(store, test, urine.key, draws.pick("grade", grades), draws.between("distance", 0, 0.5),
                   own);
  }
  if (skill == Skill::Meniscus) {
    std::vector<std::string> waters;
    for (const auto& [key, span] : store.rules.floats.temperature_c) {
      waters.push_back(key);
    }
    return float_at(store, waters[draws.pick("water", waters.size())], draws.between("distance", 0, 0.5),
                    own);
  }
  std::vector<std::string> whats;
  if (skill == Skill::Corrections) {
    whats = all_step_sets();
  } else {
    for (const auto& [fault, difficulty] : store.rules.difficulty.delivery) {
      whats.push_back(fault);
    }
  }
  return {skill, whats[draws.pick("what", whats.size())], "plain", 0, own};
}

} // namespace matula::practice
