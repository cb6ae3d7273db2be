#include "sim/bench/spin.hpp"

#include "sim/optics/nature.hpp"

#include "sim/bench/life.hpp"
#include "sim/bench/pour.hpp"
#include "sim/bench/words.hpp"
#include "sim/matter/density.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::bench {

namespace {

double liquid_g(const column::Column& column, const matter::Catalogue& catalogue) {
  const auto grams = [&catalogue](const matter::Mixture& part) {
    constexpr double g_per_ml_per_kg_m3 = 1e-3;
    return part.volume_ml > 0 ? matter::density_kg_m3(part, catalogue) * g_per_ml_per_kg_m3 * part.volume_ml
                              : 0.0;
  };
  double sum = grams(column.sediment);
  for (const matter::Mixture& layer : column.layers) {
    sum += grams(layer);
  }
  return sum;
}

std::string cannot_go_in(const State& state, const Centrifuge& action) {
  for (std::size_t i = 0; i < action.vessels.size(); ++i) {
    const VesselName& name = action.vessels[i];
    const auto found = state.vessels.find(name);
    if (found == state.vessels.end()) {
      return no_such_vessel(name);
    }
    if (name.rfind("tube-", 0) != 0) {
      return "Only test tubes fit the centrifuge.";
    }
    if (found->second.column.volume_ml() <= 0) {
      return "There is nothing in " + spoken(name) + " to spin.";
    }
    if (found->second.place != Place::Rack && found->second.place != Place::Hand) {
      return "Take " + spoken(name) + " out of the heat first.";
    }
    if (std::count(action.vessels.begin(), action.vessels.end(), name) > 1) {
      return spoken(name) + " is named twice.";
    }
  }
  return "";
}

/// Why the rotor would shake itself off the bench; empty when it runs true.
std::string unbalanced(const State& state, const Setup& setup, const Centrifuge& action) {
  if (action.vessels.size() % 2 != 0) {
    return spoken(action.vessels.back()) +
           " has no tube opposite: balance it with a tube of water filled to the same weight.";
  }
  for (std::size_t i = 0; i + 1 < action.vessels.size(); i += 2) {
    const auto grams = [&](std::size_t at) {
      return liquid_g(state.vessels.at(action.vessels[at]).column, *setup.chemistry->catalogue);
    };
    if (std::abs(grams(i) - grams(i + 1)) > setup.tools.rotor_balance_g) {
      return spoken(action.vessels[i]) + " and " + spoken(action.vessels[i + 1]) +
             " stand opposite each other and do not weigh the same: fill them alike.";
    }
  }
  return "";
}

/// Everything that spins meets a change of speed at its own time.
void turn(State& state, const Setup& setup, double rcf, double seconds) {
  state.spin_rcf = rcf;
  advance(state, setup, seconds);
  for (const VesselName& name : state.spinning) {
    Vessel& vessel = state.vessels.at(name);
    catch_up(state, setup, name, vessel);
    disturbed(state, setup, vessel);
  }
}

Outcome with_caution(Outcome outcome, const char* caution) {
  outcome.caution = caution;
  return outcome;
}

} // namespace

double rcf_of(double radius_cm, double rpm) {
  constexpr double m_per_cm = 0.01;
  constexpr double seconds_per_min = 60;
  const double turns_per_s = rpm / seconds_per_min;
  const double omega = 2 * std::numbers::pi * turns_per_s;
  return omega * omega * radius_cm * m_per_cm / nature::gravity_m_s2;
}

double rpm_of(double radius_cm, double rcf) {
  return std::sqrt(rcf / rcf_of(radius_cm, 1));
}

Outcome centrifuge(State& state, const Setup& setup, const Centrifuge& action) {
  if (action.vessels.empty()) {
    return refused("Say which tubes to spin.");
  }
  std::string why = cannot_go_in(state, action);
  if (why.empty() && !(action.rcf >= 1 && action.rcf <= setup.tools.rotor_most_rcf)) {
    why = "Glass tubes take from 1 to " + std::to_string(std::lround(setup.tools.rotor_most_rcf)) + " g.";
  }
  if (why.empty() && !(action.seconds > 0)) {
    why = "Say how long to spin: more than 0 s.";
  }
  if (!why.empty()) {
    return refused(why);
  }
  if (why = unbalanced(state, setup, action); !why.empty()) {
    state.hazards.unbalanced_rotor.note(state.time_s);
    why[0] = why[0] == 't' ? 'T' : why[0];
    return with_caution(refused(why), "centrifuge");
  }
  Outcome outcome;
  for (const VesselName& name : action.vessels) {
    Vessel& vessel = state.vessels.at(name);
    const std::string bare = touch(state, vessel, name);
    outcome.caution = outcome.caution.empty() ? bare : outcome.caution;
    catch_up(state, setup, name, vessel);
    disturbed(state, setup, vessel);
  }
  ++state.hazards.spins;
  state.spinning = action.vessels;
  constexpr double mean_of_a_run_up = 1.0 / 3; // the square of a speed that rises evenly
  const double running = std::max(1.0, mean_of_a_run_up * action.rcf);
  turn(state, setup, running, setup.tools.rotor_run_s);
  turn(state, setup, action.rcf, action.seconds);
  turn(state, setup, running, setup.tools.rotor_run_s);
  state.spinning.clear();
  state.spin_rcf = 1;
  for (const VesselName& name : action.vessels) {
    disturbed(state, setup, state.vessels.at(name));
  }
  return outcome;
}

} // namespace matula::bench
