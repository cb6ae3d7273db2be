#pragma once

#include "engine/examination/returned.hpp"

// Inside this room only.

namespace matula::examination {

/// Whether what went by between two moments, UTC seconds since 1970, fits the examination, with two minutes'
/// grace. `who` begins the words: "took".
[[nodiscard]] Check check_time(std::int64_t begun_at_s, std::int64_t ended_at_s, const Pack& pack,
                               const std::string& who);

/// The same over all cases of each learner who handed in more than one: the minutes are for all of them.
void tell_time_of_all(std::vector<Returned>& sittings, const Pack& pack);

} // namespace matula::examination
