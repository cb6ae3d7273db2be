#include "engine/assets/world.hpp"

#include "engine/assets/readers.hpp"

namespace matula::assets {

matter::Catalogue load_catalogue(const std::filesystem::path& folder, scenario::Problems& problems) {
  matter::Catalogue catalogue;
  reaction::Network unused;
  read_chemistry(folder / "chemistry", catalogue, unused, problems);
  read_liquids(folder / "liquid", catalogue, problems);
  matter::prepare(catalogue);
  return catalogue;
}

tl::expected<std::unique_ptr<const World>, scenario::Problems> load(const std::filesystem::path& folder) {
  scenario::Problems problems;
  auto world = std::make_unique<World>();
  read_chemistry(folder / "chemistry", world->catalogue, world->chemistry, problems);
  read_ageing(folder / "ageing", world->catalogue, world->ageing, problems);
  read_liquids(folder / "liquid", world->catalogue, problems);
  read_optics(folder / "optics", world->optics, problems);
  read_thresholds(folder / "reading" / "thresholds.toml", world->thresholds, problems);
  read_vessels(folder / "vessels.toml", world->shapes, problems);
  read_instruments(folder / "instruments.toml", *world, problems);
  read_papers(folder / "papers.toml", world->catalogue, world->papers, problems);
  read_cautions(folder / "cautions.toml", world->catalogue, world->cautions, problems);
  read_bottle_decays(folder / "quality" / "bottles.toml", world->catalogue, world->bottle_decays, problems);
  if (!problems.empty()) {
    return tl::make_unexpected(problems);
  }
  matter::prepare(world->catalogue);
  world->chemistry.catalogue = &world->catalogue;
  column::prepare(world->chemistry);
  world->optics.scatter = appearance::make_scatter_tables(world->catalogue);
  constexpr double card_room_c = 22; // Cards are made in a room as it should be.
  for (const paper::PaperKind& kind : world->papers) {
    world->cards[kind.key] = paper::make_card(kind, world->chemistry, world->optics.scatter, card_room_c);
  }
  return std::unique_ptr<const World>(std::move(world));
}

} // namespace matula::assets
