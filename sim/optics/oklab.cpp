#include "sim/optics/oklab.hpp"

#include <cmath>

namespace matula::optics {

// Both matrices: Ottosson 2020.
Oklab to_oklab(const LinearRgb& c) {
  const double l = std::cbrt(0.4122214708 * c.r + 0.5363325363 * c.g + 0.0514459929 * c.b);
  const double m = std::cbrt(0.2119034982 * c.r + 0.6806995451 * c.g + 0.1073969566 * c.b);
  const double s = std::cbrt(0.0883024619 * c.r + 0.2817188376 * c.g + 0.6299787005 * c.b);
  return {0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
          1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
          0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s};
}

LinearRgb from_oklab(const Oklab& c) {
  const double l = c.l + 0.3963377774 * c.a + 0.2158037573 * c.b;
  const double m = c.l - 0.1055613458 * c.a - 0.0638541728 * c.b;
  const double s = c.l - 0.0894841775 * c.a - 1.2914855480 * c.b;
  const double l3 = l * l * l;
  const double m3 = m * m * m;
  const double s3 = s * s * s;
  return {4.0767416621 * l3 - 3.3077115913 * m3 + 0.2309699292 * s3,
          -1.2684380046 * l3 + 2.6097574011 * m3 - 0.3413193965 * s3,
          -0.0041960863 * l3 - 0.7034186147 * m3 + 1.7076147010 * s3};
}

} // namespace matula::optics
