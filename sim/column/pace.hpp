#pragma once

#include "sim/column/column.hpp"

#include <optional>
#include <vector>

namespace matula::column {

/// Chooses the length of the next step of a column at rest from how much the last one changed, and leaves it
/// with the column for the next time.
class Pace {
public:
  explicit Pace(bool unwatched) : unwatched_(unwatched) {}

  /// Longest next step at rest, s.
  [[nodiscard]] double longest_s(const Column& column);
  /// To be called after each step at rest.
  void after(Column& column, double step_s);
  /// The column was moved or heated: what was known of it is stale.
  void forget(Column& column);

private:
  /// Grams of the kinds that are there, by class, in suspension and then in the bed.
  struct Solids {
    std::vector<matter::ParticleId> kinds; ///< Rising.
    std::vector<double> grams;             ///< Of each kind twice the classes.
  };
  static Solids solids(const Column& column);
  static double moved_share(const Solids& before, const Solids& after, double volume_ml);

  bool unwatched_;
  std::optional<Solids> solids_; ///< As they were before the step.
  double temperature_c_ = 0;
};

} // namespace matula::column
