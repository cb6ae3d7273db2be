#pragma once

#include "sim/optics/spectrum.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::matter {

/// Index of a species in the catalogue.
using SpeciesId = std::size_t;

/// How a dissolved substance gathers at the surface (Szyszkowski): pressure R T excess ln(1 + c/half).
struct SurfaceActivity {
  double excess_umol_per_m2 = 0;   ///< Of the full surface; 0 for what does not gather there.
  double half_mol_per_l = 1;       ///< Concentration scale.
  double saturation_mol_per_l = 0; ///< More changes nothing: micelles, or the limit of solubility; 0: none.
};

/// A dissolved substance. Acids and bases are counted as the total over their protonation states.
struct Species {
  std::string key;                 ///< "urea"
  std::string label;               ///< What a person calls it.
  double molar_mass_g_per_mol = 0; ///< With every listed group protonated.
  double protonated_charge = 0;    ///< Charge with every listed group protonated.
  std::vector<double> pka;         ///< Ascending, 25 °C.
  double buffer_groups = 1;        ///< Copies of the pka list one molecule carries (proteins carry many).
  double apparent_volume_ml_per_mol = 0; ///< In dilute salt at 20 °C, protonated charge state of urine pH.
  /// How far the constants of a polyelectrolyte's groups fall with each tenfold ionic strength above 0.1
  /// mol/L: the more ions, the better its charges are screened and the easier the next proton leaves.
  double pka_fall_per_decade = 0;
  optics::Spectrum absorptivity_l_per_mol_cm{}; ///< Decadic molar absorptivity; of an indicator's acid form.
  bool indicator = false;                       ///< Whether the form without its protons has its own colour.
  std::optional<double> indicator_pka; ///< Of the coloured group alone, where pka lists other groups.
  optics::Spectrum base_absorptivity_l_per_mol_cm{}; ///< Of an indicator's form that has lost every proton.
  std::string odour;                                 ///< Word for the smell; empty when odourless.
  double odour_threshold_mmol_per_l = 0;             ///< Below this the nose finds nothing.
  /// Of a base that has lost its first proton; 0 where the form hardly matters.
  double free_base_volume_ml_per_mol = 0;
  std::string odour_form = "total"; ///< Which form is volatile: "total", "acid" (fully protonated) or "base".
  /// Molar refraction at 589 nm, mL/mol; nothing when nobody has given one (a general organic substance
  /// then).
  std::optional<double> refraction_ml_per_mol;
  SurfaceActivity surface;
  /// Concentration in the heavy liquid over that of the uncharged form in water, at rest; 0 stays in water.
  double partition = 0;
  std::string source; ///< Key of the model book.
};

} // namespace matula::matter
