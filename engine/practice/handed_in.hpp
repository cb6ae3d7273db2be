#pragma once

#include "engine/practice/unknown.hpp"
#include "engine/reception/delivery.hpp"

#include <string>
#include <utility>
#include <vector>

namespace matula::practice {

struct Store;

/// A delivery on the counter, and the reasons to choose among.
struct HandedIn {
  reception::Delivery delivery;
  std::string verdict;             ///< What the rules make of it: "accept", "qualify", "refuse".
  std::vector<std::string> faults; ///< Faults it has; empty for one in order.
  /// Six faults and their wording, one of them right (the last, "none", says that nothing is wrong).
  std::vector<std::pair<std::string, std::string>> reasons;
  std::string right_reason; ///< Its key among those.
};

/// A patient of the generator; the delivery is spoiled by the fault `unknown.what` names ("none": not at
/// all). What it is worth is worked out by the rules of the counter. Throws std::invalid_argument for a fault
/// that cannot be planted.
[[nodiscard]] HandedIn make_delivery(const Store& store, const Unknown& unknown);

/// Key of the reason that nothing is wrong.
inline constexpr const char* no_fault = "none";

} // namespace matula::practice
