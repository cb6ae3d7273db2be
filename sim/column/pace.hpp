#pragma once

#include "sim/column/column.hpp"

#include <vector>

namespace matula::column {

/// Chooses the length of the next step of a column at rest from how much the last one changed.
class Pace {
public:
  Pace(const Column& column, bool unwatched);

  /// To be called after each step at rest; returns the longest next step, s.
  double after(const Column& column, double step_s);
  [[nodiscard]] double longest_s() const { return longest_s_; }

private:
  /// Grams of the kinds that are there, by class, in suspension and then in the bed.
  struct Solids {
    std::vector<matter::ParticleId> kinds; ///< Rising.
    std::vector<double> grams;             ///< Of each kind twice the classes.
  };
  static Solids solids(const Column& column);
  static double moved_share(const Solids& before, const Solids& after);

  bool unwatched_;
  Solids solids_;
  double temperature_c_ = 0;
  double longest_s_;
};

} // namespace matula::column
