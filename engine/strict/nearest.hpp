#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace matula::strict {

/// Single letters to insert, delete or replace to turn one word into the other (Levenshtein 1966).
[[nodiscard]] int edit_distance(std::string_view one, std::string_view other);

/// The candidate a person most likely meant; empty when none is near (more than a third of the letters
/// differ).
[[nodiscard]] std::string nearest(std::string_view word, const std::vector<std::string>& candidates);

/// "did you mean 'urea'?" or, when nothing is near, "one of: a, b, c" (at most `most` of them).
[[nodiscard]] std::string suggestion(std::string_view word, const std::vector<std::string>& candidates,
                                     std::size_t most = 12);

} // namespace matula::strict
