#pragma once

#include "sim/column/column.hpp"

#include <vector>

namespace matula::column {

/// Where one layer stands, mm above the inside bottom.
struct Extent {
  double from_mm = 0;
  double to_mm = 0;

  [[nodiscard]] double thickness_mm() const { return to_mm - from_mm; }
};

/// Heights of the layers from the bottom up; below the first lie the heavy liquid and, on it, the sediment.
[[nodiscard]] std::vector<Extent> extents(const Column& column);

/// Splits thick layers and joins thin ones until the column is resolved as its shape and filling need.
void refine(Column& column);

/// Moves the share `exchanged` (0 nothing, 1 fully) of two portions' difference between them; volumes stay,
/// and so does a clot, which hangs together.
void blend(matter::Mixture& one, matter::Mixture& other, double exchanged);

/// Moves liquid with what is dissolved in it, but no solid.
void move_liquid(matter::Mixture& from, matter::Mixture& to, double volume_ml);

} // namespace matula::column
