#pragma once

#include "sim/optics/spectrum.hpp"

#include <array>
#include <cmath>
#include <string>

namespace matula::matter {

/// Size classes of every population; each class holds particles twice as heavy as the class before.
inline constexpr std::size_t size_bins = 36;

using ParticleId = std::size_t;

/// ParticleKind::guard_species of a kind that nothing guards.
inline constexpr std::size_t no_guard = static_cast<std::size_t>(-1);

/// A solid that can hang in a liquid: what one particle is made of and how clusters of it grow and scatter.
struct ParticleKind {
  std::string key; ///< "albumin_coagulum", "cuprous_oxide", "calcium_phosphate", "cells"
  std::string label;
  double primary_radius_m = 1e-7; ///< Radius of the smallest class, solid.
  double solid_density_kg_m3 = 1300;
  double fractal_dimension = 2.3;   ///< Of clusters up to core_radius_m; 3 means compact.
  double core_radius_m = 1e-5;      ///< Above this, clusters of clusters with constant density.
  double brownian_efficiency = 1;   ///< Fraction of Brownian encounters that stick, at the best pH.
  double shear_efficiency = 1;      ///< Scale of the shear sticking law.
  double settling_efficiency = 0.1; ///< Fraction of overtakings in free fall that stick.
  double contact_size_m =
      1; ///< Radius above which contacts at a shear of 1 /s slide off; falls as 1/sqrt(G).
  double breakage_size_m = 1e-3;  ///< Largest cluster that survives a shear of 1 /s; falls as 1/sqrt(G).
  double gel_volume_fraction = 1; ///< Volume fraction at which clusters lock into one clot; 1 means never.
  double sticking_ph_centre = 0;  ///< Efficiency falls as 10^-((pH-centre)/width)^2; width 0 means no pH law.
  double sticking_ph_width = 0;
  double sticking_activation_kj_per_mol =
      0; ///< Sticking falls below 100 °C with this barrier; 0 means it does not.
  /// Dissolved species that covers the grains and keeps them from growing into each other; no_guard: none.
  std::size_t guard_species = no_guard;
  double guard_half_mol_per_l = 0.01; ///< Sticking falls as (1 + c/half)^-power.
  double guard_power = 1;
  double bed_packing = 0.5;      ///< Most solid a bed of it holds at 20 °C, share of the bed's volume.
  double bed_swelling_per_k = 0; ///< Growth of that bed's volume with warmth, relative.
  /// Radius of the loose flocs its grains gather to at rest, at a solid volume fraction of 1e-4; it goes with
  /// the square root of that fraction. They fall together and part when shaken. 0: grains fall singly.
  double loose_floc_radius_m = 0;
  optics::Spectrum refractive_index{}; ///< Real part of the primary solid (or the hydrated cluster material).
  optics::Spectrum extinction_index{}; ///< Imaginary part.
  /// Indices of grains of fine_below_m and less, for solids whose colour depends on the size of the grains;
  /// from coarse_above_m on the two above hold, in between bulk_share blends. fine_below_m 0: none.
  optics::Spectrum fine_refractive_index{};
  optics::Spectrum fine_extinction_index{};
  double fine_below_m = 0;   ///< Radius.
  double coarse_above_m = 0; ///< Radius.
  double size_spread = 1.5;  ///< Lognormal sigma used when tabulating Mie coefficients.
  std::string source;

  [[nodiscard]] double bin_mass_g(std::size_t bin) const;   ///< Mass of one particle of the class.
  [[nodiscard]] double bin_radius_m(std::size_t bin) const; ///< Outer radius of one cluster of the class.
  /// How far the colour of a grain is that of the bulk, 0..1, smooth in the logarithm of its radius.
  [[nodiscard]] double bulk_share(double radius_m) const;
};

/// Particles of one kind in one layer, as mass: nothing is lost by moving mass between classes.
struct Population {
  std::array<double, size_bins> grams{};
  double clot_g =
      0; ///< Mass locked into one continuous network; it neither diffuses nor settles grain by grain.

  [[nodiscard]] double suspended_g() const;
  [[nodiscard]] double total_g() const { return suspended_g() + clot_g; }
  /// Most kinds are absent from most liquids: every law asks this first.
  [[nodiscard]] bool empty() const { return !(grams[size_bins / 2] > 0 || clot_g > 0) && all_zero(); }

private:
  [[nodiscard]] bool all_zero() const;
};

} // namespace matula::matter
