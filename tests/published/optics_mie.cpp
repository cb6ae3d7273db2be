#include "sim/optics/anomalous_diffraction.hpp"
#include "sim/optics/mie.hpp"

#include <catch2/catch.hpp>

using namespace matula::optics;

TEST_CASE("Mie: Bohren and Huffman 1983, appendix A") {
  // Printed for x = 2 pi 0.525 / 0.6328 = 5.21282...; their single precision leaves 5e-5.
  const MieEfficiency q = mie(5.2128, {1.55, 0});
  CHECK(q.extinction == Approx(3.10543).epsilon(5e-5));
  CHECK(q.scattering == Approx(3.10543).epsilon(5e-5));
  CHECK(q.backscatter == Approx(2.92534).epsilon(1e-4));
  CHECK(q.asymmetry == Approx(0.63314).epsilon(5e-5));
}

TEST_CASE("Mie: the same sphere, absorbing") {
  // Published for Bohren and Huffman's example with k = 0.1; x printed to four places moves the last digits.
  const MieEfficiency q = mie(5.2128, {1.55, 0.1});
  CHECK(q.extinction == Approx(2.861652).epsilon(2e-5));
  CHECK(q.scattering == Approx(1.664249).epsilon(2e-5));
  CHECK(q.asymmetry == Approx(0.801290).epsilon(2e-5));
}

TEST_CASE("Mie: Wiscombe 1979, NCAR/TN-140+STR") {
  const MieEfficiency small = mie(1, {1.5, 1});
  CHECK(small.extinction == Approx(2.336321).margin(1e-6));
  CHECK(small.scattering == Approx(0.663454).margin(1e-6));
  CHECK(small.asymmetry == Approx(0.192136).margin(1e-6));
  const MieEfficiency large = mie(100, {1.5, 1});
  CHECK(large.extinction == Approx(2.097502).margin(1e-6));
  CHECK(large.scattering == Approx(1.283697).margin(1e-6));
  CHECK(large.asymmetry == Approx(0.850252).margin(1e-6));
  // Narrow resonances make the weakly absorbing case sensitive to the last digits of x: 2e-5.
  const MieEfficiency drop = mie(100, {1.33, 1e-5});
  CHECK(drop.scattering == Approx(2.096594).margin(2e-5));
  CHECK(drop.asymmetry == Approx(0.868959).margin(2e-5));
  const MieEfficiency bubble = mie(1000, {0.75, 0});
  CHECK(bubble.scattering == Approx(1.997908).margin(1e-6));
  CHECK(bubble.asymmetry == Approx(0.844944).margin(1e-6));
}

TEST_CASE("Mie: van de Hulst 1957, m = 1.33, x = 3") {
  CHECK(mie(3, {1.33, 0}).extinction == Approx(1.7534).margin(5e-5));
}

TEST_CASE("Anomalous diffraction: van de Hulst 1957, ch. 11") {
  CHECK(anomalous_extinction(4.086) == Approx(3.173).margin(5e-4)); // first maximum
  CHECK(anomalous_extinction(1e-3) == Approx(0.5e-6).epsilon(1e-3));
  CHECK(anomalous_extinction(4.08) < anomalous_extinction(4.086));
  CHECK(anomalous_extinction(4.10) < anomalous_extinction(4.086));
  CHECK(anomalous_absorption(1e6, {1.5, 0.1}) == Approx(1).margin(1e-3)); // a large black body
}
