#pragma once

#include "engine/procedure/curve.hpp"
#include "engine/scoring/rulebook.hpp"
#include "engine/sitting/event.hpp"
#include "sim/bench/bench.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::scoring {

/// What went into a vessel, in mL: "specimen", "water" and reagents by their keys.
using WentIn = std::map<std::string, double>;

/// A tube as it stood in the photometer.
struct TubeRead {
  bench::VesselName vessel;
  double time_s = 0;
  double wavelength_nm = 620;
  double value = 0; ///< Absorbance as shown.
  bool off_scale = false;
  WentIn went_in;
  double since_addition_s = 0; ///< Since something was last added to it.
  bool mixed = true;           ///< After that.
  bool zero_set = false;       ///< At this wavelength, before.
  WentIn zero_went_in;         ///< Of the tube zero was set on.
};

/// Which tube of the curve this was: the place of its standard, the blank or the specimen.
enum class TubeRole { None, Blank, Standard, Sample };
struct RoleOf {
  TubeRole role = TubeRole::None;
  std::size_t standard = 0;
};
/// Known from what went into it: the specimen with the reagent, a standard with it, or the specimen with the
/// blank's bottle in the reagent's place.
[[nodiscard]] RoleOf role_of(const TubeRead& read, const TestRule& test);

/// The tube whose absorbance a line of the worksheet holds.
[[nodiscard]] TubeRole role_of_line(procedure::CurveLine line);

/// mL of the test's reagents, each by its strength, and of everything else.
[[nodiscard]] double reagent_ml(const WentIn& went_in, const TestRule& test);
[[nodiscard]] double others_ml(const WentIn& went_in, const TestRule& test);
/// How many times the specimen in a tube was diluted before the reagent came to it; 0 without specimen.
[[nodiscard]] double times_diluted(const TubeRead& read, const TestRule& test);

/// Follows liquids from vessel to vessel, also when the vessel they came from has been emptied since, and
/// keeps every reading.
struct PhotometerBook {
  std::map<bench::VesselName, WentIn> holds;
  std::map<double, WentIn> zero; ///< By wavelength, what the tube held.
  std::vector<TubeRead> reads;

  /// Call after every event with what came of it.
  void after(const sitting::Event& event, const bench::State& state, const bench::Outcome& outcome);

  /// The last reading of a role; nothing when there was none.
  [[nodiscard]] const TubeRead* last(const TestRule& test, TubeRole role, std::size_t standard = 0) const;
};

} // namespace matula::scoring
