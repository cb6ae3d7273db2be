#pragma once

#include "sim/optics/spectrum.hpp"

#include <string>
#include <vector>

namespace matula::matter {

/// Index of a species in the catalogue.
using SpeciesId = std::size_t;

/// A dissolved substance. Acids and bases are counted as the total over their protonation states.
struct Species {
  std::string key;                 ///< "urea"
  std::string label;               ///< What a person calls it.
  double molar_mass_g_per_mol = 0; ///< With every listed group protonated.
  double protonated_charge = 0;    ///< Charge with every listed group protonated.
  std::vector<double> pka;         ///< Ascending, 25 °C.
  double buffer_groups = 1;        ///< Copies of the pka list one molecule carries (proteins carry many).
  double apparent_volume_ml_per_mol = 0; ///< In dilute salt at 20 °C, protonated charge state of urine pH.
  optics::Spectrum absorptivity_l_per_mol_cm{}; ///< Decadic molar absorptivity.
  std::string odour;                            ///< Word for the smell; empty when odourless.
  double odour_threshold_mmol_per_l = 0;        ///< Below this the nose finds nothing.
  std::string odour_form = "total"; ///< Which form is volatile: "total", "acid" (fully protonated) or "base".
  std::string source;               ///< Key of the model book.
};

} // namespace matula::matter
