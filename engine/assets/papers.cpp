#include "engine/assets/readers.hpp"

#include <algorithm>

namespace matula::assets {

namespace {

const strict::Range share{0, 1, ""};
const strict::Range seconds{0, 3600, "s"};
const strict::Range amount{0, 1e5, "mmol/L"};

paper::Stock read_stock(const strict::Table& row) {
  paper::Stock stock;
  stock.thickness_mm = row.number("thickness_mm", {0.05, 2, "mm"});
  stock.void_share = row.number("void_share", {0.1, 0.95, ""});
  stock.scatter_per_mm = row.number("scatter_per_mm", {0.1, 500, "1/mm"});
  stock.wet_scatter_share = row.number("wet_scatter_share", share);
  const double at_400_nm = row.number("absorb_per_mm_400_nm", {0, 50, "1/mm"});
  const double at_700_nm = row.number("absorb_per_mm_700_nm", {0, 50, "1/mm"});
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    const double along = std::clamp((optics::wavelength_nm(i) - 400) / 300, 0.0, 1.0);
    stock.absorb_per_mm[i] = at_400_nm + along * (at_700_nm - at_400_nm);
  }
  stock.film_share = row.number("film_share", share);
  stock.backing = row.number("backing", share);
  stock.warming_s = row.number("warming_s", {1, 1e4, "s"});
  (void)row.text("source");
  return stock;
}

using Amounts = std::vector<std::pair<std::string, double>>;

Amounts read_named(const strict::Table& table, const matter::Catalogue& catalogue) {
  Amounts named;
  for (const auto& [id, value] : read_amounts(table, catalogue, amount)) {
    named.emplace_back(catalogue.species[id].key, value);
  }
  return named;
}

/// Later amounts take the place of earlier ones of the same substance.
void overlay(Amounts& all, const Amounts& more) {
  for (const auto& [key, value] : more) {
    const auto same = [&key = key](const auto& one) { return one.first == key; };
    all.erase(std::remove_if(all.begin(), all.end(), same), all.end());
    all.emplace_back(key, value);
  }
}

specimen::Specimen read_specimen(const strict::Table& row, specimen::Specimen base,
                                 const matter::Catalogue& catalogue) {
  const double strength = row.number_or("strength", {0, 5, ""}, 1);
  for (auto& [key, mmol] : base.mmol_per_l) {
    mmol *= strength;
  }
  base.target_ph = row.number_or("ph", {3, 11, "pH"}, base.target_ph);
  base.urochrome_a420 = row.number_or("urochrome_a420", {0, 10, ""}, base.urochrome_a420 * strength);
  if (const auto more = row.table_if_any("mmol_per_l")) {
    overlay(base.mmol_per_l, read_named(*more, catalogue));
  }
  if (const auto more = row.table_if_any("mg_per_dl")) {
    overlay(base.mg_per_dl, read_named(*more, catalogue));
  }
  if (const auto solids = row.table_if_any("particles_mg_per_l")) {
    for (const std::string& key : solids->keys()) {
      if (!catalogue.find_particle(key)) {
        solids->complain(key, "the key of a particle");
      }
      base.particles_mg_per_l.emplace_back(key, solids->number(key, {0, 1e5, "mg/L"}));
    }
  }
  return base;
}

std::vector<paper::Level> read_levels(const strict::Table& row, const specimen::Specimen& base,
                                      const matter::Catalogue& catalogue) {
  std::vector<paper::Level> levels;
  for (const strict::Table& each : row.tables_or_none("level")) {
    paper::Level level;
    level.word = each.text("word");
    level.value = each.number("value", {0, 1e6, ""});
    level.specimen = base;
    if (const auto standard = each.table_if_any("specimen")) {
      level.specimen = read_specimen(*standard, base, catalogue);
    }
    if (!levels.empty() && level.value <= levels.back().value) {
      each.complain("value", "values that rise from level to level");
    }
    levels.push_back(level);
  }
  return levels;
}

paper::Lysis read_lysis(const strict::Table& row, const matter::Catalogue& catalogue) {
  paper::Lysis lysis;
  lysis.cells = read_particle_key(row, "particle", catalogue);
  lysis.per_s = row.number("per_s", {0, 10, "1/s"});
  lysis.releases = read_amounts(row.table("releases"), catalogue, share);
  (void)row.text("source");
  return lysis;
}

std::optional<paper::Speckle> read_speckle(const strict::Table& row, const matter::Catalogue& catalogue) {
  const auto table = row.table_if_any("speckle");
  if (!table) {
    return std::nullopt;
  }
  return paper::Speckle{read_species_key(*table, "from", catalogue),
                        read_species_key(*table, "dye", catalogue),
                        table->number("spot_mm2", {1e-4, 10, "mm2"})};
}

paper::PadKind read_pad(const strict::Table& row, const paper::Stock& stock, const specimen::Specimen& base,
                        const matter::Catalogue& catalogue, const std::vector<paper::Lysis>& lyses) {
  paper::PadKind pad;
  pad.key = row.text("key");
  pad.label = row.text("label");
  pad.unit = row.text_or("unit", "");
  pad.stock = stock;
  pad.area_mm2 = row.number("area_mm2", {1, 1e4, "mm2"});
  pad.bath_mmol_per_l = read_amounts(row.table("bath_mmol_per_l"), catalogue, amount);
  if (row.boolean_or("breaks_cells", false)) {
    pad.lyses = lyses;
  }
  pad.speckle = read_speckle(row, catalogue);
  pad.read_at_s = row.number("read_at_s", seconds);
  pad.read_within_s = row.number("read_within_s", seconds);
  pad.void_after_s = row.number("void_after_s", seconds);
  pad.levels = read_levels(row, base, catalogue);
  (void)row.text("source");
  return pad;
}

} // namespace

void read_papers(const std::filesystem::path& file, const matter::Catalogue& catalogue,
                 std::vector<paper::PaperKind>& papers, scenario::Problems& problems) {
  strict::File toml(file);
  const strict::Table standard = toml.root().table("standard");
  (void)standard.text("source");
  const specimen::Specimen base = read_specimen(standard, {}, catalogue);
  std::vector<paper::Lysis> lyses;
  for (const strict::Table& row : toml.root().tables_or_none("lysis")) {
    lyses.push_back(read_lysis(row, catalogue));
  }
  for (const strict::Table& row : toml.root().tables("paper")) {
    paper::PaperKind kind;
    kind.key = row.text("key");
    kind.label = row.text("label");
    kind.fill_s = row.number("fill_s", seconds);
    kind.run_over_per_s = row.number("run_over_per_s", {0, 1, "1/s"});
    const paper::Stock stock = read_stock(row.table("stock"));
    for (const strict::Table& each : row.tables("pad")) {
      paper::PadKind pad = read_pad(each, stock, base, catalogue, lyses);
      check_new(each, pad.key, kind.pads);
      kind.pads.push_back(pad);
    }
    kind.source = row.text("source");
    check_new(row, kind.key, papers);
    papers.push_back(kind);
  }
  close(toml, problems);
}

} // namespace matula::assets
