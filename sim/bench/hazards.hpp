#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

/// Adds bins' words to what a vessel holds.
void merge_waste(Vessel& vessel, const std::vector<std::string>& words);

/// Notes what is dangerous about opening this bottle here and pouring it into that vessel; gives the key of
/// the caution, empty when nothing is. The vessel takes on the bottle's waste word.
[[nodiscard]] std::string open_bottle(State& state, const matter::Reagent& reagent, Vessel& to);

/// Notes waste that goes where it does not belong; gives the key of the caution, empty when it is right.
[[nodiscard]] std::string throw_away(State& state, const Vessel& vessel, Bin bin);

/// Whether a vessel in the open room holds mostly what its bottle calls flammable.
[[nodiscard]] bool flammable_in_the_open(const State& state, const Setup& setup);

/// Liquid of a vessel on the bench.
void spill(State& state, const Vessel& vessel, double volume_ml);

Outcome wipe_spill(State& state, const WipeSpill& action);

} // namespace matula::bench
