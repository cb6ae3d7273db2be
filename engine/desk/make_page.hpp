#pragma once

#include "engine/desk/progress_page.hpp"
#include "engine/learner/progress.hpp"

#include <cstdint>
#include <vector>

namespace matula::practice {
struct Store;
}

namespace matula::desk {

/// What the answers, oldest first, tell at that time (UTC, seconds since 1970), in the words of the window.
[[nodiscard]] ProgressPage make_page(const practice::Store& store,
                                     const std::vector<learner::Answer>& answers, std::int64_t now_s);

} // namespace matula::desk
