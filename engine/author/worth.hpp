#pragma once

#include "engine/author/advice.hpp"

#include <string>
#include <utility>
#include <vector>

namespace matula::author {

/// What there is to earn in one ledger of a case.
struct LedgerWorth {
  std::string ledger; ///< "reading"
  int marks = 0;
  std::vector<std::pair<std::string, int>> parts; ///< "Grade of the heat test", 20; in the order marked.
};

/// Every mark of a case, ledger by ledger, as the marker counts them: taken from marking a sitting in which
/// nothing was done. Safety is left out, whose marks come and go with the occasions. `previewed` is of the
/// same case; its tests need not be done.
[[nodiscard]] std::vector<LedgerWorth> worth_of(const Shelf& shelf, const scenario::Scenario& scenario,
                                                const Preview& previewed);

/// What of a case's weights does not add up; kinds "weights" and "decision".
[[nodiscard]] std::vector<Advice> advise_on_weights(const scenario::Scenario& scenario);

} // namespace matula::author
