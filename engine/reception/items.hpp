#pragma once

#include "engine/reception/delivery.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::reception {

/// Whether a line of the worksheet belongs to the counter: "reception", "reception.fault.KEY", "day.ITEM".
[[nodiscard]] bool owns(const std::string& item);

/// Why there is no such line ("" when there is): for files, without a case at hand.
[[nodiscard]] std::string unknown_item(const std::string& item);

/// Why this entry cannot stand on the worksheet of a case with this delivery (nothing for a case that asks no
/// reception); "" when it can.
[[nodiscard]] std::string refuse(const std::optional<Delivery>& delivery, const std::string& item,
                                 const std::string& value);

/// The words that may be written for an item; empty when it takes a number.
[[nodiscard]] std::vector<std::string> words_of_item(const std::string& item);

} // namespace matula::reception
