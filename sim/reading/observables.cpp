#include "sim/reading/observables.hpp"

#include <algorithm>
#include <vector>

namespace matula::reading {

namespace {

using appearance::Appearance;
using appearance::Row;

template <class Quantity> double mean_over(const Appearance& looks, Stretch stretch, Quantity quantity) {
  double sum = 0;
  double weight = 0;
  for (const Row& row : looks.rows) {
    const double share = row.height_mm / std::max(looks.level_mm, 1e-9);
    if (share < stretch.from || share > stretch.to) {
      continue;
    }
    sum += quantity(row) * row.thickness_mm;
    weight += row.thickness_mm;
  }
  return weight > 0 ? sum / weight : 0;
}

} // namespace

double mean_luminance_on_black(const Appearance& looks, Stretch stretch) {
  return mean_over(looks, stretch, [](const Row& row) { return row.on_black[0].y; });
}

double mean_print_contrast(const Appearance& looks, Stretch stretch) {
  return mean_over(looks, stretch, [](const Row& row) { return row.print_contrast; });
}

double mean_granularity(const Appearance& looks, Stretch stretch) {
  return mean_over(looks, stretch, [](const Row& row) { return row.granularity; });
}

double mean_opacity(const Appearance& looks, Stretch stretch) {
  return mean_over(looks, stretch, [](const Row& row) { return row.opacity; });
}

optics::Xyz mean_colour_on_white(const Appearance& looks, Stretch stretch) {
  // The outer samples are mostly glass edge: the eye judges the middle of the tube.
  const auto face = [](const Row& row, double optics::Xyz::*component) {
    constexpr std::size_t middle = appearance::lateral_samples / 2;
    double sum = 0;
    for (std::size_t i = 0; i < middle; ++i) {
      sum += row.on_white[i].*component;
    }
    return sum / static_cast<double>(middle);
  };
  return {mean_over(looks, stretch, [&](const Row& row) { return face(row, &optics::Xyz::x); }),
          mean_over(looks, stretch, [&](const Row& row) { return face(row, &optics::Xyz::y); }),
          mean_over(looks, stretch, [&](const Row& row) { return face(row, &optics::Xyz::z); })};
}

double median_piece_size_mm(const Appearance& looks) {
  std::vector<double> sizes;
  double bulk = 0;
  for (const auto& piece : looks.pieces) {
    if (piece.kind != appearance::PieceKind::Bubble) {
      sizes.push_back(piece.size_mm);
      bulk += piece.size_mm * piece.size_mm; // What the eye weighs is covered area.
    }
  }
  std::sort(sizes.begin(), sizes.end());
  double passed = 0;
  for (const double size : sizes) {
    passed += size * size;
    if (passed >= bulk / 2) {
      return size;
    }
  }
  return 0;
}

} // namespace matula::reading
