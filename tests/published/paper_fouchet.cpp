// Bilirubin carried down by barium sulphate and turned green by Fouchet's reagent, done by the book.
#include "tests/published/paper_support.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::test;

namespace {

matter::Mixture bottle(const char* reagent, double volume_ml) {
  const matter::Catalogue& catalogue = paper_world().catalogue;
  matter::Mixture liquid = matter::empty_mixture(catalogue);
  liquid.volume_ml = volume_ml;
  liquid.temperature_c = 22;
  for (const auto& [id, mol_per_l] : catalogue.find_reagent(reagent)->mol_per_l) {
    liquid.mmol[id] += mol_per_l * volume_ml;
  }
  return liquid;
}

const paper::PadKind& filter_paper() {
  for (const auto& kind : paper_world().papers) {
    if (kind.key == "filter") {
      return kind.pads.front();
    }
  }
  throw std::runtime_error("no filter paper");
}

struct Spot {
  optics::Lab before; ///< The pressed residue.
  optics::Lab after;  ///< 30 s after two drops of the reagent.
};

/// 5 mL of urine, half as much barium chloride, five minutes, filtered and pressed, two drops.
Spot fouchet(const specimen::Specimen& urine) {
  const assets::World& world = paper_world();
  matter::Mixture tube = specimen::make_liquid(urine, world.catalogue);
  tube = matter::draw(tube, 5);
  matter::merge(tube, bottle("barium_chloride_10", 2.5));
  for (int second = 0; second < 300; ++second) {
    reaction::react(tube, world.chemistry, world.catalogue, 1, second < 10 ? 60 : 0.4);
  }
  paper::Pad pad = paper::pressed_pad(tube, filter_paper());
  const auto look = [&] {
    return lab_of(paper::reflectance(pad, filter_paper(), world.catalogue, world.optics.scatter));
  };
  Spot spot;
  spot.before = look();
  paper::drip(pad, filter_paper(), bottle("fouchet", 0.1));
  for (int second = 0; second < 30; ++second) {
    paper::live(pad, filter_paper(), world.chemistry, 22, 1);
  }
  spot.after = look();
  return spot;
}

/// How much greener than the spot of a urine without bilirubin.
double greener(double mg_per_dl) {
  static const Spot clean = fouchet(clean_urine());
  return clean.after.a - fouchet(with("bilirubin", mg_per_dl)).after.a;
}

} // namespace

TEST_CASE("Fouchet's reagent finds 0.05-0.1 mg/dL of bilirubin, which a strip does not") {
  // H. Varley, Practical Clinical Biochemistry, and lecture notes: 0.05-0.1 mg/dL, from memory.
  CHECK(greener(0.1) > 1.5); // An a* of one to two apart is just seen side by side.
  CHECK(greener(0.02) < 1.5);
  CHECK(strip("bilirubin", with("bilirubin", 0.1)).entry == 0);
}

TEST_CASE("The green deepens with the bilirubin") {
  // Pale 1+, definite 2+, dark 3+: common practice.
  double last = 0;
  for (const double mg_per_dl : {0.1, 0.3, 1.0, 3.0, 10.0}) {
    INFO(mg_per_dl << " mg/dL, greener by " << greener(mg_per_dl));
    CHECK(greener(mg_per_dl) > last);
    last = greener(mg_per_dl);
  }
  const Spot strong = fouchet(with("bilirubin", 5));
  CHECK(strong.after.a < -8);
  CHECK(strong.before.b > strong.after.b); // Yellow before, green after.
}

TEST_CASE("No sulphate, no carrier: the test misses what is there") {
  // A drop of ammonium sulphate is added when nothing falls out: lecture notes; common practice.
  auto poor = with("bilirubin", 0.3);
  for (auto& [key, mmol] : poor.mmol_per_l) {
    mmol = key == "sulphate" ? 0.0 : mmol;
  }
  const Spot missed = fouchet(poor);
  const Spot found = fouchet(with("bilirubin", 0.3));
  CHECK(found.after.a < missed.after.a - 2);
}

TEST_CASE("Bilirubin that light has turned is not found") {
  // Light-exposed or old specimens are falsely negative: common practice. Colourless products and biliverdin,
  // which the sulphate does not carry.
  const Spot spent = fouchet(with("biliverdin", 0.3));
  const Spot clean = fouchet(clean_urine());
  CHECK(std::abs(spent.after.a - clean.after.a) < 1.5);
}
