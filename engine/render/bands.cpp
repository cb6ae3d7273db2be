#include "engine/render/bands.hpp"

#include <algorithm>

namespace matula::render {

std::vector<Band> bands(const appearance::Appearance& looks, double from_mm, double to_mm) {
  const bool wet = looks.level_mm > 0.01 && !looks.rows.empty();
  const bool clot = looks.clot_fraction > 0.01 && looks.clot_to_mm > looks.clot_from_mm;
  const bool hot = looks.boiling > 0.01 || looks.steam > 0.01 || looks.foam_mm > 0.1;
  // Margins hold the ragged edges the noise adds.
  const double reach = 1.5 + looks.meniscus_rise_mm + 1.2 * looks.boiling + 0.06 * looks.inner_diameter_mm;
  const double surface_from = looks.level_mm - reach;
  const double surface_to = looks.level_mm + reach;
  const double bed_to = looks.sediment.height_mm > 0.02
                            ? looks.sediment.height_mm + 1.0 + 1.2 * looks.sediment.roughness_mm
                            : from_mm;
  const double clot_from = looks.clot_from_mm - 3;
  const double clot_to = looks.clot_to_mm + 3;
  std::vector<double> cuts{from_mm, to_mm};
  if (wet) {
    cuts.insert(cuts.end(), {surface_from, surface_to, bed_to});
    if (clot) {
      cuts.insert(cuts.end(), {clot_from, clot_to});
    }
  }
  std::sort(cuts.begin(), cuts.end());
  std::vector<Band> out;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    Band band;
    band.from_mm = std::clamp(cuts[i], from_mm, to_mm);
    band.to_mm = std::clamp(cuts[i + 1], from_mm, to_mm);
    if (band.to_mm - band.from_mm < 1e-6) {
      continue;
    }
    const double middle = (band.from_mm + band.to_mm) / 2;
    if (wet && middle < surface_to) {
      band.part = middle < surface_from ? Band::Part::Under : Band::Part::Surface;
      band.clot = clot && middle > clot_from && middle < clot_to;
      band.bed = middle < bed_to;
    }
    band.hot = hot && band.part != Band::Part::Under;
    out.push_back(band);
  }
  return out;
}

} // namespace matula::render
