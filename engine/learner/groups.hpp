#pragma once

#include "engine/learner/record.hpp"
#include "engine/learner/rules.hpp"
#include "engine/scoring/rulebook.hpp"

#include <span>
#include <string>
#include <vector>

namespace matula::learner {

inline constexpr const char* copper_group = "copper";

/// Readings judged by the same eye: of tests whose results are looked at in the same way and have the same
/// words. All clouds of protein are one group, all reduced copper another, any other test one by itself.
struct Group {
  std::string key;   ///< "clouds", "copper", or a test's key.
  std::string title; ///< In a sentence: "clouds of protein".
  std::vector<std::string> words;
  std::vector<const Answer*> answers;              ///< Oldest first, all with an intensity and a grade.
  std::vector<statistics::GradedReading> readings; ///< The same.
};

/// The latest graded readings of each group there are any of, in the order of the tests. Tests with more than
/// six words (fine rows of a card) are figures rather than grades, and are left out; so are grades a test
/// does not have. The answers must outlive the groups.
[[nodiscard]] std::vector<Group> groups_of(std::span<const Answer> answers,
                                           const std::vector<scoring::TestRule>& tests, const Rules& rules);

} // namespace matula::learner
