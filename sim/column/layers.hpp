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

/// Splits thick layers and joins thin ones until the column is resolved as its shape and filling need. Thin
/// layers of different liquids stay apart.
void refine(Column& column);

/// Cuts thin slices on both sides of the border under layer number `above` of a narrow vessel, so that what
/// diffuses across it can be followed, and mixes the little that a gentle stream stirs up there. Does nothing
/// where the same liquid lies on both sides.
void slice_border(Column& column, std::size_t above);

/// Moves the share `exchanged` (0 nothing, 1 fully) of two portions' difference between them; volumes stay,
/// and so does a clot, which hangs together. Of what is dissolved the share `diffused` then moves besides.
void blend(matter::Mixture& one, matter::Mixture& other, double exchanged, double diffused = 0);

/// The same of what is dissolved alone.
void blend_dissolved(matter::Mixture& one, matter::Mixture& other, double exchanged);

/// Moves liquid with what is dissolved in it, but no solid.
void move_liquid(matter::Mixture& from, matter::Mixture& to, double volume_ml);

} // namespace matula::column
