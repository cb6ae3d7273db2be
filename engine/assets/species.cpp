#include "engine/assets/csv.hpp"
#include "engine/assets/readers.hpp"
#include "sim/optics/band_shape.hpp"

namespace matula::assets {

namespace {

const strict::Range wavelength{200, 1200, "nm"};
const strict::Range epsilon{0, 2e6, "L/mol/cm"};

optics::Spectrum read_table(const std::filesystem::path& folder, const std::string& name,
                            scenario::Problems& problems) {
  const Csv csv = read_csv(folder / "spectra" / (name + ".csv"), {"wavelength_nm", "epsilon"}, problems);
  std::vector<std::pair<double, double>> pairs;
  pairs.reserve(csv.rows.size());
  for (const std::vector<double>& row : csv.rows) {
    pairs.emplace_back(row[0], row[1]);
  }
  return pairs.empty() ? optics::flat(0) : optics::interpolated(pairs);
}

optics::Spectrum read_absorptivity(const strict::Table& row, const std::filesystem::path& folder,
                                   scenario::Problems& problems) {
  optics::Spectrum all = optics::flat(0);
  for (const strict::Table& band : row.tables_or_none("bands")) {
    const double peak_nm = band.number("peak_nm", wavelength);
    const double height = band.number("epsilon", epsilon);
    all = optics::sum(
        all,
        band.has("fwhm_per_cm")
            ? optics::gaussian_band_per_cm(height, peak_nm, band.number("fwhm_per_cm", {10, 20000, "/cm"}))
            : optics::gaussian_band(height, peak_nm, band.number("fwhm_nm", {1, 1000, "nm"})));
  }
  if (const auto tail = row.table_if_any("exponential")) {
    const double reference_nm = tail->number("reference_nm", wavelength);
    const double height = tail->number("epsilon", epsilon);
    all = optics::sum(
        all, optics::exponential_tail(height, reference_nm, tail->number("slope_per_nm", {0, 0.2, "1/nm"})));
  }
  if (row.has("table")) {
    all = optics::sum(all, read_table(folder, row.text("table"), problems));
  }
  return all;
}

matter::Species read_row(const strict::Table& row) {
  matter::Species species;
  species.key = row.text("key");
  species.label = row.text("label");
  species.molar_mass_g_per_mol = row.number("molar_mass_g_per_mol", {1, 1e7, "g/mol"});
  species.protonated_charge = row.number_or("protonated_charge", {-500, 500, "elementary charges"}, 0);
  species.pka = row.numbers_or_none("pka", {-10, 20, ""});
  species.buffer_groups = row.number_or("buffer_groups", {1, 1000, "copies"}, 1);
  species.pka_fall_per_decade = row.number_or("pka_fall_per_decade", {0, 5, ""}, 0);
  species.apparent_volume_ml_per_mol = row.number("apparent_volume_ml_per_mol", {-100, 5e6, "mL/mol"});
  species.free_base_volume_ml_per_mol = row.number_or("free_base_volume_ml_per_mol", {0, 1000, "mL/mol"}, 0);
  species.odour = row.text_or("odour", "");
  species.odour_threshold_mmol_per_l = row.number_or("odour_threshold_mmol_per_l", {0, 1e4, "mmol/L"}, 0);
  species.odour_form = row.word_or("odour_form", {"total", "acid", "base"}, "total");
  species.partition = row.number_or("partition", {0, 1e6, ""}, 0);
  species.source = row.text("source");
  const double charge = species.protonated_charge;
  if (species.partition > 0 &&
      (charge < 0 || charge > static_cast<double>(species.pka.size()) || species.buffer_groups > 1)) {
    row.complain("partition", "0: this substance has no uncharged form");
  }
  if (species.free_base_volume_ml_per_mol > 0 && species.pka.empty()) {
    row.complain("free_base_volume_ml_per_mol", "a pka for the proton the base takes up");
  }
  for (std::size_t i = 1; i < species.pka.size(); ++i) {
    if (species.pka[i] < species.pka[i - 1]) {
      row.complain("pka", "values that rise from left to right");
      break;
    }
  }
  return species;
}

/// The colour an indicator has without its protons; its own constant makes it follow that alone.
void read_base_form(const strict::Table& row, const std::filesystem::path& folder, matter::Species& species,
                    scenario::Problems& problems) {
  const auto base = row.table_if_any("base_form");
  if (!base) {
    return;
  }
  species.indicator = true;
  species.base_absorptivity_l_per_mol_cm = read_absorptivity(*base, folder, problems);
  if (base->has("pka")) {
    species.indicator_pka = base->number("pka", {-10, 20, ""});
  } else if (species.pka.empty()) {
    row.complain("base_form", "a list pka of the protons that form has lost");
  }
}

} // namespace

void read_species(const strict::Table& root, const std::filesystem::path& folder,
                  matter::Catalogue& catalogue, scenario::Problems& problems) {
  for (const strict::Table& row : root.tables_or_none("species")) {
    matter::Species species = read_row(row);
    species.absorptivity_l_per_mol_cm = read_absorptivity(row, folder, problems);
    read_base_form(row, folder, species, problems);
    check_new(row, species.key, catalogue.species);
    catalogue.species.push_back(species);
  }
}

} // namespace matula::assets
