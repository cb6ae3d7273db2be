#pragma once

#include "engine/author/compose.hpp"
#include "engine/author/plan.hpp"
#include "engine/generator/people.hpp"
#include "engine/practice/rules.hpp"

#include <functional>
#include <string>
#include <vector>

namespace matula::author {

/// One student's specimen for one row of a plan.
struct FormUnknown {
  std::string key;    ///< "unknown-2"
  std::string number; ///< On form and label: "SB 41 840"
  scenario::Scenario scenario;
  std::string text; ///< Of its scenario file.
  std::vector<Shown> shown;
  double difficulty = 0; ///< Logits: mean over the tests that count, see make_forms.
  double gravity = 1;
};

struct Form {
  std::string student; ///< A number or a pseudonym.
  std::vector<FormUnknown> unknowns;
  double difficulty = 0; ///< Mean of its unknowns.
};

/// What forms are made from besides the shelf.
struct FormGround {
  const Shelf* shelf = nullptr;
  const practice::Rules* rules = nullptr; ///< How hard a tube is.
  const generator::People* people = nullptr;
};

/// Told after each unknown: how many of how many are made.
using FormProgress = std::function<void(std::size_t done, std::size_t of)>;

/// A form for every student: other patients, other specimens, the same words of the same tests, and every
/// tube as far from the nearest line as the plan says, above the middle of its word or below. Of several
/// tests that one substance makes, the first of the worksheet counts for the difficulty; a negative tube is
/// as far from its line as the urine lets it be. The same plan, students and seed give the same forms. Fails
/// with sentences for an unknown that cannot be had within the plan's tolerance.
[[nodiscard]] tl::expected<std::vector<Form>, Refused>
make_forms(const FormGround& ground, const Plan& plan, const std::vector<std::string>& students,
           std::uint64_t seed, const FormProgress& progress = {}, const scoring::GiveUp& give_up = {});

} // namespace matula::author
