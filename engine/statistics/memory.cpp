#include "engine/statistics/memory.hpp"

#include <algorithm>
#include <cmath>

namespace matula::statistics {

double recall_chance(double half_life, double elapsed) {
  return std::exp2(-std::max(elapsed, 0.0) / half_life);
}

double next_review(double half_life, double wanted) {
  return -half_life * std::log2(wanted);
}

double half_life_after(double half_life_days, bool recalled, const MemoryRule& rule) {
  return std::max(half_life_days * (recalled ? rule.grows : rule.falls), rule.least_days);
}

double known_after(double known, bool right, const KnowledgeRule& rule) {
  const double if_known = right ? 1 - rule.slips : rule.slips;
  const double if_not = right ? rule.guesses : 1 - rule.guesses;
  const double after = known * if_known / (known * if_known + (1 - known) * if_not);
  return after + (1 - after) * rule.learns;
}

} // namespace matula::statistics
