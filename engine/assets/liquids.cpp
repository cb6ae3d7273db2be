#include "engine/assets/readers.hpp"
#include "sim/matter/refraction.hpp"

namespace matula::assets {

namespace {

constexpr double mol_per_mmol = 1e-3;

void read_refraction(const std::filesystem::path& file, matter::Catalogue& catalogue,
                     scenario::Problems& problems) {
  strict::File toml(file);
  const strict::Table root = toml.root();
  const double general_ml_per_g = root.number("general_ml_per_g", {0.05, 0.3, "mL/g"});
  (void)root.text("source");
  for (const strict::Table& row : root.tables("refraction")) {
    matter::Species& species = catalogue.species[read_species_key(row, "species", catalogue)];
    if (species.refraction_ml_per_mol) {
      row.complain("species", "a species no other row has");
    }
    constexpr double g_per_l_per_g_per_ml = 1e-3;
    species.refraction_ml_per_mol =
        row.has("ml_per_g")
            ? matter::refraction_of(species, g_per_l_per_g_per_ml * row.number("ml_per_g", {0, 0.5, "mL/g"}))
            : row.number("ml_per_mol", {-50, 1e6, "mL/mol"});
    (void)row.text("source");
  }
  for (matter::Species& species : catalogue.species) {
    if (!species.refraction_ml_per_mol) {
      species.refraction_ml_per_mol = matter::refraction_of(species, 1e-3 * general_ml_per_g);
    }
  }
  close(toml, problems);
}

void read_surface(const std::filesystem::path& file, matter::Catalogue& catalogue,
                  scenario::Problems& problems) {
  strict::File toml(file);
  for (const strict::Table& row : toml.root().tables("surface")) {
    matter::SurfaceActivity surface;
    surface.excess_umol_per_m2 = row.number("excess_umol_per_m2", {0.01, 20, "umol/m2"});
    surface.half_mol_per_l = mol_per_mmol * row.number("half_mmol_per_l", {1e-6, 1e5, "mmol/L"});
    surface.saturation_mol_per_l =
        mol_per_mmol * row.number_or("saturation_mmol_per_l", {1e-6, 1e5, "mmol/L"}, 0);
    (void)row.text("source");
    catalogue.species[read_species_key(row, "species", catalogue)].surface = surface;
  }
  close(toml, problems);
}

} // namespace

void read_liquids(const std::filesystem::path& folder, matter::Catalogue& catalogue,
                  scenario::Problems& problems) {
  if (catalogue.species.empty()) {
    return; // Reported already.
  }
  read_refraction(folder / "refraction.toml", catalogue, problems);
  read_surface(folder / "surface.toml", catalogue, problems);
}

} // namespace matula::assets
