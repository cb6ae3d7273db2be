#include "sim/bench/life.hpp"

#include "sim/bench/chance.hpp"
#include "sim/bench/flame.hpp"
#include "sim/bench/floating.hpp"
#include "sim/bench/hazards.hpp"
#include "sim/bench/keeping.hpp"
#include "sim/bench/papers.hpp"
#include "sim/bench/powder.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace matula::bench {

namespace {

constexpr double rounding_ticks = 1e-7; // sums of the same seconds in another order differ by less
constexpr double hot_c = 90;            // "above 90 °C" of the trace
constexpr double nearly_hot_k = 5;      // whose beginning and end are told to a second
constexpr double visibly_boiling = 0.05;

// How far a vessel may fall behind, by what goes on in it. Chemistry inside keeps its own shorter steps.
constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max() / 2;
constexpr std::int64_t in_motion_ticks = 2;
constexpr std::int64_t hot_ticks = 4;
constexpr std::int64_t warm_ticks = 8;
constexpr std::int64_t watched_ticks = 20;
constexpr std::int64_t resting_ticks = 120;
constexpr std::int64_t longest_ticks = 2400; // Ten minutes.
constexpr double behind_share = 0.05;        // of the time that a vessel has been left alone: a twentieth
constexpr double unwatched_s = 3600;         // and from here on nobody waits for it
constexpr double hot_over_room_k = 15;
constexpr double warmed_through_k = 0.3; // of the bath it stands in
constexpr double same_temperature_k = 0.05;
constexpr std::int64_t living_ticks = 2400; // Ten minutes: how often organisms and cells take their turn.

bool holds_only_water(const column::Column& column) {
  const auto pure = [](const matter::Mixture& part) {
    return std::all_of(part.mmol.begin(), part.mmol.end(), [](double mmol) { return mmol <= 0; }) &&
           std::all_of(part.populations.present().begin(), part.populations.present().end(),
                       [](const matter::Populations::Entry& entry) { return entry.population.empty(); });
  };
  return column.heavy.volume_ml <= 0 && pure(column.sediment) &&
         std::all_of(column.layers.begin(), column.layers.end(), pure);
}

std::int64_t period(const State& state, const Setup& setup, const Vessel& vessel) {
  const column::Column& column = vessel.column;
  if (column.volume_ml() <= 0) {
    return never;
  }
  const double off_room_k = hottest_c(column) - setup.room_c;
  if (vessel.place == Place::Flame) {
    return in_motion_ticks;
  }
  const bool warmed_through = vessel.place == Place::Bath && column.boiling <= 0 &&
                              std::abs(hottest_c(column) - state.bath_c) < warmed_through_k;
  if (column.boiling > 0 || std::abs(hottest_c(column) - hot_c) < nearly_hot_k) {
    return hot_ticks;
  }
  if (!warmed_through && (vessel.place == Place::Bath || off_room_k > hot_over_room_k)) {
    return warm_ticks;
  }
  if (!vessel.sulphur && std::abs(column::mean_temperature_c(column) - setup.room_c) < same_temperature_k &&
      holds_only_water(column)) {
    return never;
  }
  if (vessel.sulphur) {
    return watched_ticks; // Its grains sink one by one.
  }
  const double alone_s = bench_s(state) - vessel.disturbed_s;
  const std::int64_t most = vessel.place == Place::Bath ? resting_ticks : longest_ticks;
  return std::clamp(static_cast<std::int64_t>(behind_share * alone_s / tick_s), watched_ticks, most);
}

column::Surroundings around(const State& state, const Setup& setup, const VesselName& name,
                            const Vessel& vessel) {
  column::Surroundings s;
  s.room_c = setup.room_c;
  if (vessel.place == Place::Bath) {
    s.bath_c = state.bath_c;
  }
  if (vessel.place == Place::Flame && state.flame_on) {
    play_flame(s, vessel, setup.tools);
  }
  s.unwatched = vessel.place == Place::Rack && bench_s(state) - vessel.disturbed_s > unwatched_s;
  if (state.mixing == name) {
    s.inverting = state.mixing_manner == Manner::Invert;
    s.shear_per_s = s.inverting ? setup.tools.invert_shear_per_s : setup.tools.swirl_shear_per_s;
  }
  if (std::find(state.spinning.begin(), state.spinning.end(), name) != state.spinning.end()) {
    s.gravity = state.spin_rcf;
  }
  return s;
}

void write_trace(const State& state, Vessel& vessel, double seconds) {
  VesselTrace& trace = vessel.trace;
  const double hottest = hottest_c(vessel.column);
  trace.hottest_c = std::max(trace.hottest_c, hottest);
  if (hottest > hot_c) {
    trace.seconds_above_90c += seconds;
    if (trace.hot_from_s < 0) {
      trace.hot_from_s = bench_s(state);
    }
  }
  trace.boiling_seconds += vessel.column.boiling > visibly_boiling ? seconds : 0;
  if (vessel.place == Place::Flame && state.flame_on) {
    trace.seconds_in_flame += seconds;
    trace.seconds_pointed_at_person += vessel.held.towards_person ? seconds : 0;
    trace.seconds_held_still_in_flame += vessel.held.moving ? 0 : seconds;
  }
}

void live(State& state, const Setup& setup, const VesselName& name, Vessel& vessel) {
  const double seconds = static_cast<double>(state.ticks - vessel.lived_ticks) * tick_s;
  vessel.lived_ticks = state.ticks;
  if (seconds <= 0 || vessel.period_ticks == never) {
    return;
  }
  column::advance(vessel.column, *setup.chemistry, around(state, setup, name, vessel), seconds);
  if (vessel.place == Place::Flame && state.flame_on) {
    bump(state, setup, name, vessel, seconds);
  }
  spill(state, vessel, vessel.column.boil_over_ml - vessel.trace.boil_over_ml);
  vessel.trace.boil_over_ml = vessel.column.boil_over_ml;
  live_powder(setup, vessel, seconds);
  write_trace(state, vessel, seconds);
}

/// Slow life takes its turn at fixed times of the bench, so that any split of the time gives the same bits.
void take_turns(State& state, const Setup& setup) {
  constexpr double s_per_h = 3600;
  for (auto& [name, vessel] : state.vessels) {
    if (!lives(vessel.column, setup)) {
      continue;
    }
    live(state, setup, name, vessel);
    live_on(vessel.column, setup, static_cast<double>(living_ticks) * tick_s / s_per_h);
  }
}

void warm_bath(State& state, const Setup& setup) {
  const double target = std::max(state.bath_target_c, setup.room_c);
  if (state.bath_c < target) {
    const double hot_plate = setup.tools.bath_warming_c_per_s;
    const double per_s =
        state.bath_warming_c_per_s > 0 ? std::min(state.bath_warming_c_per_s, hot_plate) : hot_plate;
    state.bath_c = std::min(target, state.bath_c + per_s * tick_s);
  } else {
    state.bath_c -= (state.bath_c - target) * setup.tools.bath_cooling_share_per_s * tick_s;
  }
}

/// All vessels side by side: a day has 345 600 ticks.
using Vessels = std::vector<std::pair<const VesselName*, Vessel*>>;

Vessels all_vessels(State& state) {
  Vessels all;
  for (auto& [name, vessel] : state.vessels) {
    all.emplace_back(&name, &vessel);
  }
  return all;
}

void tick(State& state, const Setup& setup, const Vessels& vessels) {
  ++state.ticks;
  warm_bath(state, setup);
  for (const auto& [its_name, its_vessel] : vessels) {
    const VesselName& name = *its_name;
    Vessel& vessel = *its_vessel;
    vessel.trace.seconds_in_bath += vessel.place == Place::Bath && vessel.column.volume_ml() > 0 ? tick_s : 0;
    const std::int64_t allowed = state.mixing == name ? in_motion_ticks : vessel.period_ticks;
    if (state.ticks - vessel.lived_ticks >= allowed) {
      live(state, setup, name, vessel);
      vessel.period_ticks = period(state, setup, vessel);
    }
    if (vessel.place == Place::Flame && state.flame_on && !state.goggles &&
        state.heated_without_goggles_s < 0) {
      state.heated_without_goggles_s = bench_s(state);
    }
  }
  if (state.ticks % living_ticks == 0) {
    take_turns(state, setup);
  }
  live_papers(state, setup);
  bob(state, setup, tick_s);
}

} // namespace

double bench_s(const State& state) {
  return static_cast<double>(state.ticks) * tick_s;
}

double hottest_c(const column::Column& column) {
  double hottest = column.sediment.volume_ml > 0 ? column.sediment.temperature_c : -300;
  hottest = column.heavy.volume_ml > 0 ? std::max(hottest, column.heavy.temperature_c) : hottest;
  for (const matter::Mixture& layer : column.layers) {
    hottest = std::max(hottest, layer.temperature_c);
  }
  return hottest;
}

void catch_up(State& state, const Setup& setup, const VesselName& name, Vessel& vessel) {
  live(state, setup, name, vessel);
}

void disturbed(const State& state, const Setup& setup, Vessel& vessel) {
  vessel.lived_ticks = state.ticks;
  vessel.disturbed_s = bench_s(state);
  vessel.period_ticks = period(state, setup, vessel);
}

void advance(State& state, const Setup& setup, double seconds) {
  if (!(seconds > 0)) {
    return;
  }
  state.time_s += seconds;
  const auto target = static_cast<std::int64_t>(std::floor(state.time_s / tick_s + rounding_ticks));
  const Vessels vessels = all_vessels(state);
  while (state.ticks < target) {
    tick(state, setup, vessels);
  }
}

} // namespace matula::bench
