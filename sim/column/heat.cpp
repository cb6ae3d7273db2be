#include "sim/column/heat.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double heat_capacity_j_per_ml_k = 4.18;    // water at 20 °C (4.182 kJ/kg/K, CRC Handbook)
constexpr double conductivity_w_per_m_k = 0.63;      // water at 50 °C, CRC Handbook
constexpr double glass_conductivity_w_per_m_k = 1.1; // borosilicate, common value
constexpr double boiling_point_c = 100;              // at 101.3 kPa; 0.5 K of elevation in urine is left out
constexpr double latent_heat_j_per_g = 2257;         // water at 100 °C, CRC Handbook
constexpr double room_loss_w_per_m2_k = 12;          // still air and radiation at a warm wall, from memory
constexpr double bath_time_constant_s = 35;          // of a 14 mm tube in a water bath; fitted here
constexpr double bath_diameter_mm = 14;
constexpr double rolling_boil_w_per_ml = 8; // steam power in a layer that boils hard; fitted here
constexpr double reflux_share =
    0.7; // of the steam condenses on the cool glass above and runs back; fitted here
constexpr double swell_of_a_rolling_boil =
    0.6; // steam held up in the liquid, share of its volume; fitted here
constexpr double overflow_time_constant_s = 1; // fitted here

double capacity_j_per_k(const matter::Mixture& layer) {
  return layer.volume_ml * heat_capacity_j_per_ml_k;
}

/// Share of the flame that plays on this layer.
double flame_share(const Surroundings& around, const Extent& extent, double lowest_mm, double highest_mm) {
  const double from = std::clamp(around.flame_from_mm, lowest_mm, highest_mm);
  const double to = std::clamp(around.flame_to_mm, lowest_mm, highest_mm);
  if (to <= from) {
    return 0;
  }
  const double overlap = std::min(to, extent.to_mm) - std::max(from, extent.from_mm);
  return std::max(0.0, overlap) / (to - from);
}

/// Glass and liquid side by side carry heat from layer to layer.
void conduct(std::vector<matter::Mixture>& layers, const std::vector<Extent>& heights,
             const VesselShape& shape, double seconds) {
  const double radius_m = shape.inner_diameter_mm / 2000;
  const double wall_m = shape.wall_mm / 1000;
  const double conductance_w_m_per_k = pi * radius_m * radius_m * conductivity_w_per_m_k +
                                       2 * pi * radius_m * wall_m * glass_conductivity_w_per_m_k;
  for (std::size_t i = 0; i + 1 < layers.size(); ++i) {
    const double apart_m = (heights[i].thickness_mm() + heights[i + 1].thickness_mm()) / 2000;
    const double lower = capacity_j_per_k(layers[i]);
    const double upper = capacity_j_per_k(layers[i + 1]);
    const double reduced = lower * upper / (lower + upper);
    // Exact for the pair, so that no step is too long.
    const double reached = 1 - std::exp(-conductance_w_m_per_k / apart_m / reduced * seconds);
    const double moved_j = reached * reduced * (layers[i + 1].temperature_c - layers[i].temperature_c);
    layers[i].temperature_c += moved_j / lower;
    layers[i + 1].temperature_c -= moved_j / upper;
  }
}

/// Bath or room air round the wall.
void exchange_with_outside(matter::Mixture& layer, const VesselShape& shape, const Surroundings& around,
                           double seconds) {
  const bool bath = around.bath_c > no_bath_below_c;
  double rate_per_s = 0;
  if (bath) {
    rate_per_s = bath_diameter_mm / shape.inner_diameter_mm / bath_time_constant_s;
  } else {
    const double wall_m2_per_ml = 4 / shape.inner_diameter_mm / 1000; // 4/d of a cylinder
    rate_per_s = room_loss_w_per_m2_k * wall_m2_per_ml / heat_capacity_j_per_ml_k;
  }
  const double outside_c = bath ? around.bath_c : around.room_c;
  layer.temperature_c += (outside_c - layer.temperature_c) * (1 - std::exp(-rate_per_s * seconds));
}

/// Takes the heat above the boiling point out of a layer, joules.
double excess_j(matter::Mixture& layer) {
  const double over_k = layer.temperature_c - boiling_point_c;
  if (over_k <= 0) {
    return 0;
  }
  layer.temperature_c = boiling_point_c;
  return over_k * capacity_j_per_k(layer);
}

/// Steam leaves water behind with everything that was dissolved in it; never the last tenth of a layer.
void evaporate(matter::Mixture& layer, double steam_j) {
  constexpr double driest_share = 0.1;
  const double lost_ml = (1 - reflux_share) * steam_j / latent_heat_j_per_g;
  layer.volume_ml = std::max(layer.volume_ml - lost_ml, driest_share * layer.volume_ml);
}

/// Steam rises, warms cooler layers on its way and leaves at the top. Returns each layer's share of a rolling
/// boil.
std::vector<double> boil(std::vector<matter::Mixture>& layers, double seconds) {
  std::vector<double> vigour(layers.size(), 0.0);
  double steam_j = 0;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    layers[i].temperature_c += steam_j / capacity_j_per_k(layers[i]);
    const double from_below_j = steam_j;
    steam_j = excess_j(layers[i]);
    if (steam_j > from_below_j) {
      evaporate(layers[i], steam_j - from_below_j);
    }
    const double power_w_per_ml = steam_j / seconds / layers[i].volume_ml;
    vigour[i] = 1 - std::exp(-power_w_per_ml / rolling_boil_w_per_ml);
  }
  return vigour;
}

/// The heavy liquid has the temperature of what lies on it, up to its boiling point; there it boils away.
void warm_heavy(Column& column, const matter::HeavyLiquid& liquid) {
  matter::Mixture& heavy = column.heavy;
  if (heavy.volume_ml <= 0) {
    return;
  }
  matter::Mixture& bottom = column.layers.front();
  const double below = heavy.volume_ml * liquid.heat_capacity_j_per_ml_k;
  const double above = capacity_j_per_k(bottom);
  const double mean_c = (below * heavy.temperature_c + above * bottom.temperature_c) / (below + above);
  bottom.temperature_c = mean_c;
  heavy.temperature_c = std::min(mean_c, liquid.boiling_c);
  constexpr double driest_share = 0.1;
  const double vapour_j = below * (mean_c - heavy.temperature_c);
  const double lost_ml = (1 - reflux_share) * vapour_j / liquid.latent_heat_j_per_ml;
  heavy.volume_ml = std::max(heavy.volume_ml - lost_ml, driest_share * heavy.volume_ml);
}

void overflow(Column& column, double boiling_ml, double seconds) {
  const double swollen_ml = column.volume_ml() + swell_of_a_rolling_boil * boiling_ml;
  const double over_ml = swollen_ml - column.shape.capacity_ml;
  if (over_ml <= 0) {
    return;
  }
  double lost_ml = over_ml * (1 - std::exp(-seconds / overflow_time_constant_s));
  while (lost_ml > 0 && !column.layers.empty()) {
    matter::Mixture& top = column.layers.back();
    const bool all = lost_ml >= top.volume_ml;
    const double part_ml = matter::draw(top, lost_ml).volume_ml;
    column.boil_over_ml += part_ml;
    lost_ml -= part_ml;
    if (!all) {
      break;
    }
    column.layers.pop_back();
  }
}

} // namespace

void warm_alone(Column& column, const Surroundings& surroundings, double seconds) {
  exchange_with_outside(column.heavy, column.shape, surroundings, seconds);
}

std::vector<double> heat(Column& column, const matter::HeavyLiquid& liquid, const Surroundings& surroundings,
                         const std::vector<Extent>& heights, double seconds) {
  auto& layers = column.layers;
  const double lowest_mm = heights.front().from_mm;
  const double highest_mm = heights.back().to_mm;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const double share = flame_share(surroundings, heights[i], lowest_mm, highest_mm);
    layers[i].temperature_c += share * surroundings.flame_power_w * seconds / capacity_j_per_k(layers[i]);
    exchange_with_outside(layers[i], column.shape, surroundings, seconds);
  }
  if (column.sediment.volume_ml > 0) {
    // A thin bed has the temperature of the liquid it lies in.
    matter::Mixture& bottom = layers.front();
    const double both_ml = bottom.volume_ml + column.sediment.volume_ml;
    const double share = column.sediment.volume_ml / both_ml;
    const double mean_c = bottom.temperature_c * (1 - share) + column.sediment.temperature_c * share;
    bottom.temperature_c = mean_c;
    column.sediment.temperature_c = mean_c;
  }
  warm_heavy(column, liquid);
  conduct(layers, heights, column.shape, seconds);
  std::vector<double> vigour = boil(layers, seconds);
  // The bed boils dry no hotter than the liquid in it; its share of the steam is a trifle and is left out.
  column.sediment.temperature_c = std::min(column.sediment.temperature_c, boiling_point_c);
  column.boiling = 0;
  double boiling_ml = 0;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    column.boiling = std::max(column.boiling, vigour[i]);
    boiling_ml += vigour[i] * layers[i].volume_ml;
  }
  overflow(column, boiling_ml, seconds);
  vigour.resize(layers.size());
  return vigour;
}

} // namespace matula::column
