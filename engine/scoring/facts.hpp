#pragma once

#include <map>
#include <string>
#include <string_view>

namespace matula::scoring {

/// What was measured of a learner's work, by name: seconds, millilitres, degrees, or 1 and 0 for yes and no.
using Facts = std::map<std::string, double>;

/// Whether `name` is a fact that the program measures; rules may name no other.
[[nodiscard]] bool is_fact(std::string_view name);

/// All facts, for an error message.
[[nodiscard]] std::string all_facts();

} // namespace matula::scoring
