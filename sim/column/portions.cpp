#include "sim/column/portions.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

constexpr double same_share = 1e-3; // relative
constexpr double same_temperature_k = 0.05;
constexpr double same_shear_share = 0.02;
constexpr double nothing_molar = 1e-10;    // 0.1 nmol/mL: below every law's notice
constexpr double nothing_g_per_ml = 1e-10; // 0.01 mg/dL of solid: invisible

bool same_shear(double a, double b) {
  return std::abs(a - b) <= same_shear_share * std::max(a, b);
}

bool same_dissolved(const matter::Mixture& a, const matter::Mixture& b) {
  for (std::size_t s = 0; s < a.mmol.size(); ++s) {
    const double here = a.mmol[s] * b.volume_ml;
    const double there = b.mmol[s] * a.volume_ml;
    if (std::abs(here - there) >
        same_share * std::max(here, there) + nothing_molar * a.volume_ml * b.volume_ml) {
      return false;
    }
  }
  return true;
}

bool same_solids(const matter::Population& a, const matter::Population& b, double volume_a_ml,
                 double volume_b_ml) {
  if (a.empty() && b.empty()) {
    return true;
  }
  const double scale = std::max(a.total_g() * volume_b_ml, b.total_g() * volume_a_ml);
  const double allowed = same_share * scale + nothing_g_per_ml * volume_a_ml * volume_b_ml;
  double apart = std::abs(a.clot_g * volume_b_ml - b.clot_g * volume_a_ml);
  if (scale > 0) {
    for (std::size_t i = 0; i < matter::size_bins; ++i) {
      apart += std::abs(a.grams[i] * volume_b_ml - b.grams[i] * volume_a_ml);
    }
  }
  return apart <= allowed;
}

bool alike(const matter::Mixture& a, const matter::Mixture& b) {
  if (std::abs(a.temperature_c - b.temperature_c) > same_temperature_k || !same_dissolved(a, b)) {
    return false;
  }
  bool same = true;
  matter::for_each_in_either(a.populations, b.populations, [&](matter::ParticleId kind) {
    same = same && same_solids(a.populations[kind], b.populations[kind], a.volume_ml, b.volume_ml);
  });
  return same;
}

} // namespace

std::vector<Run> alike_runs(const std::vector<matter::Mixture>& layers,
                            const std::vector<double>& shear_per_s) {
  std::vector<Run> runs;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (!runs.empty()) {
      Run& run = runs.back();
      if (same_shear(shear_per_s[run.first], shear_per_s[i]) && alike(layers[run.first], layers[i])) {
        run.last = i + 1;
        continue;
      }
    }
    runs.push_back({i, i + 1});
  }
  return runs;
}

matter::Mixture pool(const std::vector<matter::Mixture>& layers, const Run& run) {
  matter::Mixture pooled = layers[run.first];
  for (std::size_t i = run.first + 1; i < run.last; ++i) {
    matter::merge(pooled, layers[i]);
  }
  return pooled;
}

void deal(std::vector<matter::Mixture>& layers, const Run& run, const matter::Mixture& pooled) {
  for (std::size_t i = run.first; i < run.last; ++i) {
    matter::Mixture& layer = layers[i];
    const double share = layer.volume_ml / pooled.volume_ml;
    layer.temperature_c = pooled.temperature_c;
    for (std::size_t s = 0; s < layer.mmol.size(); ++s) {
      layer.mmol[s] = share * pooled.mmol[s];
    }
    layer.populations = pooled.populations;
    for (auto& [kind, population] : layer.populations.present()) {
      for (double& grams : population.grams) {
        grams *= share;
      }
      population.clot_g *= share;
    }
  }
}

} // namespace matula::column
