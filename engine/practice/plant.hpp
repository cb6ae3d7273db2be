#pragma once

#include "engine/practice/draws.hpp"
#include "engine/practice/rules.hpp"
#include "engine/reception/delivery.hpp"

#include <string>

namespace matula::practice {

/// Spoils a delivery in the one place a fault names; false for a fault that cannot be planted.
[[nodiscard]] bool plant(const std::string& fault, const DeliveryRules& rules, const Draws& draws,
                         reception::Delivery& delivery);

} // namespace matula::practice
