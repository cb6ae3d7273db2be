#include "sim/column/layers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace matula::column {

namespace {

constexpr double layers_of_a_full_tube =
    16;                           // resolution, not physics: halving the layers moves a front by < 1 mm
constexpr double thickest_mm = 4; // of a layer in a narrow vessel
constexpr double narrow_diameter_mm = 25; // wider vessels mix by themselves and need few layers
constexpr double layers_of_a_wide_vessel = 4;
constexpr std::size_t most_layers = 36;
constexpr double smallest_layer_ml = 1e-3;
constexpr double same_liquid_share = 5e-3; // difference in all that is dissolved below which a border is none
// Slices on either side of a border between two liquids, mm, from the border outwards: resolution, not
// physics.
constexpr std::array<double, 5> border_slices_mm{0.3, 0.4, 0.6, 1.0, 1.6};
// What a thin stream down the wall stirs up of either liquid where it comes to rest; fitted here.
constexpr double stirred_border_mm = 0.5;
constexpr double mm3_per_ml = 1000;

double wanted_layers(const VesselShape& shape, double volume_ml) {
  if (shape.inner_diameter_mm > narrow_diameter_mm) {
    return layers_of_a_wide_vessel;
  }
  const double by_height = std::ceil(shape.level_mm(volume_ml) / thickest_mm);
  return std::clamp(by_height, layers_of_a_wide_vessel, layers_of_a_full_tube);
}

void split(std::vector<matter::Mixture>& layers, std::size_t at, std::size_t pieces) {
  matter::Mixture rest = std::move(layers[at]);
  std::vector<matter::Mixture> parts;
  const double each_ml = rest.volume_ml / static_cast<double>(pieces);
  for (std::size_t p = 0; p + 1 < pieces; ++p) {
    parts.push_back(matter::draw(rest, each_ml));
  }
  parts.push_back(std::move(rest));
  layers[at] = std::move(parts.front());
  const auto after = layers.begin() + static_cast<std::ptrdiff_t>(at) + 1;
  layers.insert(after, std::make_move_iterator(parts.begin() + 1), std::make_move_iterator(parts.end()));
}

void join(std::vector<matter::Mixture>& layers, std::size_t at) {
  matter::merge(layers[at], layers[at + 1]);
  layers.erase(layers.begin() + static_cast<std::ptrdiff_t>(at) + 1);
}

/// Whether two layers hold the same liquid, so that nothing is lost by making one of them.
bool same_liquid(const matter::Mixture& one, const matter::Mixture& other) {
  double apart = 0;
  double all = 0;
  for (std::size_t s = 0; s < one.mmol.size(); ++s) {
    apart += std::abs(one.mmol[s] * other.volume_ml - other.mmol[s] * one.volume_ml);
    all += one.mmol[s] * other.volume_ml + other.mmol[s] * one.volume_ml;
  }
  return apart <= 0.5 * same_liquid_share * all;
}

/// The neighbours that together are smallest among those `may_join` allows, as the index of the lower one;
/// the number of layers when there are none.
template <class MayJoin>
std::size_t smallest_pair(const std::vector<matter::Mixture>& layers, MayJoin may_join) {
  std::size_t best = layers.size();
  double least_ml = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i + 1 < layers.size(); ++i) {
    const double both_ml = layers[i].volume_ml + layers[i + 1].volume_ml;
    if (both_ml < least_ml && may_join(layers[i], layers[i + 1], both_ml)) {
      best = i;
      least_ml = both_ml;
    }
  }
  return best;
}

/// Both ends are weighted means of what was there, so rounding cannot make a trace negative.
void blend_value(double& a, double& b, double share_a, double exchanged) {
  const double all = a + b;
  a = (1 - exchanged) * a + exchanged * share_a * all;
  b = (1 - exchanged) * b + exchanged * (1 - share_a) * all;
}

} // namespace

std::vector<Extent> extents(const Column& column) {
  std::vector<Extent> heights;
  heights.reserve(column.layers.size());
  double below_ml = column.heavy.volume_ml + column.sediment.volume_ml;
  double from_mm = column.shape.level_mm(below_ml);
  for (const matter::Mixture& layer : column.layers) {
    below_ml += layer.volume_ml;
    const double to_mm = column.shape.level_mm(below_ml);
    heights.push_back({from_mm, to_mm});
    from_mm = to_mm;
  }
  return heights;
}

void refine(Column& column) {
  auto& layers = column.layers;
  double total_ml = 0;
  for (const matter::Mixture& layer : layers) {
    total_ml += layer.volume_ml;
  }
  if (total_ml <= 0) {
    return;
  }
  const double target_ml = total_ml / wanted_layers(column.shape, total_ml);
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const double pieces = std::round(layers[i].volume_ml / target_ml);
    if (pieces >= 2) {
      split(layers, i, static_cast<std::size_t>(pieces));
      i += static_cast<std::size_t>(pieces) - 1;
    }
  }
  const bool wide = column.shape.inner_diameter_mm > narrow_diameter_mm;
  const auto crumbs = [&](const matter::Mixture& one, const matter::Mixture& other, double both_ml) {
    return std::min(one.volume_ml, other.volume_ml) < smallest_layer_ml ||
           (both_ml < 0.5 * target_ml && (wide || same_liquid(one, other)));
  };
  const auto any = [](const matter::Mixture&, const matter::Mixture&, double) { return true; };
  while (layers.size() > 1) {
    std::size_t at = smallest_pair(layers, crumbs);
    if (at == layers.size() && layers.size() > most_layers) {
      at = smallest_pair(layers, any);
    }
    if (at == layers.size()) {
      break;
    }
    join(layers, at);
  }
}

void slice_border(Column& column, std::size_t above) {
  auto& layers = column.layers;
  if (column.shape.inner_diameter_mm > narrow_diameter_mm || above == 0 || above >= layers.size() ||
      same_liquid(layers[above - 1], layers[above])) {
    return;
  }
  const double area_mm2 =
      std::numbers::pi / 4 * column.shape.inner_diameter_mm * column.shape.inner_diameter_mm;
  const auto cut = [&](matter::Mixture& layer, double thickness_mm) {
    // Half of what there is at most, so that the rest stays a layer.
    return matter::draw(layer, std::min(thickness_mm * area_mm2 / mm3_per_ml, 0.5 * layer.volume_ml));
  };
  std::vector<matter::Mixture> below_border;
  std::vector<matter::Mixture> above_border;
  for (const double thickness_mm : border_slices_mm) {
    below_border.push_back(cut(layers[above - 1], thickness_mm));
    above_border.push_back(cut(layers[above], thickness_mm));
  }
  double away_mm = 0;
  for (std::size_t i = 0; i < border_slices_mm.size(); ++i) {
    blend(below_border[i], above_border[i], std::exp(-away_mm / stirred_border_mm));
    away_mm += border_slices_mm[i];
  }
  const auto border = layers.begin() + static_cast<std::ptrdiff_t>(above);
  const auto middle = layers.insert(border, std::make_move_iterator(above_border.begin()),
                                    std::make_move_iterator(above_border.end()));
  layers.insert(middle, std::make_move_iterator(below_border.rbegin()),
                std::make_move_iterator(below_border.rend()));
}

void blend(matter::Mixture& one, matter::Mixture& other, double exchanged, double diffused) {
  const double both_ml = one.volume_ml + other.volume_ml;
  if (both_ml <= 0 || exchanged <= 0) {
    return;
  }
  const double share = one.volume_ml / both_ml;
  const double mean_c = one.temperature_c * share + other.temperature_c * (1 - share);
  one.temperature_c += exchanged * (mean_c - one.temperature_c);
  other.temperature_c += exchanged * (mean_c - other.temperature_c);
  // What still sets two neighbours apart after both is the product of what each leaves.
  blend_dissolved(one, other, 1 - (1 - exchanged) * (1 - diffused));
  matter::for_each_in_either(one.populations, other.populations, [&](matter::ParticleId kind) {
    matter::Population& a = one.populations.of(kind);
    matter::Population& b = other.populations.of(kind);
    for (std::size_t i = 0; i < matter::size_bins; ++i) {
      blend_value(a.grams[i], b.grams[i], share, exchanged);
    }
  });
}

void blend_dissolved(matter::Mixture& one, matter::Mixture& other, double exchanged) {
  const double both_ml = one.volume_ml + other.volume_ml;
  if (both_ml <= 0 || exchanged <= 0) {
    return;
  }
  const double share = one.volume_ml / both_ml;
  for (std::size_t s = 0; s < one.mmol.size(); ++s) {
    blend_value(one.mmol[s], other.mmol[s], share, exchanged);
  }
}

void move_liquid(matter::Mixture& from, matter::Mixture& to, double volume_ml) {
  const double moved_ml = std::min(volume_ml, from.volume_ml);
  if (moved_ml <= 0) {
    return;
  }
  const double share = moved_ml / from.volume_ml;
  const double after_ml = to.volume_ml + moved_ml;
  to.temperature_c += (from.temperature_c - to.temperature_c) * (moved_ml / after_ml);
  to.volume_ml = after_ml;
  from.volume_ml -= moved_ml;
  for (std::size_t s = 0; s < from.mmol.size(); ++s) {
    const double amount = share * from.mmol[s];
    from.mmol[s] -= amount;
    to.mmol[s] += amount;
  }
}

} // namespace matula::column
