#pragma once

#include "engine/attribution/deeds.hpp"
#include "engine/scoring/report.hpp"

namespace matula::matter {
struct Catalogue;
}

namespace matula::attribution {

/// What a learner's work on a tube is held against.
struct Method {
  const scoring::TestRule& test;
  const procedure::Recipe& recipe;
  const scoring::WhyRule& why;
  const matter::Catalogue& catalogue;
  const std::vector<scoring::Mark>& marks; ///< Which rules were broken.
  double room_c = 22;
};

/// Everything that was not as the recipe has it, so far off that it may show: what broke a rule, and what
/// lies far from the recipe though no rule speaks of it. Each can be put right alone.
[[nodiscard]] std::vector<Deviation> deviations_of(const Method& method, const Work& work,
                                                   const Trail& trail);

/// The key of the first rule about one of `facts` that was broken in a part of the work; empty when none was.
[[nodiscard]] std::string broken_rule(const std::vector<scoring::Mark>& marks,
                                      const std::vector<scoring::Rule>& rules,
                                      const std::vector<std::string>& facts);

} // namespace matula::attribution
