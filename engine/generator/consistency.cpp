#include "engine/generator/consistency.hpp"

#include "sim/matter/density.hpp"
#include "sim/matter/osmolality.hpp"
#include "sim/matter/ph.hpp"
#include "sim/specimen/specimen.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::generator {

namespace {

constexpr double ml_per_l = 1000;
constexpr double gravity_c = 20;
constexpr double ph_slip = 0.02; ///< Left by the titration's last round.
constexpr double least_excess = 5e-4;
constexpr double least_added_sodium = 0.5;

double listed(const specimen::Specimen& specimen, const std::string& key,
              const matter::Catalogue& catalogue) {
  constexpr double mmol_l_per_mg_dl_and_mol_g = 10;
  for (const auto& [name, mmol_per_l] : specimen.mmol_per_l) {
    if (name == key) {
      return mmol_per_l;
    }
  }
  for (const auto& [name, mg_per_dl] : specimen.mg_per_dl) {
    const auto id = catalogue.find_species(key);
    if (name == key && id) {
      return mg_per_dl * mmol_l_per_mg_dl_and_mol_g / catalogue.species[*id].molar_mass_g_per_mol;
    }
  }
  return 0;
}

std::string outside(const char* what, double value, const strict::Range& range) {
  return value >= range.low && value <= range.high
             ? ""
             : fmt::format("{} {:.5g}, but it should be from {:g} to {:g}", what, value, range.low,
                           range.high);
}

} // namespace

Derived derive(const specimen::Specimen& specimen, const matter::Catalogue& catalogue) {
  matter::Mixture liquid = specimen::make_liquid(specimen, catalogue);
  const double per_l = ml_per_l / liquid.volume_ml;
  Derived derived;
  derived.chloride_mmol_per_l = liquid.mmol[catalogue.find_species("chloride").value()] * per_l;
  derived.added_sodium_mmol_per_l =
      liquid.mmol[catalogue.find_species("sodium").value()] * per_l - listed(specimen, "sodium", catalogue);
  derived.ph = matter::ph(liquid, catalogue);
  liquid.temperature_c = gravity_c;
  derived.gravity = matter::density_kg_m3(liquid, catalogue) / matter::water_density_kg_m3(gravity_c);
  derived.osmolality = matter::osmolality_mosm_per_kg(liquid, catalogue);
  derived.osmolality_per_gravity = derived.osmolality / std::max(derived.gravity - 1, least_excess);
  return derived;
}

double chloride_by_balance(const specimen::Specimen& specimen, const matter::Catalogue& catalogue) {
  const auto of = [&](const char* key) { return listed(specimen, key, catalogue); };
  const double f = 1 / (1 + std::pow(10.0, 6.8 - specimen.target_ph));
  const double cations =
      of("sodium") + of("potassium") + of("ammonium") + 2 * (of("calcium") + of("magnesium"));
  const double organic = of("other_organics") + 2 * of("citrate") + of("urate") / 2 + of("homogentisate");
  const double keto = of("acetoacetate") + of("beta_hydroxybutyrate") + of("branched_keto_acids");
  return cations - of("bicarbonate") - 2 * of("sulphate") - of("phosphate") * (1 + f) - organic - keto;
}

std::string inconsistent(const Derived& derived, const specimen::Specimen& specimen, const Bounds& bounds) {
  if (derived.added_sodium_mmol_per_l > least_added_sodium) {
    return fmt::format("the charges balance only with {:.3g} mmol/L of sodium more than listed",
                       derived.added_sodium_mmol_per_l);
  }
  if (!(std::abs(derived.ph - specimen.target_ph) < ph_slip)) {
    return fmt::format("the pH comes to rest at {:.3f} instead of {:.3f}", derived.ph, specimen.target_ph);
  }
  std::string why = outside("chloride in mmol/L is", derived.chloride_mmol_per_l, bounds.chloride_mmol_per_l);
  why = why.empty() ? outside("the specific gravity is", derived.gravity, bounds.gravity) : why;
  return why.empty() ? outside("mOsm/kg for each 1.000 of gravity above water is",
                               derived.osmolality_per_gravity, bounds.osmolality_per_gravity)
                     : why;
}

} // namespace matula::generator
