// Whole cells on the pads that break them, against what is printed of such pads. Printed figures from memory;
// S.K. Strasinger and M.S. Di Lorenzo, Urinalysis and Body Fluids (2014), is the book they are remembered
// from.
#include "tests/published/paper_support.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::test;

namespace {

constexpr double haemoglobin_pg_a_cell = 29.5; // 29-30 pg: common values.

specimen::Specimen with_cells(const std::string& kind, double per_ul) {
  specimen::Specimen urine = clean_urine();
  urine.cells_per_ul.emplace_back(kind, per_ul);
  return urine;
}

/// Fewest cells a microlitre that the reader calls more than the first word of the pad.
double fewest_seen(const std::string& pad, const std::string& kind) {
  double low = 0;
  double high = 100;
  for (int i = 0; i < 10; ++i) {
    const double middle = 0.5 * (low + high);
    (strip(pad, with_cells(kind, middle)).entry > 0 ? high : low) = middle;
  }
  return high;
}

const paper::PadKind& pad_of(const std::string& key) {
  for (const auto& pad : paper_world().papers.back().pads) {
    if (pad.key == key) {
      return pad;
    }
  }
  throw std::runtime_error("no pad " + key);
}

paper::Pad dipped(const std::string& pad, const specimen::Specimen& urine) {
  const auto liquid = specimen::make_liquid(urine, paper_world().catalogue);
  return paper::dipped_pad(pad_of(pad), liquid, paper_world().chemistry, 22, pad_of(pad).read_at_s);
}

paper::Spots spots(double red_cells_per_ul) {
  const assets::World& world = paper_world();
  return paper::spots_on(dipped("blood", with_cells("erythrocytes", red_cells_per_ul)), pad_of("blood"),
                         world.catalogue, world.optics.scatter);
}

} // namespace

TEST_CASE("The blood pad shows 5-20 whole red cells a microlitre, the leucocyte pad 5-25") {
  CHECK(fewest_seen("blood", "erythrocytes") > 5);
  CHECK(fewest_seen("blood", "erythrocytes") < 20);
  CHECK(fewest_seen("leucocytes", "leucocytes") > 5);
  CHECK(fewest_seen("leucocytes", "leucocytes") < 25);
}

TEST_CASE("A red cell sets free 29-30 pg of haemoglobin on the pad") {
  const auto id = paper_world().catalogue.find_species("haemoglobin").value();
  const double per_ul = 100;
  const paper::Pad pad = dipped("blood", with_cells("erythrocytes", per_ul));
  const double free_pg =
      pad.inside.mmol[id] / 1000 * paper_world().catalogue.species[id].molar_mass_g_per_mol * 1e12;
  const double in_pad = per_ul * pad_of("blood").void_ml() * 1000;
  CHECK(free_pg / in_pad == Approx(haemoglobin_pg_a_cell).epsilon(0.02)); // Spread of the printed 29-30.
}

TEST_CASE("Few whole cells speckle the pad, the same haemoglobin set free does not, many run together") {
  // Spots for whole cells, even colour for haemoglobin and for many cells: Strasinger 2014, from memory.
  CHECK(spots(10).count > 30);
  CHECK(spots(10).cover < 0.1);
  CHECK(optics::ciede2000(lab_of(spots(10).spot), lab_of(spots(10).ground)) > 5); // Plain to see.
  CHECK(spots(100).count > 0);
  CHECK(spots(3000).count == 0);
  const double lysed_mg_per_dl = 10 * haemoglobin_pg_a_cell * 1e-4;
  const auto even = paper::spots_on(dipped("blood", with("haemoglobin", lysed_mg_per_dl)), pad_of("blood"),
                                    paper_world().catalogue, paper_world().optics.scatter);
  CHECK(even.count == 0);
}

TEST_CASE("Broken or whole, white cells answer alike") {
  // The pad sees the esterase of cells that have burst as well as of whole ones: common practice.
  const double per_ul = 100;
  const auto whole = strip("leucocytes", with_cells("leucocytes", per_ul));
  const double esterase_mg_per_dl = per_ul * 2.0 * 1e-4; // 2 pg a cell: from memory.
  const auto broken = strip("leucocytes", with("leucocyte_esterase", esterase_mg_per_dl));
  CHECK(whole.place == Approx(broken.place).margin(0.3)); // Breaking takes some of the two minutes.
}
