#pragma once

#include "sim/bench/action.hpp"

#include <string>
#include <vector>

namespace matula::procedure {

enum class StepKind { Pour, Dispense, Mix, Heat, Boil, Bath, Wait, Act };

/// One step of a test done by the book.
struct RecipeStep {
  StepKind kind = StepKind::Wait;
  std::string reagent;
  std::string from = "specimen"; ///< Pour: the vessel poured from.
  std::string to;                ///< Vessel the step is about; the recipe's own unless it says otherwise.
  double volume_ml = 0;
  bool gently = false;
  double seconds = 0;
  double limit_s = 0;       ///< Boil: gives up after so long in the flame.
  double height = 0.85;     ///< Heat, Boil: where on the liquid the flame plays, 0..1.
  double temperature_c = 0; ///< Bath.
  bench::Manner manner = bench::Manner::Swirl;
  std::string act;                 ///< Act: a line of a steps file, for everything else a hand can do,
  std::vector<bench::Action> acts; ///< and what it says; read when the standards are loaded.
  std::string source;
};

/// In place of a species: the ladder is one of pH.
inline constexpr const char* of_ph = "pH";

struct Recipe {
  std::string test;
  bench::VesselName vessel; ///< The tube that is read.
  std::vector<RecipeStep> steps;
  std::string ladder_species;           ///< What a ladder of this test is made of,
  std::vector<double> ladder_mg_per_dl; ///< at these concentrations, or pH, unless others are asked for.
};

} // namespace matula::procedure
