#include "engine/assets/readers.hpp"

namespace matula::assets {

namespace {

instrument::Refractometer read_refractometer(const strict::Table& row) {
  const strict::Range celsius{0, 60, "degrees C"};
  instrument::Refractometer r;
  r.zero_index = row.number("zero_index", {1.3, 1.4, ""});
  r.index_per_density = row.number("index_per_density", {0.1, 1, ""});
  r.division = row.number("division", {1e-4, 0.01, ""});
  r.scale_end = row.number("scale_end", {1.01, 1.2, ""});
  r.compensated = row.boolean_or("compensated", r.compensated);
  r.compensated_from_c = row.number("compensated_from_c", celsius);
  r.compensated_to_c = row.number("compensated_to_c", {r.compensated_from_c, celsius.high, celsius.unit});
  r.film_ml = row.number("film_ml", {0.001, 1, "mL"});
  r.kept_share = row.number("kept_share", {0, 1, ""});
  r.glancing_path_mm = row.number("glancing_path_mm", {0.01, 50, "mm"});
  r.blur_division = row.number("blur_division", {0, 50, "divisions"});
  r.lost_contrast = row.number("lost_contrast", {0, 1, ""});
  (void)row.text("source");
  return r;
}

instrument::Photometer read_photometer(const strict::Table& row) {
  const strict::Range visible{380, 730, "nm"};
  instrument::Photometer p;
  p.lowest_nm = row.number("lowest_nm", visible);
  p.highest_nm = row.number("highest_nm", {p.lowest_nm, visible.high, visible.unit});
  p.step = row.number("step", {1e-5, 0.1, "A"});
  p.stray_share = row.number("stray_share", {1e-6, 0.1, ""});
  p.flicker = row.number("flicker", {0, 0.1, "A"});
  p.acceptance_deg = row.number("acceptance_deg", {0.1, 45, "degrees"});
  p.beam_from_mm = row.number("beam_from_mm", {0, 100, "mm"});
  p.beam_to_mm = row.number("beam_to_mm", {p.beam_from_mm + 1, 120, "mm"});
  (void)row.text("source");
  return p;
}

instrument::Sulphur read_sulphur(const strict::Table& row) {
  instrument::Sulphur s;
  s.pinch_mg = row.number("pinch_mg", {0.1, 100, "mg"});
  s.grain_radius_mm = row.number("grain_radius_mm", {0.005, 1, "mm"});
  s.density_kg_m3 = row.number("density_kg_m3", {1010, 5000, "kg/m3"});
  s.critical_tension_mn_m = row.number("critical_tension_mn_m", {10, 72, "mN/m"});
  s.critical_spread_mn_m = row.number("critical_spread_mn_m", {0, 10, "mN/m"});
  s.cosine_per_mn_m = row.number("cosine_per_mn_m", {0.001, 0.2, "m/mN"});
  s.tap_g = row.number("tap_g", {1, 1e4, "weights"});
  s.sinking_per_s = row.number("sinking_per_s", {0, 10, "1/s"});
  s.sinking_mn_m = row.number("sinking_mn_m", {0.05, 20, "mN/m"});
  (void)row.text("source");
  return s;
}

} // namespace

void read_measuring(const strict::Table& root, World& world) {
  world.refractometer = read_refractometer(root.table("refractometer"));
  world.photometer = read_photometer(root.table("photometer"));
  world.sulphur = read_sulphur(root.table("sulphur"));
  const strict::Table rotor = root.table("centrifuge");
  world.tools.rotor_radius_cm = rotor.number("radius_cm", {2, 40, "cm"});
  world.tools.rotor_most_rcf = rotor.number("most_rcf", {100, 20000, "g"});
  world.tools.rotor_balance_g = rotor.number("balance_g", {0.01, 10, "g"});
  world.tools.rotor_run_s = rotor.number("run_s", {0.5, 600, "s"});
  (void)rotor.text("source");
  const strict::Table paper = root.table("filter_paper");
  world.tools.paper_pore_um = paper.number("pore_um", {0.1, 100, "um"});
  world.tools.paper_sharpness = paper.number("sharpness", {0.5, 20, ""});
  world.tools.paper_holds_ml = paper.number("holds_ml", {0, 5, "mL"});
  world.tools.paper_ml_per_s = paper.number("ml_per_s", {0.001, 10, "mL/s"});
  (void)paper.text("source");
}

} // namespace matula::assets
