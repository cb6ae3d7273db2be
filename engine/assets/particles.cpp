#include "engine/assets/csv.hpp"
#include "engine/assets/readers.hpp"

namespace matula::assets {

namespace {

const strict::Range share{0, 1, ""};
const strict::Range radius{1e-9, 1, "m"};

struct Indices {
  optics::Spectrum n{};
  optics::Spectrum k{};
};

/// A table of the optics folder; flat when it cannot be read, which is then reported.
Indices read_constants(const std::string& name, const std::filesystem::path& optics_folder,
                       scenario::Problems& problems) {
  const std::filesystem::path file = optics_folder / (name + ".csv");
  const Csv csv = read_csv(file, {"wavelength_nm", "n", "k"}, problems);
  if (!has_bands(csv, file, problems)) {
    return {};
  }
  return {band_column(csv, 1), band_column(csv, 2)};
}

/// Other indices for the finest grains.
void read_fine(const strict::Table& row, const std::filesystem::path& optics_folder,
               matter::ParticleKind& kind, scenario::Problems& problems) {
  const auto fine = row.table_if_any("fine_grains");
  if (!fine) {
    return;
  }
  const Indices indices = read_constants(fine->text("optical_constants"), optics_folder, problems);
  kind.fine_refractive_index = indices.n;
  kind.fine_extinction_index = indices.k;
  kind.fine_below_m = fine->number("below_m", radius);
  kind.coarse_above_m = fine->number("bulk_above_m", radius);
  if (kind.coarse_above_m <= kind.fine_below_m) {
    fine->complain("bulk_above_m", "a radius above below_m");
  }
}

/// One number for all bands, or a named table of the optics folder.
void read_indices(const strict::Table& row, const std::filesystem::path& optics_folder,
                  matter::ParticleKind& kind, scenario::Problems& problems) {
  if (!row.has("optical_constants")) {
    kind.refractive_index = optics::flat(row.number("refractive_index", {1, 4, ""}));
    kind.extinction_index = optics::flat(row.number_or("extinction_index", {0, 5, ""}, 0));
    return;
  }
  const Indices indices = read_constants(row.text("optical_constants"), optics_folder, problems);
  kind.refractive_index = indices.n;
  kind.extinction_index = indices.k;
  read_fine(row, optics_folder, kind, problems);
}

void read_guard(const strict::Table& row, const matter::Catalogue& catalogue, matter::ParticleKind& kind) {
  const auto guard = row.table_if_any("guard");
  if (!guard) {
    return;
  }
  const auto species = catalogue.find_species(guard->text("species"));
  if (!species) {
    guard->complain("species", "the key of a species");
    return;
  }
  kind.guard_species = *species;
  kind.guard_half_mol_per_l = guard->number("half_mol_per_l", {1e-9, 10, "mol/L"});
  kind.guard_power = guard->number("power", {0, 30, ""});
}

matter::ParticleKind read_row(const strict::Table& row) {
  matter::ParticleKind kind;
  kind.key = row.text("key");
  kind.label = row.text("label");
  kind.primary_radius_m = row.number("primary_radius_m", {1e-9, 1e-4, "m"});
  kind.solid_density_kg_m3 = row.number("solid_density_kg_m3", {500, 20000, "kg/m3"});
  kind.fractal_dimension = row.number("fractal_dimension", {1.7, 3, ""});
  kind.core_radius_m = row.number("core_radius_m", radius);
  kind.brownian_efficiency = row.number_or("brownian_efficiency", share, 1);
  kind.shear_efficiency = row.number_or("shear_efficiency", {0, 1000, ""}, 1);
  kind.settling_efficiency = row.number_or("settling_efficiency", share, kind.settling_efficiency);
  kind.contact_size_m = row.number_or("contact_size_m", radius, kind.contact_size_m);
  kind.breakage_size_m = row.number_or("breakage_size_m", radius, kind.breakage_size_m);
  kind.gel_volume_fraction = row.number_or("gel_volume_fraction", share, 1);
  kind.sticking_ph_centre = row.number_or("sticking_ph_centre", {0, 14, "pH"}, 0);
  kind.sticking_ph_width = row.number_or("sticking_ph_width", {0, 14, "pH"}, 0);
  kind.sticking_activation_kj_per_mol =
      row.number_or("sticking_activation_kj_per_mol", {0, 500, "kJ/mol"}, 0);
  kind.bed_packing = row.number_or("bed_packing", {1e-3, 0.74, ""}, kind.bed_packing);
  kind.bed_swelling_per_k = row.number_or("bed_swelling_per_k", {0, 0.1, "1/K"}, 0);
  kind.loose_floc_radius_m = row.number_or("loose_floc_radius_m", {0, 1e-3, "m"}, 0);
  kind.size_spread = row.number_or("size_spread", {1, 4, ""}, kind.size_spread);
  kind.source = row.text("source");
  return kind;
}

} // namespace

void read_particles(const strict::Table& root, const std::filesystem::path& folder,
                    matter::Catalogue& catalogue, scenario::Problems& problems) {
  const std::filesystem::path optics_folder = folder.parent_path() / "optics";
  for (const strict::Table& row : root.tables_or_none("particle")) {
    matter::ParticleKind kind = read_row(row);
    read_guard(row, catalogue, kind);
    read_indices(row, optics_folder, kind, problems);
    check_new(row, kind.key, catalogue.particles);
    catalogue.particles.push_back(kind);
  }
}

} // namespace matula::assets
