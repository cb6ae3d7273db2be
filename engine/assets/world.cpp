#include "engine/assets/world.hpp"

#include "engine/assets/readers.hpp"

namespace matula::assets {

matter::Catalogue load_catalogue(const std::filesystem::path& folder, scenario::Problems& problems) {
  const std::filesystem::path chemistry = folder / "chemistry";
  matter::Catalogue catalogue;
  read_species(chemistry / "species.toml", catalogue, problems);
  read_particles(chemistry / "particles.toml", catalogue, problems);
  read_reagents(chemistry / "reagents.toml", catalogue, problems);
  return catalogue;
}

tl::expected<std::unique_ptr<const World>, scenario::Problems> load(const std::filesystem::path& folder) {
  scenario::Problems problems;
  auto world = std::make_unique<World>();
  world->catalogue = load_catalogue(folder, problems);
  const std::filesystem::path chemistry = folder / "chemistry";
  read_reactions(chemistry / "reactions.toml", world->catalogue, world->chemistry, problems);
  read_precipitations(chemistry / "precipitations.toml", world->catalogue, world->chemistry, problems);
  read_optics(folder / "optics", world->optics, problems);
  read_thresholds(folder / "reading" / "thresholds.toml", world->thresholds, problems);
  read_vessels(folder / "vessels.toml", world->shapes, problems);
  read_instruments(folder / "instruments.toml", world->catalogue, *world, problems);
  read_cautions(folder / "cautions.toml", world->catalogue, world->cautions, problems);
  if (!problems.empty()) {
    return tl::make_unexpected(problems);
  }
  world->chemistry.catalogue = &world->catalogue;
  column::prepare(world->chemistry);
  world->optics.scatter = appearance::make_scatter_tables(world->catalogue);
  return std::unique_ptr<const World>(std::move(world));
}

} // namespace matula::assets
