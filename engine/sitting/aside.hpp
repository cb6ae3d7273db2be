#pragma once

#include "sim/bench/bench.hpp"

#include <map>
#include <vector>

namespace matula::sitting {

/// Every vessel an action does something to or with.
[[nodiscard]] std::vector<bench::VesselName> named_in(const bench::Action& action);

/// Vessels that stand outside the bench's time until somebody wants them. Vessels do not act on each other
/// unless a hand makes them, so each may live through its own time later and alone.
class Aside {
public:
  /// Takes the vessel out of the bench's time and leaves its trace there with an empty glass. Nothing happens
  /// where that could be noticed: away from the rack, with a float in it, or while it or the room is warmer
  /// than its trace has told yet.
  void lay(bench::State& state, const bench::Setup& setup, const bench::VesselName& vessel);

  /// Puts it back as it has become meanwhile; nothing when it is not aside.
  void take_up(bench::State& state, const bench::Setup& setup, const bench::VesselName& vessel);
  void take_up_all(bench::State& state, const bench::Setup& setup);

private:
  std::map<bench::VesselName, bench::State> waiting_; ///< Each on a bench of its own.
};

} // namespace matula::sitting
