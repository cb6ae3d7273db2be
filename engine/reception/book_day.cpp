#include "engine/reception/book_parts.hpp"
#include "engine/strict/table.hpp"

namespace matula::reception {

namespace {

void read_tolerances(const strict::Table& root, DayRules& day) {
  const strict::Table table = root.table("tolerance");
  day.volume_tolerance_ml = table.number("volume_ml", {0, 100, "mL"});
  day.relative_tolerance = table.number("relative", {0, 0.2, ""});
  day.gram_tolerance = table.number("gram", {0, 0.1, "g"});
  day.index_tolerance = table.number("index_mg_per_kg", {0, 1, "mg/kg"});
  (void)table.text("source");
}

void read_index(const strict::Table& root, DayRules& day) {
  const strict::Table index = root.table("creatinine_index");
  for (const char* sex : {"male", "female"}) {
    const strict::Table row = index.table(sex);
    IndexRange& range = day.index[sex];
    range.low_mg_per_kg = row.number("low", {1, 100, "mg/kg in 24 h"});
    range.high_mg_per_kg = row.number("high", {range.low_mg_per_kg, 100, "mg/kg in 24 h"});
    (void)row.text("source");
  }
}

void read_bands(const strict::Table& root, DayRules& day) {
  double before = 0;
  for (const strict::Table& row : root.tables("band")) {
    Band band;
    band.key = row.text("key");
    band.label = row.text("label");
    band.up_to_g = row.number_or("up_to_g", {before, 100, "g"}, band.up_to_g);
    band.also_up_to_g = row.number_or("also_up_to_g", {before, 100, "g"}, band.up_to_g);
    (void)row.text("source");
    before = band.up_to_g;
    day.bands.push_back(band);
  }
  if (!day.bands.empty() && day.bands.back().up_to_g < 100) {
    root.complain("band", "a last band without 'up_to_g': it has no upper end");
  }
}

} // namespace

scenario::Problems read_day_rules(const std::filesystem::path& path, Book& book) {
  strict::File file(path);
  const strict::Table root = file.root();
  read_tolerances(root, book.day);
  read_index(root, book.day);
  read_bands(root, book.day);
  const strict::Table measured = root.table("measured");
  book.day.proteins = measured.texts_or_none("proteins");
  book.day.creatinine = measured.text("creatinine");
  (void)measured.text("source");
  const strict::Table pattern = root.table("posture");
  book.day.night_limit_mg_per_h = pattern.number("limit_mg_per_h", {0, 1000, "mg/h"});
  (void)pattern.text("source");
  return file.finish();
}

} // namespace matula::reception
