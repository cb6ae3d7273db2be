#include "engine/scoring/ladder.hpp"

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/scoring/papers.hpp"
#include "engine/sitting/setup.hpp"
#include "engine/strict/table.hpp"
#include "sim/reading/cloud_ring.hpp"
#include "sim/reading/colour_strength.hpp"
#include "sim/reading/observables.hpp"

namespace matula::scoring {
namespace {

constexpr optics::Xyz d65_white{0.95047, 1.0, 1.08883};
constexpr reading::Stretch whole{0.05, 0.97};  // Clear of the meniscus and of the round bottom.
constexpr reading::Stretch boiled{0.72, 0.97}; // The part of a half-boiled tube that is read.

} // namespace

tl::expected<specimen::Specimen, scenario::Problems>
load_plain_urine(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "plain_urine.toml");
  const auto root = file.root();
  specimen::Specimen plain;
  plain.volume_ml = root.number("volume_ml", {1, 500, "mL"});
  plain.target_ph = root.number("ph", {4, 9, ""});
  plain.temperature_c = root.number("temperature_c", {0, 45, "°C"});
  plain.urochrome_a420 = root.number("urochrome_a420", {0, 3, "per cm"});
  (void)root.text("source");
  const auto solutes = root.table("mmol_per_l");
  for (const auto& key : solutes.keys()) {
    plain.mmol_per_l.emplace_back(key, solutes.number(key, {0, 1000, "mmol/L"}));
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return plain;
}

bench::Setup ladder_setup(const assets::World& world, const specimen::Specimen& plain, const Recipe& recipe,
                          double mg_per_dl) {
  scenario::Scenario scenario;
  scenario.key = "ladder";
  scenario.specimen = plain;
  if (recipe.ladder_species == procedure::of_ph) {
    scenario.specimen.target_ph = mg_per_dl;
  } else if (mg_per_dl > 0) {
    scenario.specimen.mg_per_dl.emplace_back(recipe.ladder_species, mg_per_dl);
  }
  for (const auto& reagent : world.catalogue.reagents) {
    scenario.reagents_out.push_back(reagent.key);
  }
  scenario.room_c = plain.temperature_c;
  bench::Setup setup = sitting::make_setup(world, scenario);
  setup.tube_count = 2; // One to work in, one to filter into.
  return setup;
}

BookTube ladder_tube(const bench::Setup& setup, const Recipe& recipe) {
  return do_by_the_book(setup, recipe);
}

Observables observe(const bench::State& state, const bench::Setup& setup, const bench::VesselName& vessel,
                    const reading::Scale& scale) {
  const auto part = scale.kind == reading::ScaleKind::HeatCloud ? boiled : whole;
  const auto on = [&](appearance::Card card) {
    return bench::look(state, setup, vessel, {card, optics::Lamp::Daylight});
  };
  const auto white = on(appearance::Card::White);
  const auto black = on(appearance::Card::Black);
  const auto printed = on(appearance::Card::Printed);
  Observables seen;
  seen.luminance_on_black = reading::mean_luminance_on_black(black, part);
  seen.print_contrast = reading::mean_print_contrast(printed, part);
  seen.granularity = reading::mean_granularity(white, part);
  seen.opacity = reading::mean_opacity(white, part);
  seen.piece_size_mm = reading::median_piece_size_mm(white);
  seen.clot_fraction = white.clot_fraction;
  seen.settled_share = white.settled_share;
  const auto colour = reading::mean_colour_on_white(white, part);
  seen.colour_on_white = optics::to_lab(colour, d65_white);
  seen.display = optics::to_display(colour);
  if (scale.on_paper()) {
    seen.colour_on_white = pad_colour(state, setup, scale.paper, vessel).value_or(optics::Lab{});
    seen.display = optics::to_display(optics::from_lab(seen.colour_on_white, d65_white));
  }
  if (scale.kind == reading::ScaleKind::Colour) {
    seen.colour_strength = scale.on_paper()
                               ? reading::colour_strength(optics::from_lab(seen.colour_on_white, d65_white),
                                                          scale.colour.hue_deg)
                               : reading::strength_seen(white, scale.colour);
  }
  return seen;
}

LadderRung climb(const assets::World& world, const specimen::Specimen& plain, const Recipe& recipe,
                 const reading::Scale& scale, double mg_per_dl) {
  const auto setup = ladder_setup(world, plain, recipe, mg_per_dl);
  const auto tube = ladder_tube(setup, recipe);
  LadderRung rung;
  rung.mg_per_dl = mg_per_dl;
  rung.stopped_because = tube.stopped_because;
  if (tube.stopped_because.empty()) {
    rung.read = read_vessel(tube.state, setup, world.thresholds, scale, tube.vessel);
    rung.seen = observe(tube.state, setup, tube.vessel, scale);
    if (scale.kind == reading::ScaleKind::CloudRing) {
      const auto black =
          bench::look(tube.state, setup, tube.vessel, {appearance::Card::Black, optics::Lamp::Daylight});
      rung.seen.colour_strength = reading::ring_veil(black, world.thresholds.dark_surround);
    }
  }
  return rung;
}

} // namespace matula::scoring
