#include "engine/assets/readers.hpp"

namespace matula::assets {

void read_vessels(const std::filesystem::path& file, std::map<std::string, column::VesselShape>& shapes,
                  scenario::Problems& problems) {
  strict::File toml(file);
  for (const strict::Table& row : toml.root().tables("vessel")) {
    column::VesselShape shape;
    shape.key = row.text("key");
    shape.inner_diameter_mm = row.number("inner_diameter_mm", {5, 200, "mm"});
    shape.height_mm = row.number("height_mm", {20, 400, "mm"});
    shape.wall_mm = row.number("wall_mm", {0.3, 6, "mm"});
    shape.round_bottom = row.boolean_or("round_bottom", false);
    shape.capacity_ml = row.number("capacity_ml", {1, 2000, "mL"});
    for (const strict::Table& line : row.tables_or_none("marks")) {
      shape.marks.push_back({line.text("label"), line.number("height_mm", {0.1, shape.height_mm, "mm"})});
      const std::size_t count = shape.marks.size();
      if (count > 1 && shape.marks[count - 2].height_mm >= shape.marks.back().height_mm) {
        line.complain("height_mm", "a height above that of the mark before");
      }
    }
    (void)row.text("source");
    if (shape.level_mm(shape.capacity_ml) > shape.height_mm) {
      row.complain("capacity_ml", "no more than the glass holds up to its rim");
    }
    if (!shapes.emplace(shape.key, shape).second) {
      row.complain("key", "a key no other row has");
    }
  }
  for (const char* needed : {"test_tube", "urinometer_jar", "specimen_cup", "esbach_tube"}) {
    if (shapes.count(needed) == 0) {
      toml.complain(0, 0, std::string("no vessel '") + needed + "'", "a [[vessel]] with that key");
    }
  }
  close(toml, problems);
}

} // namespace matula::assets
