#include "engine/attribution/comparison.hpp"

#include <algorithm>

namespace matula::attribution {

std::string broken_rule(const std::vector<scoring::Mark>& marks, const std::vector<scoring::Rule>& rules,
                        const std::vector<std::string>& facts) {
  for (const auto& rule : rules) {
    const bool about = std::find(facts.begin(), facts.end(), rule.fact) != facts.end();
    const bool lost = about && std::any_of(marks.begin(), marks.end(), [&](const scoring::Mark& mark) {
                        return mark.item == "process." + rule.key;
                      });
    if (lost) {
      return rule.key;
    }
  }
  return "";
}

std::vector<Deviation> deviations_of(const Method& method, const Work& work, const Trail& trail) {
  return Comparison(method, work, trail).find();
}

} // namespace matula::attribution
