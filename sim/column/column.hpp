#pragma once

#include "sim/column/collisions.hpp"
#include "sim/column/vessel.hpp"
#include "sim/matter/mixture.hpp"
#include "sim/reaction/react.hpp"

#include <cstdint>
#include <vector>

namespace matula::column {

/// Laws of change shared by every vessel; immutable once `prepare`d.
struct Chemistry : reaction::Network {
  const matter::Catalogue* catalogue = nullptr;
  std::vector<CollisionTable> collisions; ///< By ParticleId; filled by prepare.
};

/// Works out the tables that depend only on the catalogue. Call once after loading; `advance` works without
/// it, slowly.
void prepare(Chemistry& chemistry);

/// Surroundings::bath_c below this means that the tube stands in air.
inline constexpr double no_bath_below_c = -273.15;

/// What surrounds and stirs a column during one stretch of time.
struct Surroundings {
  double room_c = 22;
  double flame_power_w = 0; ///< Heat put into the liquid between the two heights below, 0 without a flame.
  double flame_from_mm = 0; ///< Heights above the inside bottom.
  double flame_to_mm = 0;
  double bath_c = -300;     ///< Temperature of the bath round the tube; below absolute zero means no bath.
  double shear_per_s = 0.4; ///< Mean shear rate of hand mixing; 0.4 stands for convection in a tube at rest.
  bool inverting = false;   ///< The whole column is mixed together, not only stirred.
  reaction::Exposure exposure; ///< Light and air; a lit bench and an open vessel.
  bool unwatched = false;      ///< Left alone for hours: nobody looks, so longer steps will do.
  double gravity = 1;          ///< Weight of things against their weight at rest: more in a centrifuge.
};

/// The contents of one vessel: layers stacked from the bottom up. Everything on the bench is a column.
struct Column {
  VesselShape shape;
  std::vector<matter::Mixture> layers; ///< Bottom to top; empty when the vessel is empty.
  matter::Mixture
      sediment; ///< Solids at rest on the bottom or on the heavy liquid, with the liquid between them.
  matter::Mixture heavy;   ///< Heavy liquid under everything else, well mixed, with what it holds dissolved.
  double boil_over_ml = 0; ///< Liquid lost over the rim so far.
  double boiling = 0;      ///< 0 still, 1 rolling boil, at this instant.
  /// How long the next step at rest may be, s, as far as the last ones told; 0 once something disturbed it.
  double calm_step_s = 0;

  [[nodiscard]] double volume_ml() const;
};

[[nodiscard]] Column empty_column(const VesselShape& shape, const matter::Catalogue& catalogue);

/// Adds liquid on top. A gentle addition stays as its own layers (by density); the stream of an ordinary pour
/// mixes it with the upper part. Returns the volume that did not fit.
double pour_in(Column& column, const matter::Mixture& liquid, bool gently,
               const matter::Catalogue& catalogue);

/// Adds the heavy liquid, which sinks to the bottom and does not mix. Returns the volume that did not fit.
double pour_in_heavy(Column& column, const matter::Mixture& liquid, const matter::Catalogue& catalogue);

/// Takes heavy liquid, and nothing of what lies on it.
[[nodiscard]] matter::Mixture draw_out_heavy(Column& column, double volume_ml);

/// Takes liquid from the top, as a dropper does; never of the heavy liquid.
[[nodiscard]] matter::Mixture draw_out(Column& column, double volume_ml, const matter::Catalogue& catalogue);

/// Lets the column live for `seconds`. Pure: the same column, laws, surroundings and seconds give the same
/// bits. Any split of the seconds into whole steps gives the same result to the solver's tolerance.
void advance(Column& column, const Chemistry& chemistry, const Surroundings& surroundings, double seconds);

/// Everything mixed together, as a reader of sums sees it.
[[nodiscard]] matter::Mixture whole(const Column& column, const matter::Catalogue& catalogue);

/// Mean temperature of all liquid, weighted by volume, °C.
[[nodiscard]] double mean_temperature_c(const Column& column);

/// Hash of the exact bits of the column's state.
[[nodiscard]] std::uint64_t state_hash(const Column& column);

} // namespace matula::column
