#include "sim/optics/light_step.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace matula::optics;

namespace {

struct SlabLight {
  double reflected = 0;
  double transmitted = 0;
};

/// Collimated light falling straight on a slab of optical thickness `thickness`, by the steps the tube's
/// light is made of.
SlabLight slab(double albedo, double thickness, double g, double index, int photons, std::uint64_t seed) {
  SlabLight light;
  Stream random(seed);
  double cos_in = 0;
  const double entering = 1 - fresnel_reflectance(1 / index, 1, cos_in);
  light.reflected = (1 - entering) * photons;
  for (int i = 0; i < photons; ++i) {
    Direction d{0, 0, 1};
    double z = 0;
    double weight = entering;
    while (weight > 1e-5) {
      z += -std::log(1 - random.next()) * d.z;
      while (z < 0 || z > thickness) {
        double cos_out = 0;
        const double back = fresnel_reflectance(index, std::fabs(d.z), cos_out);
        (z < 0 ? light.reflected : light.transmitted) += weight * (1 - back);
        weight *= back;
        z = z < 0 ? -z : 2 * thickness - z;
        d.z = -d.z;
        if (weight <= 1e-5) {
          break;
        }
      }
      weight *= albedo;
      turn(d, g, random);
    }
  }
  light.reflected /= photons;
  light.transmitted /= photons;
  return light;
}

constexpr int photons = 200000;
constexpr double five_sigma = 5 * 0.5 / 447.2; // Worst case of a share, sqrt(1/4 / photons).

} // namespace

TEST_CASE("Slab: van de Hulst 1980, Multiple Light Scattering, table 35") {
  const SlabLight light = slab(0.9, 2, 0.75, 1, photons, 1);
  CHECK(light.reflected == Approx(0.09739).margin(0.6 * five_sigma));
  CHECK(light.transmitted == Approx(0.66096).margin(0.6 * five_sigma));
}

TEST_CASE("Half space with a mirroring surface: Giovanelli 1955") {
  // From memory: n 1.5, albedo 0.9, isotropic, reflectance 0.2600 including the surface's own 4 %.
  const SlabLight light = slab(0.9, 1e6, 0, 1.5, photons / 4, 2);
  CHECK(light.reflected == Approx(0.2600).margin(0.005));
}

TEST_CASE("Fresnel: textbook values") {
  double cos_out = 0;
  CHECK(fresnel_reflectance(1 / 1.5, 1, cos_out) == Approx(0.04)); // ((n - 1) / (n + 1))^2
  // Brewster's angle: only the s part is left, ((n^2 - 1) / (n^2 + 1))^2 / 2.
  const double brewster = std::atan(1.5);
  CHECK(fresnel_reflectance(1 / 1.5, std::cos(brewster), cos_out) == Approx(0.5 * std::pow(1.25 / 3.25, 2)));
  CHECK(fresnel_reflectance(1.5, std::cos(0.9), cos_out) == 1); // beyond the critical angle, 41.8 degrees
}

TEST_CASE("Henyey and Greenstein: the mean cosine is g") {
  for (const double g : {-0.5, 0.0, 0.8, 0.97}) {
    Stream random(3);
    double sum = 0;
    for (int i = 0; i < 40000; ++i) {
      Direction d{0.6, 0, 0.8};
      turn(d, g, random);
      sum += 0.6 * d.x + 0.8 * d.z;
      REQUIRE(d.x * d.x + d.y * d.y + d.z * d.z == Approx(1).margin(1e-12));
    }
    CHECK(sum / 40000 == Approx(g).margin(5 * 0.58 / 200)); // five standard errors at g = 0
  }
}
