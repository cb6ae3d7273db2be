#pragma once

#include "engine/practice/unknown.hpp"
#include "sim/bench/bench.hpp"
#include "sim/reading/reference_reader.hpp"

#include <string>

namespace matula::practice {

struct Store;

/// A test done by the book, as it stands on the bench.
struct Tube {
  std::string test;
  bench::Setup setup;
  bench::State state;
  bench::VesselName vessel;
  reading::GradeReading read; ///< As the reference reader has it.
  double mg_per_dl = 0;       ///< Of the recipe's ladder species.
  int tried = 0;              ///< Tubes made on the way to it.
};

/// Looks for the dose at which the test, done by the book on this urine, comes out as strong as wanted, and
/// gives that tube. The nearest one tried where the dose cannot be met to 0.02 grades in fourteen. Throws
/// std::invalid_argument for a test or urine that is not practised.
[[nodiscard]] Tube make_tube(const Store& store, const Unknown& unknown);

/// The middle of a grade of the same test on the same urine, or what of that grade lies nearest to it: what a
/// tube is compared with.
[[nodiscard]] Unknown middle_of(const Store& store, const Unknown& tube, std::size_t grade);

/// Words of a test's grades.
[[nodiscard]] std::vector<std::string> words_of(const Store& store, const std::string& test);
/// What is to be seen at each grade, as the grade table has it; as many as the words.
[[nodiscard]] std::vector<std::string> table_of(const Store& store, const std::string& test);

} // namespace matula::practice
