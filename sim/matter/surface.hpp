#pragma once

#include "sim/matter/mixture.hpp"

namespace matula::matter {

/// Surface tension of the mixture against air at its temperature, mN/m: water's less the surface pressure of
/// every substance that gathers there (Szyszkowski, Z. phys. Chem. 64 (1908) 385: R T excess ln(1 + c/half)).
/// Pressures add up; together they go no further than to 45 mN/m, where films of protein and bile salts rest,
/// or than the strongest goes alone. Salts raise it by a fiftieth at most and are left out.
[[nodiscard]] double surface_tension_mn_m(const Mixture& mixture, const Catalogue& catalogue);

} // namespace matula::matter
