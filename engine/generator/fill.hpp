#pragma once

#include "engine/generator/luck.hpp"
#include "engine/generator/pattern.hpp"
#include "engine/generator/people.hpp"

namespace matula::generator {

/// The invented patient of one variant.
struct Person {
  std::string given;
  std::string surname;
  bool female = false;
  std::string age; ///< "54", "5 days"
  std::string age_sex;
  std::string ward;
  std::string delay; ///< From the void to the counter; empty where the pattern has no delivery.
  std::string passed;
  std::string received;
};

[[nodiscard]] Person draw_person(const Pattern& pattern, const People& people, const Luck& luck);

/// Puts a person into words: {given} {surname} {age} {ward} {he} {He} {him} {his} {His}; with a delivery
/// {delay} {passed} {received}. Throws std::invalid_argument for a word in braces that is none of these.
[[nodiscard]] std::string fill(const std::string& words, const Person& person);

} // namespace matula::generator
