#include "sim/appearance/clot.hpp"

namespace matula::appearance {

namespace {

/// A network thinner than this holds no shape; fitted here.
constexpr double thinnest_clot_g_per_ml = 2e-4;

double solids_per_ml(const matter::Mixture& layer) {
  double all = 0;
  for (const auto& [kind, population] : layer.populations.present()) {
    all += population.total_g();
  }
  return all / layer.volume_ml;
}

bool clotted(const matter::Mixture& layer) {
  double clot = 0;
  for (const auto& [kind, population] : layer.populations.present()) {
    clot += population.clot_g;
  }
  const double per_ml = clot / layer.volume_ml;
  return per_ml > solids_per_ml(layer) / 2 && per_ml > thinnest_clot_g_per_ml;
}

} // namespace

ClotLook find_clot(const std::vector<LayerPlace>& layers, double level_mm, double inner_diameter_mm,
                   const Seeing& seeing) {
  ClotLook best;
  ClotLook run;
  const matter::Mixture* fullest = nullptr; // Of the run: a curd shrinks from its ends.
  const matter::Mixture* shown = nullptr;
  for (const LayerPlace& place : layers) {
    if (!clotted(*place.layer)) {
      run = {};
      fullest = nullptr;
      continue;
    }
    if (fullest == nullptr) {
      run.from_mm = place.from_mm;
      fullest = place.layer;
    } else if (solids_per_ml(*place.layer) > solids_per_ml(*fullest)) {
      fullest = place.layer;
    }
    run.to_mm = place.to_mm;
    if (run.to_mm - run.from_mm > best.to_mm - best.from_mm) {
      best = run;
      shown = fullest;
    }
  }
  if (shown != nullptr) {
    best.fraction = (best.to_mm - best.from_mm) / level_mm;
    best.colour = packed_colour(*shown, inner_diameter_mm, seeing).on(seeing.view.card);
  }
  return best;
}

} // namespace matula::appearance
