#include "engine/sitting/aside.hpp"

#include "sim/bench/life.hpp"

#include <algorithm>
#include <utility>

namespace matula::sitting {

namespace {

constexpr double boiling_point_c = 100; // Not above it, nothing boils in air.

/// Whether nothing but its own contents will change while it stands: what cools in the rack neither boils
/// over nor gets warmer than its trace says it has been.
bool only_stands(const bench::State& state, const bench::Setup& setup, const bench::VesselName& name,
                 const bench::Vessel& vessel) {
  const column::Column& column = vessel.column;
  const double hottest_c = bench::hottest_c(column);
  const bool floats = state.floating && state.floating->vessel == name;
  const bool stands = vessel.place == bench::Place::Rack && state.mixing != name && state.spinning.empty();
  const bool keeps = column.volume_ml() > 0 && column.volume_ml() <= column.shape.capacity_ml &&
                     hottest_c <= boiling_point_c && column.boil_over_ml <= vessel.trace.boil_over_ml;
  return stands && !floats && keeps && std::max(hottest_c, setup.room_c) <= vessel.trace.hottest_c;
}

} // namespace

std::vector<bench::VesselName> named_in(const bench::Action& action) {
  return std::visit(
      [](const auto& one) -> std::vector<bench::VesselName> {
        if constexpr (requires { one.vessels; }) {
          return one.vessels;
        } else if constexpr (requires { one.vessel; }) {
          return {one.vessel};
        } else if constexpr (requires { one.from; }) {
          return {one.from, one.to};
        } else if constexpr (requires { one.to; }) {
          return {one.to};
        } else {
          return {};
        }
      },
      action);
}

void Aside::lay(bench::State& state, const bench::Setup& setup, const bench::VesselName& vessel) {
  const auto found = state.vessels.find(vessel);
  if (found == state.vessels.end() || waiting_.count(vessel) > 0 ||
      !only_stands(state, setup, vessel, found->second)) {
    return;
  }
  bench::State own;
  own.ticks = state.ticks;
  own.time_s = bench::bench_s(state);
  bench::Vessel husk = found->second;
  husk.column = column::empty_column(husk.column.shape, *setup.chemistry->catalogue);
  own.vessels[vessel] = std::exchange(found->second, std::move(husk));
  bench::disturbed(state, setup, found->second);
  waiting_[vessel] = std::move(own);
}

void Aside::take_up(bench::State& state, const bench::Setup& setup, const bench::VesselName& vessel) {
  const auto found = waiting_.find(vessel);
  if (found == waiting_.end()) {
    return;
  }
  bench::State& own = found->second;
  bench::advance(own, setup, static_cast<double>(state.ticks - own.ticks) * bench::tick_s);
  state.vessels[vessel] = std::move(own.vessels.at(vessel));
  waiting_.erase(found);
}

void Aside::take_up_all(bench::State& state, const bench::Setup& setup) {
  while (!waiting_.empty()) {
    take_up(state, setup, bench::VesselName(waiting_.begin()->first));
  }
}

} // namespace matula::sitting
