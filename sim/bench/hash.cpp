#include "sim/bench/bench.hpp"

#include "sim/bench/chance.hpp"

#include <bit>
#include <cmath>

namespace matula::bench {

namespace {

class Hasher {
public:
  void add(std::uint64_t word) { value_ = optics::hash(value_ ^ word); }
  void add(double number) { add(std::bit_cast<std::uint64_t>(number)); }
  void add(bool flag) { add(static_cast<std::uint64_t>(flag)); }
  void add(const VesselName& name) { add(hash_name(name)); }
  [[nodiscard]] std::uint64_t value() const { return value_; }

private:
  std::uint64_t value_ = 0;
};

void add(Hasher& hasher, const instrument::Strewn& strewn) {
  for (const double mg : strewn.floating_mg) {
    hasher.add(mg);
  }
}

void add(Hasher& hasher, const Vessel& vessel) {
  hasher.add(column::state_hash(vessel.column));
  hasher.add(static_cast<std::uint64_t>(vessel.place));
  hasher.add(vessel.held.height);
  hasher.add(vessel.held.towards_person);
  hasher.add(vessel.held.moving);
  hasher.add(static_cast<std::uint64_t>(vessel.lived_ticks));
  hasher.add(vessel.trace.seconds_above_90c);
  hasher.add(vessel.trace.boiling_seconds);
  hasher.add(vessel.trace.boil_over_ml);
  if (vessel.sulphur) {
    add(hasher, *vessel.sulphur);
  }
}

void add(Hasher& hasher, const FloatState& floating) {
  hasher.add(floating.vessel);
  hasher.add(floating.state.depth_offset_mm);
  hasher.add(floating.state.speed_mm_s);
  hasher.add(floating.state.wall_shift_mm);
  hasher.add(floating.state.bubble_volume_ml);
  hasher.add(floating.state.touches_wall);
}

void add(Hasher& hasher, const Slip& slip) {
  hasher.add(static_cast<std::uint64_t>(slip.times));
  hasher.add(slip.first_s);
}

void add(Hasher& hasher, const Hazards& hazards) {
  for (const Slip* slip : {&hazards.outside_hood, &hazards.flammable_near_flame, &hazards.wrong_bin,
                           &hazards.cyanide_freed, &hazards.chlorine_freed, &hazards.unbalanced_rotor}) {
    add(hasher, *slip);
  }
  hasher.add(hazards.spilled_ml);
  hasher.add(hazards.spilled_all_ml);
}

/// What only some sittings use, so that a bench without it keeps its hash.
void add_if_used(Hasher& hasher, const State& state) {
  if (state.filter_residue) {
    for (const double mmol : state.filter_residue->held.mmol) {
      hasher.add(mmol);
    }
    const matter::Populations& held = state.filter_residue->held.populations;
    for (matter::ParticleId kind = 0; kind < held.size(); ++kind) {
      hasher.add(held[kind].total_g());
    }
  }
  for (const double mmol : state.prism_film.mmol) {
    hasher.add(mmol);
  }
  for (const auto& [wavelength_nm, zero] : state.photometer_zero) {
    hasher.add(wavelength_nm);
    hasher.add(zero);
  }
  if (state.hood) {
    hasher.add(state.hood);
  }
  const Hazards& hazards = state.hazards;
  if (hazards.spilled_all_ml > 0 || hazards.outside_hood.times + hazards.flammable_near_flame.times +
                                            hazards.wrong_bin.times + hazards.cyanide_freed.times +
                                            hazards.chlorine_freed.times + hazards.unbalanced_rotor.times >
                                        0) {
    add(hasher, hazards);
  }
}

void add(Hasher& hasher, const PaperState& paper) {
  hasher.add(paper.piece.name);
  hasher.add(paper.piece.wetted_s);
  hasher.add(paper.piece.blotted);
  hasher.add(static_cast<std::uint64_t>(paper.piece.lived_ticks));
  for (const paper::Pad& pad : paper.piece.pads) {
    hasher.add(pad.inside.volume_ml);
    hasher.add(pad.inside.temperature_c);
    for (const double mmol : pad.inside.mmol) {
      hasher.add(mmol);
    }
  }
}

} // namespace

std::uint64_t state_hash(const State& state) {
  Hasher hasher;
  constexpr double per_second = 1e6; // Beyond that, sums of the same seconds may differ.
  hasher.add(std::round(state.time_s * per_second));
  hasher.add(static_cast<std::uint64_t>(state.ticks));
  for (const auto& [name, vessel] : state.vessels) {
    hasher.add(name);
    add(hasher, vessel);
  }
  hasher.add(state.flame_on);
  hasher.add(state.bath_c);
  hasher.add(state.bath_target_c);
  if (state.floating) {
    add(hasher, *state.floating);
  }
  for (const PaperState& paper : state.papers) {
    add(hasher, paper);
  }
  hasher.add(state.gloves);
  hasher.add(state.goggles);
  hasher.add(state.handled_without_gloves_s);
  hasher.add(state.heated_without_goggles_s);
  hasher.add(state.random_counter);
  add_if_used(hasher, state);
  return hasher.value();
}

} // namespace matula::bench
