#include "engine/scoring/watch.hpp"

#include <algorithm>

namespace matula::scoring {
namespace {

/// Calls `use` when the event is an action of kind A.
template <typename A, typename Use> void when(const sitting::Event& event, Use use) {
  if (const auto* action = std::get_if<bench::Action>(&event.what)) {
    if (const auto* a = std::get_if<A>(action)) {
      use(*a);
    }
  }
}

void remember_float(Watch& watch, const bench::State& state, const bench::Setup& setup,
                    const matter::Catalogue& catalogue) {
  const auto scale = bench::scale_view(state, setup);
  if (!state.floating || !scale) {
    return;
  }
  const auto vessel = state.vessels.find(state.floating->vessel);
  if (vessel == state.vessels.end()) {
    return;
  }
  const auto& column = vessel->second.column;
  FloatSeen seen{vessel->first,
                 *scale,
                 state.floating->state,
                 watch.float_wiped,
                 watch.float_spun,
                 0,
                 0,
                 0,
                 column::whole(column, catalogue)};
  seen.liquid_c = column::mean_temperature_c(column);
  seen.liquid_ml = column.volume_ml();
  const double urine = vessel->first == "specimen" ? 1 : urine_ml(state, vessel->first);
  const double water = water_ml(state, vessel->first);
  seen.specimen_share = urine > 0 ? urine / (urine + water) : 0;
  (urine > 0 ? watch.in_specimen : watch.in_water) = std::move(seen);
}

void remember_heat(Watch& watch, const bench::State& state, const std::string& to, const std::string& what) {
  const auto vessel = state.vessels.find(to);
  if (vessel == state.vessels.end()) {
    return;
  }
  const auto& trace = vessel->second.trace;
  watch.additions[to].push_back(
      {what, state.time_s, trace.seconds_above_90c, trace.seconds_in_flame + trace.seconds_in_bath});
}

/// A refused addition did not happen.
void forget_last(Watch& watch, const std::string& to) {
  const auto found = watch.additions.find(to);
  if (found != watch.additions.end() && !found->second.empty()) {
    found->second.pop_back();
  }
}

void remember_emptied(Watch& watch, const bench::State& state, const std::string& name) {
  const auto vessel = state.vessels.find(name);
  if (vessel != state.vessels.end()) {
    watch.pointed_at_person_s += vessel->second.trace.seconds_pointed_at_person;
    watch.held_still_s += vessel->second.trace.seconds_held_still_in_flame;
  }
  watch.additions.erase(name);
  watch.cards.erase(name);
  watch.eye_mm.erase(name);
  watch.thermometer_c.erase(name);
}

/// Whatever takes more than eyes, time and clothes.
bool needs_a_hand(const bench::Action& action) {
  return !std::holds_alternative<bench::Look>(action) && !std::holds_alternative<bench::Wait>(action) &&
         !std::holds_alternative<bench::Protect>(action) &&
         !std::holds_alternative<bench::LookAtPaper>(action);
}

} // namespace

void Watch::before(const sitting::Event& event, const bench::State& state, const bench::Setup& setup,
                   const matter::Catalogue& catalogue) {
  remember_float(*this, state, setup, catalogue);
  when<bench::Pour>(event, [&](const bench::Pour& pour) {
    remember_heat(*this, state, pour.to, pour.from);
    if (pour.from == "specimen" && !mixed_before_first_pour) {
      mixed_before_first_pour = specimen_mixed;
    }
  });
  when<bench::Dispense>(event, [&](const bench::Dispense& dispense) {
    remember_heat(*this, state, dispense.to, dispense.reagent);
  });
  when<bench::Discard>(
      event, [&](const bench::Discard& discard) { remember_emptied(*this, state, discard.vessel); });
}

void Watch::after(const sitting::Event& event, const bench::State& state, const bench::Outcome& outcome,
                  const matter::Catalogue& catalogue) {
  if (!outcome.done) {
    when<bench::Pour>(event, [&](const bench::Pour& pour) { forget_last(*this, pour.to); });
    when<bench::Dispense>(event, [&](const bench::Dispense& dispense) { forget_last(*this, dispense.to); });
    return;
  }
  const auto* action = std::get_if<bench::Action>(&event.what);
  something_handled = something_handled || (action != nullptr && needs_a_hand(*action));
  when<bench::LightFlame>(event, [&](const bench::LightFlame& flame) { flame_lit = flame_lit || flame.on; });
  when<bench::Look>(event, [&](const bench::Look& look) {
    cards[look.vessel].insert(look.view.card);
    eye_mm[look.vessel] = look.eye_mm;
  });
  when<bench::Float>(event, [&](const bench::Float& lowered) {
    float_wiped = lowered.wiped;
    float_spun = lowered.spun;
  });
  when<bench::SpinFloat>(event, [&](const bench::SpinFloat&) { float_spun = true; });
  when<bench::ClearBubbles>(event, [&](const bench::ClearBubbles&) { float_wiped = true; });
  when<bench::Mix>(
      event, [&](const bench::Mix& mix) { specimen_mixed = specimen_mixed || mix.vessel == "specimen"; });
  when<bench::Smell>(event, [&](const bench::Smell&) { smelled = true; });
  when<bench::Thermometer>(event, [&](const bench::Thermometer& thermometer) {
    if (outcome.thermometer_c) {
      thermometer_c[thermometer.vessel] = *outcome.thermometer_c;
    }
  });
  photometer.after(event, state, outcome);
  const auto show = [&](const bench::VesselName& vessel) {
    if (outcome.reading && !outcome.reading->off_scale) {
      shown[outcome.reading->instrument] = {vessel, outcome.reading->value};
    }
  };
  when<bench::Refract>(event, [&](const bench::Refract& refract) { show(refract.vessel); });
  when<bench::Measure>(event, [&](const bench::Measure& measure) {
    if (!measure.blank) {
      show(measure.vessel);
    }
  });
  when<bench::Dispense>(event, [&](const bench::Dispense& dispense) {
    const auto* reagent = catalogue.find_reagent(dispense.reagent);
    const bool hazardous = reagent != nullptr && !reagent->caution.empty();
    strong_reagents += hazardous ? 1 : 0;
    strong_reagents_without_goggles += hazardous && !state.goggles ? 1 : 0;
  });
}

} // namespace matula::scoring
