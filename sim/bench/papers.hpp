#pragma once

#include "sim/bench/bench.hpp"
#include "sim/bench/scene.hpp"

namespace matula::bench {

Outcome dip_paper(State& state, const Setup& setup, const DipPaper& action);
Outcome blot_paper(State& state, const Setup& setup, const BlotPaper& action);
Outcome look_at_paper(State& state, const Setup& setup, const LookAtPaper& action);
Outcome drop_on(State& state, const Setup& setup, const DropOn& action);
Outcome lay_paper(State& state, const Setup& setup);
Outcome discard_paper(State& state, const DiscardPaper& action);

/// Lets every wet paper live up to the bench's present tick, in steps that do not depend on who asks.
void live_papers(State& state, const Setup& setup);

/// The papers on the bench and the reference cards, under a lamp.
void see_papers(Scene& scene, const State& state, const Setup& setup, optics::Lamp lamp);

} // namespace matula::bench
