#pragma once

namespace matula::generator {

/// A number spread evenly on both sides of its middle.
struct Measured {
  double typical = 0;
  double spread = 0; ///< Deviation.
  double low = 0;    ///< Never beyond these.
  double high = 0;
};

} // namespace matula::generator
