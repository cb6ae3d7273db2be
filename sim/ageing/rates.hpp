#pragma once

#include "sim/ageing/laws.hpp"

namespace matula::ageing {

/// Growth rate, 1/h, at the best pH: Ratkowsky's square root law, sqrt(mu) = b (T - T_min), J. Bacteriol. 149
/// (1982) 1; falling to nothing from 40 °C to the top temperature. 0 below T_min.
[[nodiscard]] double growth_per_h(const Organism& organism, double temperature_c);

/// Share left by a pH off the best: max(0, 1 - ((pH - centre)/width)^2).
[[nodiscard]] double ph_window(double ph, double centre, double width);

/// Speed of an act at a temperature relative to 37 °C. `growth_share` is that of the organism's growth.
[[nodiscard]] double act_share(const Act& act, double temperature_c, double growth_share);

/// First-order loss of a kind of cell or cast, 1/h, by pH, specific gravity (20/20) and temperature.
[[nodiscard]] double lysis_per_h(const Cell& cell, double ph, double specific_gravity, double temperature_c);

/// Whether a row holds back `what` ("growth", "lysis", an act) of the organism or cell `key`.
[[nodiscard]] bool holds_back(const Inhibitor& row, const std::string& what, const std::string& key);

/// What the row leaves, 0..1, of what it holds back.
[[nodiscard]] double share_left(const Inhibitor& row, const matter::Mixture& mixture);

} // namespace matula::ageing
