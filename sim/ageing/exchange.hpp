#pragma once

#include "sim/ageing/laws.hpp"

namespace matula::ageing {

/// Concentration in air over concentration in water at rest, K_aw = 1/(H R T), 0..100 °C.
[[nodiscard]] double air_water_ratio(const Volatile& row, double temperature_c);

/// Speed of exchange through both films, m/s: 1/(1/k_w + 1/(K_aw k_g)), Lewis and Whitman, Ind. Eng. Chem. 16
/// (1924) 1215. Without a film on top.
[[nodiscard]] double exchange_m_s(const Volatile& row, const Air& air, double temperature_c);

/// Share of the exchange that a floating film of the mixture's own leaves, 1 without one, for liquid of
/// `depth_mm`.
[[nodiscard]] double past_films(const std::vector<Film>& films, const matter::Mixture& mixture,
                                double depth_mm);

/// Share of a species that is in its volatile form.
[[nodiscard]] double volatile_share(const Volatile& row, double ph);

} // namespace matula::ageing
