#pragma once

#include <string>
#include <vector>

namespace matula::strict {

/// The first key at the top of two TOML texts under which they say different things, those in `but_for` left
/// out of account; "" when there is none. A text that cannot be read differs in "(unreadable)".
[[nodiscard]] std::string first_difference(const std::string& one, const std::string& other,
                                           const std::vector<std::string>& but_for);

} // namespace matula::strict
