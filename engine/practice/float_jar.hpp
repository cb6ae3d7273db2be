#pragma once

#include "engine/practice/unknown.hpp"
#include "sim/bench/bench.hpp"

namespace matula::practice {

struct Store;

/// A urinometer at rest in a jar of urine.
struct FloatJar {
  bench::Setup setup;
  bench::State state;
  instrument::ScaleView shows; ///< To an eye level with the surface, and to other eyes.
  double liquid_c = 20;
  double eye_mm = 0; ///< Where the eye begins, above the surface.
};

/// Plain urine thinned or thickened until the float stands where it is wanted, at the temperature its seed
/// and trap say. Throws std::invalid_argument for a trap that is no water of the rules.
[[nodiscard]] FloatJar make_float(const Store& store, const Unknown& unknown);

} // namespace matula::practice
