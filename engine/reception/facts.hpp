#pragma once

#include "engine/reception/book.hpp"
#include "engine/reception/delivery.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace matula::reception {

/// What was noted of a delivery, by name. A fact that cannot be told is not there.
struct Facts {
  std::map<std::string, std::string> words;
  std::map<std::string, double> numbers;
};

/// Every fact a rule may name.
[[nodiscard]] const std::vector<std::string>& fact_names();
[[nodiscard]] bool is_number_fact(std::string_view name);
/// Words a fact may have; empty for a number or an unknown name.
[[nodiscard]] std::vector<std::string> words_of_fact(const std::string& name, const Book& book);

[[nodiscard]] Facts facts_of(const Delivery& delivery, const Book& book);

} // namespace matula::reception
