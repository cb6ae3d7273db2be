#include "sim/bench/bench.hpp"

#include "sim/bench/filter.hpp"
#include "sim/bench/floating.hpp"
#include "sim/bench/hazards.hpp"
#include "sim/bench/heating.hpp"
#include "sim/bench/measure.hpp"
#include "sim/bench/papers.hpp"
#include "sim/bench/pour.hpp"
#include "sim/bench/powder.hpp"
#include "sim/bench/senses.hpp"
#include "sim/bench/spin.hpp"
#include "sim/bench/words.hpp"

namespace matula::bench {

namespace {

/// One overload an action.
struct Performer {
  State& state;
  const Setup& setup;

  Outcome operator()(const Pour& action) const { return pour(state, setup, action); }
  Outcome operator()(const Dispense& action) const { return dispense(state, setup, action); }
  Outcome operator()(const Mix& action) const { return mix(state, setup, action); }
  Outcome operator()(const Move& action) const { return move(state, setup, action); }
  Outcome operator()(const LightFlame& action) const { return light_flame(state, setup, action); }
  Outcome operator()(const SetBath& action) const { return set_bath(state, setup, action); }
  Outcome operator()(const Float& action) const { return lower_float(state, setup, action); }
  Outcome operator()(const LiftFloat& /*action*/) const { return lift_float(state, setup); }
  Outcome operator()(const SpinFloat& /*action*/) const { return spin_float(state, setup); }
  Outcome operator()(const ClearBubbles& /*action*/) const { return clear_bubbles(state, setup); }
  Outcome operator()(const Thermometer& action) const { return take_temperature(state, setup, action); }
  Outcome operator()(const Smell& action) const { return smell(state, setup, action); }
  Outcome operator()(const Look& action) const { return look_closely(state, setup, action); }
  Outcome operator()(const Discard& action) const { return discard(state, setup, action); }

  Outcome operator()(const Refract& action) const { return refract(state, setup, action); }
  Outcome operator()(const Measure& action) const { return measure(state, setup, action); }
  Outcome operator()(const Centrifuge& action) const { return centrifuge(state, setup, action); }
  Outcome operator()(const Filter& action) const { return filter(state, setup, action); }
  Outcome operator()(const SprinkleSulphur& action) const { return sprinkle(state, setup, action); }
  Outcome operator()(const Tap& action) const { return tap(state, setup, action); }
  Outcome operator()(const WipeSpill& action) const { return wipe_spill(state, action); }

  Outcome operator()(const Hood& action) const {
    state.hood = action.on;
    return {};
  }
  Outcome operator()(const DipPaper& action) const { return dip_paper(state, setup, action); }
  Outcome operator()(const BlotPaper& action) const { return blot_paper(state, setup, action); }
  Outcome operator()(const LookAtPaper& action) const { return look_at_paper(state, setup, action); }
  Outcome operator()(const DropOn& action) const { return drop_on(state, setup, action); }
  Outcome operator()(const DiscardPaper& action) const { return discard_paper(state, action); }
  Outcome operator()(const LayPaper& /*action*/) const { return lay_paper(state, setup); }

  Outcome operator()(const Protect& action) const {
    state.gloves = action.gloves;
    state.goggles = action.goggles;
    return {};
  }

  Outcome operator()(const Wait& action) const {
    if (!(action.seconds >= 0)) {
      return refused("Time runs forward only.");
    }
    advance(state, setup, action.seconds);
    return {};
  }
};

} // namespace

Outcome perform(State& state, const Setup& setup, const Action& action) {
  return std::visit(Performer{state, setup}, action);
}

} // namespace matula::bench
