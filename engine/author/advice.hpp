#pragma once

#include "engine/author/preview.hpp"
#include "engine/scenario/review.hpp"

#include <string>
#include <vector>

namespace matula::author {

/// Something an author should look at again. Never an error: the case can be played.
struct Advice {
  std::string
      kind; ///< "unanswerable", "trap", "weights", "decision", "line", "finding", "physiology", "review"
  std::string words; ///< What, why, and what would mend it.
};

/// All there is to say of a case. `previewed` holds its asked tests, all done; `review` may be nothing.
[[nodiscard]] std::vector<Advice> advise(const Shelf& shelf, const scenario::Scenario& scenario,
                                         const Preview& previewed,
                                         const std::optional<scenario::Review>& review);

/// Whether a trap is there: every one of its signs.
[[nodiscard]] bool is_there(const Trap& trap, const scenario::Scenario& scenario, const Shelf& shelf);

} // namespace matula::author
