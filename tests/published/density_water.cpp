#include "sim/matter/density.hpp"

#include <catch2/catch.hpp>

using namespace matula;

namespace {

/// M. Tanaka et al., Metrologia 38 (2001) 301: the CIPM formula for air-free water, kg/m3, 0..40 °C.
/// Independent of Kell.
double tanaka_kg_m3(double t) {
  const double a = t - 3.983035;
  return 999.974950 * (1 - a * a * (t + 301.797) / (522528.9 * (t + 69.34881)));
}

} // namespace

TEST_CASE("Water's density follows the printed table of Kell 1975") {
  struct Point {
    double t;
    double kg_m3;
  };
  // Four decimals of the table; the tolerance is its last digit.
  const Point table[] = {{0, 999.8395},  {4, 999.9720},  {10, 999.6996}, {15, 999.0996}, {20, 998.2041},
                         {25, 997.0449}, {30, 995.6473}, {35, 994.0319}, {37, 993.3287}, {40, 992.2158}};
  for (const Point& point : table) {
    CAPTURE(point.t);
    CHECK(matter::water_density_kg_m3(point.t) == Approx(point.kg_m3).margin(1e-4));
  }
}

TEST_CASE("Water's density agrees with the CIPM formula") {
  // The two scales of temperature and of density differ by up to 0.004 kg/m3.
  for (double t = 0; t <= 40; t += 1) {
    CAPTURE(t);
    CHECK(matter::water_density_kg_m3(t) == Approx(tanaka_kg_m3(t)).margin(0.005));
  }
}

TEST_CASE("Water's viscosity agrees with the accepted values") {
  // 1.0016 mPa.s at 20 °C: ISO/TR 3666. Others: IAPWS 2008 tables at 0.1 MPa. The formula claims 1 %.
  CHECK(matter::water_viscosity_mpa_s(0) == Approx(1.7916).epsilon(0.01));
  CHECK(matter::water_viscosity_mpa_s(20) == Approx(1.0016).epsilon(0.002));
  CHECK(matter::water_viscosity_mpa_s(40) == Approx(0.6527).epsilon(0.01));
  CHECK(matter::water_viscosity_mpa_s(99.6) == Approx(0.2831).epsilon(0.01));
}
