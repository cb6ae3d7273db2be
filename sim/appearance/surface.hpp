#pragma once

namespace matula::appearance {

/// Rise of the liquid at the wall of an upright glass tube above the lowest point of its surface, mm: the
/// wide-plate and the narrow-tube limits joined. `inner_radius_mm` > 0.
[[nodiscard]] double meniscus_rise_mm(double inner_radius_mm, double temperature_c);

/// Visible steam over a surface, 0..1: water vapour in excess of what room air takes up, as a share of the
/// atmosphere.
[[nodiscard]] double steam_over(double temperature_c);

} // namespace matula::appearance
