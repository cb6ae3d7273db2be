#pragma once

#include "engine/scenario/brief.hpp"

#include <map>
#include <string>
#include <vector>

namespace matula::scenario {

/// What the form asks and nobody has written down yet, in the words of the worksheet and in its order.
/// `worksheet` holds what was written, by item. Nothing on the bench is missed once the specimen is refused.
[[nodiscard]] std::vector<std::string> unwritten(const Brief& brief,
                                                 const std::map<std::string, std::string>& worksheet);

} // namespace matula::scenario
