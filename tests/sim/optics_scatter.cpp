#include "sim/optics/fractal_cluster.hpp"
#include "sim/optics/mie.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

using namespace matula::optics;

namespace {

constexpr double green_in_water = 550e-9 / 1.34;
const std::complex<double> hydrated{1.047, 0};

Cluster grown(int bin, double dimension = 2.3) {
  const double n = std::ldexp(1.0, bin);
  return {1e-7, n, 1e-7 * std::pow(n, 1 / dimension), dimension};
}

} // namespace

TEST_CASE("Mie: small spheres obey Rayleigh, without absorption extinction is scattering") {
  const double x = 0.01;
  const std::complex<double> m{1.33, 0};
  const double lorentz = std::norm((m * m - 1.0) / (m * m + 2.0));
  CHECK(mie(x, m).scattering ==
        Approx(8.0 / 3.0 * std::pow(x, 4) * lorentz).epsilon(1e-3)); // next term is x^2
  for (const double size : {0.3, 4.0, 40.0}) {
    const MieEfficiency q = mie(size, m);
    CHECK(q.extinction == Approx(q.scattering).epsilon(1e-9));
    CHECK(q.asymmetry > -1);
    CHECK(q.asymmetry < 1);
  }
}

TEST_CASE("Spheres of one size are the single sphere; a spread keeps the volume and blurs the ripples") {
  const Spheres spheres(green_in_water, {1.2, 0.001});
  const double r = 1e-6;
  const double x = 2 * std::numbers::pi * r / green_in_water;
  const double volume = 4.0 / 3.0 * std::numbers::pi * r * r * r;
  const SphereScatter one = spheres.around(r, 1);
  CHECK(one.scatter_per_m * volume / (std::numbers::pi * r * r) == Approx(mie(x, {1.2, 0.001}).scattering));
  // Weak absorption sees the volume only.
  CHECK(spheres.around(r, 1.5).absorb_per_m == Approx(one.absorb_per_m).epsilon(0.1));
}

TEST_CASE("Spheres: no jump where the large sphere limit takes over") {
  const Spheres spheres(green_in_water, {1.1, 0.002});
  const double edge = 60 * green_in_water / (2 * std::numbers::pi);
  const SphereScatter below = spheres.around(0.999 * edge, 1);
  const SphereScatter above = spheres.around(1.001 * edge, 1);
  CHECK(above.scatter_per_m == Approx(below.scatter_per_m).epsilon(0.02)); // joined at the edge
  CHECK(above.absorb_per_m == Approx(below.absorb_per_m).epsilon(0.01));
}

TEST_CASE("A cluster of one is its sphere") {
  const Cluster one{1e-7, 1, 1e-7, 2.3};
  const MieEfficiency q = mie(2 * std::numbers::pi * 1e-7 / green_in_water, hydrated);
  const ClusterScatter c = cluster_scatter(one, green_in_water, hydrated);
  const double area = std::numbers::pi * 1e-14;
  CHECK(c.scatter_m2 / area == Approx(q.scattering).epsilon(0.01)); // the soft corner of the cap
  CHECK(c.asymmetry == Approx(q.asymmetry).margin(0.02));
}

TEST_CASE("Growing clusters scatter and turn aside more each, never more than the "
          "physical cap") {
  double last = 0;
  double last_turned = 0;
  for (int bin = 0; bin < 24; ++bin) {
    const Cluster cluster = grown(bin);
    const ClusterScatter c = cluster_scatter(cluster, green_in_water, hydrated);
    const double efficiency = c.scatter_m2 / (std::numbers::pi * cluster.radius_m * cluster.radius_m);
    CHECK(c.scatter_m2 > last);
    CHECK(c.asymmetry > 0.19); // stays forward: at most four fifths of it are turned aside
    const double turned = c.scatter_m2 * (1 - c.asymmetry);
    CHECK(turned > last_turned);
    CHECK(turned < c.scatter_m2);
    CHECK(efficiency < 3.2); // first maximum of anomalous diffraction
    last = c.scatter_m2;
    last_turned = turned;
  }
}

TEST_CASE("Small clusters scatter coherently: twice the mass, four times the light") {
  const double red_far = 30e-6; // wavelength far beyond the cluster
  const double one = cluster_scatter(grown(2), red_far, hydrated).scatter_m2;
  const double two = cluster_scatter(grown(3), red_far, hydrated).scatter_m2;
  CHECK(two / one == Approx(4).epsilon(0.02));
}

TEST_CASE("Weakly absorbing clusters absorb by mass, opaque ones by area") {
  const std::complex<double> faint{1.05, 1e-6};
  const double ratio = cluster_scatter(grown(9), green_in_water, faint).absorb_m2 /
                       cluster_scatter(grown(8), green_in_water, faint).absorb_m2;
  CHECK(ratio == Approx(2).epsilon(0.01));
  const Cluster big{1e-7, std::ldexp(1.0, 24), 2e-5, 3};
  CHECK(cluster_scatter(big, green_in_water, {1.5, 1}).absorb_m2 <= std::numbers::pi * 4e-10 * 1.0000001);
}
