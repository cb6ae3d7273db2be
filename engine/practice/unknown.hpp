#pragma once

#include "engine/practice/skill.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace matula::practice {

/// Enough to make one thing to be judged, and to make it again.
struct Unknown {
  Skill skill = Skill::Turbidity;
  /// A tube's test ("ssa"); the steps of a calculation ("zero+temperature"); the fault of a delivery
  /// ("none"); of a float "float".
  std::string what;
  std::string
      trap; ///< A tube's urine ("plain", "dark"); a float's water ("room", "cold", "warm"); else "plain".
  double target = 0; ///< Grades of a tube; relative density at a float's surface; else 0. Kept to 0.0001.
  std::uint64_t seed = 1;

  [[nodiscard]] bool operator==(const Unknown& other) const;
};

/// "turbidity/ssa/plain/2.3100/17"
[[nodiscard]] std::string to_text(const Unknown& unknown);
/// Nothing for words that are no unknown.
[[nodiscard]] std::optional<Unknown> unknown_from_text(std::string_view text);

/// The rules an unknown calls for: each step of a calculation, the fault of a delivery; of others nothing.
[[nodiscard]] std::vector<std::string> rules_of(const Unknown& unknown);

/// "a+b" to "a" and "b".
[[nodiscard]] std::vector<std::string> split(std::string_view words, char at);

} // namespace matula::practice
