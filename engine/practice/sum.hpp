#pragma once

#include "engine/practice/unknown.hpp"
#include "engine/scoring/slips.hpp"

#include <array>
#include <string>
#include <vector>

namespace matula::practice {

struct Store;

/// The calculation of a specific gravity, with everything it is worked from.
struct Sum {
  double reading = 1;
  scoring::GravityBasis basis;
  double protein_g_dl = 0;
  double glucose_g_dl = 0;
};

/// Steps a calculation may call for, in their order: "zero", "temperature", "protein", "glucose".
inline constexpr std::array<const char*, 4> sum_steps{"zero", "temperature", "protein", "glucose"};

/// Figures for the steps that `unknown.what` names; of every other step there is nothing to correct. Throws
/// std::invalid_argument for a step that is none.
[[nodiscard]] Sum make_sum(const Store& store, const Unknown& unknown);

/// The five right lines, by the written rule: zero, temperature, protein, glucose, reported.
[[nodiscard]] std::array<double, 5> right_lines(const Sum& sum);

/// Every set of steps, as `Unknown::what`: "zero", "zero+protein" ...
[[nodiscard]] std::vector<std::string> all_step_sets();

} // namespace matula::practice
