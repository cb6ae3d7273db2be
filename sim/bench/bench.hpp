#pragma once

#include "sim/appearance/appearance.hpp"
#include "sim/bench/action.hpp"
#include "sim/bench/bottle.hpp"
#include "sim/bench/outcome.hpp"
#include "sim/bench/tools.hpp"
#include "sim/column/column.hpp"
#include "sim/instrument/photometer.hpp"
#include "sim/instrument/refractometer.hpp"
#include "sim/instrument/sulphur.hpp"
#include "sim/instrument/urinometer.hpp"
#include "sim/paper/card.hpp"
#include "sim/specimen/specimen.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::ageing {
struct Laws;
}
namespace matula::appearance {
struct OpticsTables;
}

namespace matula::bench {

/// Everything fixed before the first action. The pointers must outlive the bench.
struct Setup {
  const column::Chemistry* chemistry = nullptr;
  const appearance::OpticsTables* optics = nullptr;
  const ageing::Laws* ageing = nullptr; ///< How specimens change as they stand; none: by chemistry alone.
  std::map<std::string, column::VesselShape> shapes; ///< By key.
  instrument::Urinometer urinometer;
  instrument::Refractometer refractometer;
  instrument::Photometer photometer;
  instrument::Sulphur sulphur;
  Tools tools;
  specimen::Specimen specimen;
  std::vector<std::string> reagents_out; ///< Bottles on the shelf for this case.
  BottleAges bottle_age_days;
  std::vector<BottleDecay> bottle_decays;
  const std::vector<paper::PaperKind>* papers = nullptr;     ///< On the bench; none while null.
  const std::map<std::string, paper::Card>* cards = nullptr; ///< Reference cards by kind of paper.
  double room_c = 22;
  int tube_count = 12;
  std::uint64_t seed = 1;
};

/// What has physically happened to the liquid in a vessel, for judging procedure. Times are bench seconds.
struct VesselTrace {
  struct Addition {
    double time_s = 0;
    std::string what; ///< Reagent key, or the vessel poured from.
    double volume_ml = 0;
    bool gently = false;
  };
  std::vector<Addition> additions;
  std::vector<double> mixed_at_s; ///< Ends of mixings.
  std::vector<double> looked_at_s;
  double hottest_c = -300;      ///< Of any layer.
  double hot_from_s = -1;       ///< First time any layer passed 90 °C.
  double seconds_above_90c = 0; ///< Of the hottest layer, in all.
  double boiling_seconds = 0;
  double boil_over_ml = 0;
  double seconds_in_flame = 0;
  double seconds_in_bath = 0;
  double seconds_pointed_at_person = 0; ///< While in the flame.
  double seconds_held_still_in_flame = 0;
  double temperature_at_first_use_c = -300;
};

struct Vessel {
  column::Column column;
  Place place = Place::Rack;
  Move held; ///< How it is held in the flame.
  VesselTrace trace;
  std::int64_t lived_ticks = 0;   ///< Up to which the column has lived.
  std::int64_t period_ticks = 1;  ///< How much of the bench's time it may fall behind.
  double disturbed_s = 0;         ///< When a hand last changed it.
  std::vector<std::string> waste; ///< Words of the bins its contents call for, sorted.
  std::optional<instrument::Strewn> sulphur;
};

/// The bench lives in whole ticks, so that any split of the same time gives the same bits.
inline constexpr double tick_s = 0.25;

/// An unsafe act: how often, and when first.
struct Slip {
  int times = 0;
  double first_s = -1;

  void note(double now_s) {
    first_s = times == 0 ? now_s : first_s;
    ++times;
  }
};

/// What was done that can hurt somebody, beyond what the vessels' traces tell.
struct Hazards {
  Slip outside_hood;         ///< A bottle that belongs under the hood opened in the room.
  Slip flammable_near_flame; ///< Flammable liquid in the open while the burner was lit.
  Slip wrong_bin;            ///< Waste in a bin it does not belong in.
  Slip cyanide_freed;        ///< Nitroprusside met strong acid in a bin.
  Slip chlorine_freed;       ///< Bleach on acid or ammonia.
  Slip unbalanced_rotor;     ///< Tried to spin what does not balance.
  // How often there was an occasion at all.
  int hood_bottles = 0;
  int flammable_bottles = 0;
  int bins = 0;
  int spins = 0;
  double spilled_ml = 0;                  ///< Lying about now.
  double spilled_all_ml = 0;              ///< In all.
  std::vector<std::string> spilled_waste; ///< Words of what lies about.
};

/// A paper with what a filtration left on it.
struct PaperResidue {
  matter::Mixture held;  ///< Solids, and the liquid that wets the paper.
  VesselName from;       ///< Last vessel filtered through it.
  double filtered_s = 0; ///< When.
  VesselTrace source;    ///< What that vessel had gone through by then.
};

struct FloatState {
  VesselName vessel;
  instrument::Float state;
};

/// What has been done with a piece of paper, for judging procedure. Times are bench seconds.
struct PaperTrace {
  VesselName vessel;
  double dip_s = 0;          ///< How long it was dipped.
  double specimen_c = -300;  ///< Temperature of what it was dipped into.
  bool mixed_before = false; ///< Whether the vessel had been mixed at all.
  std::vector<double> looked_at_s;
  /// Reagent let fall on it.
  struct Drops {
    double time_s = 0;
    std::string reagent;
    double count = 0;
  };
  std::vector<Drops> drops;
  VesselTrace source;     ///< Of a filter paper: what the vessel had gone through when it was filtered,
  double filtered_s = -1; ///< and when that was.
};

struct PaperState {
  paper::Piece piece;
  PaperTrace trace;
};

/// Mutable state of one bench. Plain data: copying it is saving it.
struct State {
  double time_s = 0;
  std::map<VesselName, Vessel> vessels;
  bool flame_on = false;
  double bath_c = 22;
  double bath_target_c = 22;
  std::optional<FloatState> floating;
  double float_last_in_water_reading = 0;
  std::vector<PaperState> papers; ///< In the order they were used.
  int papers_used = 0;
  bool gloves = false;
  bool goggles = false;
  double handled_without_gloves_s = -1; ///< First time; -1 never.
  double heated_without_goggles_s = -1;
  std::uint64_t random_counter = 0;
  std::int64_t ticks = 0; ///< Lived so far; time_s may be up to one tick ahead.
  VesselName mixing;      ///< Vessel in motion during a Mix; empty otherwise.
  Manner mixing_manner = Manner::Swirl;
  std::vector<VesselName> spinning; ///< In the centrifuge during a Centrifuge; empty otherwise.
  double spin_rcf = 1;
  double bath_warming_c_per_s = 0; ///< As set; 0: as fast as the hot plate can.
  bool hood = false;
  Hazards hazards;
  std::optional<PaperResidue> filter_residue; ///< On the paper last used.
  matter::Mixture prism_film;                 ///< Left on the refractometer's prism; empty when clean.
  std::map<double, double> photometer_zero;   ///< Decadic extinction of the blank, by wavelength in nm.
};

/// The bench before the first action: specimen in its cup (after it has stood), distilled water, an empty
/// jar, empty tubes. Throws std::invalid_argument when a vessel shape or a species of the specimen is
/// missing.
[[nodiscard]] State begin(const Setup& setup);

/// Performs one action at the present bench time; actions that take time advance the bench by it.
Outcome perform(State& state, const Setup& setup, const Action& action);

/// Lets the bench live. Any split of the same time gives the same state.
void advance(State& state, const Setup& setup, double seconds);

[[nodiscard]] appearance::Appearance look(const State& state, const Setup& setup, const VesselName& vessel,
                                          const appearance::View& view);

/// What the float's scale shows now; nothing when no float is in a vessel.
[[nodiscard]] std::optional<instrument::ScaleView> scale_view(const State& state, const Setup& setup);

[[nodiscard]] std::uint64_t state_hash(const State& state);

} // namespace matula::bench
