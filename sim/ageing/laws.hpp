#pragma once

#include "sim/reaction/reaction.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::ageing {

/// What living matter does to one dissolved substance: rate = n/at_per_ml * strength * c/(half + c), or
/// strength * c where half is 0; times the temperature law, the pH window and what holds it back.
struct Act {
  std::string what; ///< Name the inhibitors use: "glucose", "urease", "nitrate" ...
  matter::SpeciesId substrate = 0;
  double at_per_ml = 1e8;     ///< Number of organisms or cells for which `strength` holds.
  double strength = 0;        ///< mmol/L/h at 37 °C; 1/h where half is 0.
  double half_mmol_per_l = 0; ///< Of half the speed; 0 for first order.
  /// Arrhenius from 37 °C; without it the act goes with the growth law of the organism.
  std::optional<double> activation_kj_per_mol;
  double ph_centre = 7;
  double ph_width = 2.5;
  reaction::Stoichiometry changes; ///< Mol per mol of substrate.
  double water = 0;                ///< Mol taken up.
  double oxygen = 0;               ///< Mol of O2 taken up; negative where its oxygen goes into the food.
};

/// A kind of organism. It lives as a particle kind: the smallest size class holds those that rest, the next
/// (twice as heavy) those that grow, so that waking is growth without division.
struct Organism {
  std::string key;
  std::string label;
  matter::ParticleId kind = 0;
  double mu37_per_h = 1; ///< Growth rate at 37 °C, the best pH and plenty of room.
  double t_min_c = 4;    ///< Ratkowsky's least temperature.
  double t_top_c = 46;   ///< Growth falls to nothing from 40 °C to here.
  double ph_centre = 7;
  double ph_width = 2.5;
  double lag_growths = 0.9; ///< Lag of a resting inoculum, as lag times growth rate.
  double n_max_per_ml = 1e8;
  matter::SpeciesId food = 0;
  double food_half_mmol_per_l = 0.05;
  double food_share = 0.3; ///< Dry mass, grams of food built into a gram of organism; the rest is water.
  std::optional<matter::SpeciesId> sugar;
  double sugar_gain = 0; ///< Growth is faster by so much where sugar is plenty.
  double sugar_half_mmol_per_l = 0.5;
  std::vector<Act> acts;
};

/// Cells and casts that fall apart: k = k_per_h 10^(decades_per_ph (pH - ph_reference)) 10^(decades_per_0_010
/// (sg_reference - SG)/0.010) 2^((T - t_reference)/doubling_k) + acid_per_h/(1 + 10^(2 (pH - acid_ph))).
struct Cell {
  std::string key;
  std::string label;
  matter::ParticleId kind = 0;
  double k_per_h = 0;
  double ph_reference = 6;
  double decades_per_ph = 0;
  double sg_reference = 1.015;
  double decades_per_0_010 = 0; ///< Faster in thin urine.
  bool only_below = false;      ///< Whether a denser urine than the reference has no effect.
  double t_reference_c = 20;
  double doubling_k = 10;
  double acid_per_h = 0;
  double acid_ph = 3;
  std::vector<std::pair<matter::SpeciesId, double>> releases; ///< Grams from a gram; the rest is water.
  std::vector<Act> acts;
};

/// A substance that holds back what living matter does: factor 1/(1 + (c/half)^power).
struct Inhibitor {
  matter::SpeciesId species = 0;
  std::string slows; ///< "growth", "lysis" or the `what` of an act.
  double half_mmol_per_l = 1;
  double power = 1;
  std::optional<double> at_most_mmol_per_l; ///< No more than this dissolves.
  std::vector<std::string> spares;          ///< Keys of organisms it does not touch.
};

/// A dissolved gas or vapour that goes to and fro between liquid and air.
struct Volatile {
  matter::SpeciesId species = 0;
  double henry_mol_m3_pa = 1;     ///< Solubility at 25 °C.
  double henry_k = 0;             ///< It grows as exp(henry_k (1/T - 1/298.15)).
  std::optional<double> acid_pka; ///< Only the acid of this constant is volatile.
  std::optional<double> base_pka; ///< Only the base is.
  bool on_the_bench = false;      ///< Worked out for every vessel on the bench, for it matters within hours.
  double in_air_pa = 0;           ///< Partial pressure in the room.
};

/// Air over the liquid.
struct Air {
  double gas_mm_s = 1.8;           ///< Mass transfer in still room air.
  double water_um_s = 6;           ///< And under the surface of still liquid.
  double closed_share = 0.2;       ///< What a closed lid leaves of reactions that take oxygen.
  double headspace_per_liquid = 1; ///< Volume of air under a lid.
};

/// A liquid that floats on the specimen and shuts the air out: 1/(1 + thickness/half_mm).
struct Film {
  matter::SpeciesId species = 0;
  double dissolves_mmol_per_l = 0; ///< What is beyond floats.
  double ml_per_mol = 100;
  double half_mm = 0.01;
};

/// What happens to a standing specimen besides its chemistry; immutable once loaded from the assets.
struct Laws {
  std::vector<Organism> organisms;
  std::vector<Cell> cells;
  std::vector<Inhibitor> inhibitors;
  std::vector<Volatile> volatiles;
  std::vector<Film> films;
  Air air;
};

} // namespace matula::ageing
