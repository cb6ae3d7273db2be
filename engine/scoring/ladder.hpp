#pragma once

#include "engine/scoring/by_the_book.hpp"
#include "engine/scoring/rulebook.hpp"

namespace matula::assets {
struct World;
}

namespace matula::scoring {

/// Numbers of a tube that reach the eye; none of them is a concentration.
struct Observables {
  double luminance_on_black = 0; ///< White card = 1.
  double print_contrast = 1;     ///< Share of a printed line's contrast left.
  double granularity = 0;        ///< RMS contrast of grains.
  double opacity = 0;            ///< Share of light stopped on the axis.
  double piece_size_mm = 0;      ///< Median by bulk.
  double clot_fraction = 0;
  double settled_share = 0;
  /// In the hue of a colour scale at the place it looks at, or brightness of a ring of cloud; 0 for other
  /// scales.
  double colour_strength = 0;
  optics::Lab colour_on_white{}; ///< D65, whole face of the tube.
  optics::LinearRgb display{};   ///< The same in the display's gamut, linear 0..1.
};

/// One concentration of a ladder, done by the book and read.
struct LadderRung {
  double mg_per_dl = 0;
  reading::GradeReading read;
  Observables seen;
  std::string stopped_because; ///< Empty when the recipe could be finished.
};

/// The clean specimen of assets/plain_urine.toml.
[[nodiscard]] tl::expected<specimen::Specimen, scenario::Problems>
load_plain_urine(const std::filesystem::path& assets_folder);

/// A bench with two tubes and `specimen` holding `mg_per_dl` of the recipe's ladder species besides what is
/// in it, or, where the ladder is of pH, brought to that pH.
[[nodiscard]] bench::Setup ladder_setup(const assets::World& world, const specimen::Specimen& plain,
                                        const Recipe& recipe, double mg_per_dl);

/// The finished bench of one rung.
[[nodiscard]] BookTube ladder_tube(const bench::Setup& setup, const Recipe& recipe);

/// What there is to see in the part of the tube that is read.
[[nodiscard]] Observables observe(const bench::State& state, const bench::Setup& setup,
                                  const bench::VesselName& vessel, const reading::Scale& scale);

[[nodiscard]] LadderRung climb(const assets::World& world, const specimen::Specimen& plain,
                               const Recipe& recipe, const reading::Scale& scale, double mg_per_dl);

} // namespace matula::scoring
