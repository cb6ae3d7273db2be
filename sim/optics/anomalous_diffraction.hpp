#pragma once

#include <complex>

namespace matula::optics {

/// Extinction efficiency of a large soft sphere, van de Hulst 1957 ch. 11 (non-absorbing): rho = 2 x |m - 1|.
[[nodiscard]] double anomalous_extinction(double rho);

/// Absorption efficiency of a large sphere of size parameter x and index m = n + ik, van de Hulst 1957
/// ch. 11.
[[nodiscard]] double anomalous_absorption(double x, std::complex<double> m);

} // namespace matula::optics
