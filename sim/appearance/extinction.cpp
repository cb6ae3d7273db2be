#include "sim/appearance/extinction.hpp"

#include "sim/appearance/dissolved.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::appearance {

namespace {

/// Between two bands of a spectrum.
struct Place {
  std::size_t band = 0;
  double share = 0;

  [[nodiscard]] double of(const optics::Spectrum& spectrum) const {
    return spectrum[band] + share * (spectrum[band + 1] - spectrum[band]);
  }
};

Place place_of(double wavelength_nm) {
  const double step_nm = optics::wavelength_nm(1) - optics::wavelength_nm(0);
  const double last = static_cast<double>(optics::band_count - 1);
  const double at = std::clamp((wavelength_nm - optics::wavelength_nm(0)) / step_nm, 0.0, last);
  const double band = std::min(std::floor(at), last - 1);
  return {static_cast<std::size_t>(band), at - band};
}

double of_bin(const ScatterTable& table, std::size_t bin, const Place& at, double acceptance_deg) {
  const double lost = 1 - forward_share(at.of(table.asymmetry[bin]), acceptance_deg);
  return at.of(table.absorb_per_mm[bin]) + at.of(table.scatter_per_mm[bin]) * lost;
}

} // namespace

double forward_share(double g, double angle_deg) {
  const double cosine = std::cos(angle_deg * std::numbers::pi / 180);
  constexpr double even = 1e-4; // below it the formula loses its figures
  if (std::abs(g) < even) {
    return (1 - cosine) / 2;
  }
  return (1 - g * g) / (2 * g) * (1 / (1 - g) - 1 / std::sqrt(1 + g * g - 2 * g * cosine));
}

double extinction_per_mm(const matter::Mixture& liquid, const matter::Catalogue& catalogue,
                         const std::vector<ScatterTable>& tables, double wavelength_nm,
                         double acceptance_deg) {
  if (liquid.empty()) {
    return 0;
  }
  const Place at = place_of(wavelength_nm);
  double sum = at.of(dissolved_absorption(liquid, catalogue));
  for (const auto& [id, population] : liquid.populations.present()) {
    for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
      if (population.grams[bin] > 0) {
        sum += population.grams[bin] / liquid.volume_ml * of_bin(tables[id], bin, at, acceptance_deg);
      }
    }
    sum +=
        population.clot_g / liquid.volume_ml * of_bin(tables[id], tables[id].network_bin, at, acceptance_deg);
  }
  return sum;
}

} // namespace matula::appearance
