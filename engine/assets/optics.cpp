#include "engine/assets/csv.hpp"
#include "engine/assets/readers.hpp"

#include <algorithm>

namespace matula::assets {

namespace {

void read_observer(const std::filesystem::path& file, optics::Colorimetry& colorimetry,
                   scenario::Problems& problems) {
  const Csv csv = read_csv(file, {"wavelength_nm", "x_bar", "y_bar", "z_bar"}, problems);
  if (has_bands(csv, file, problems)) {
    colorimetry.observer = {band_column(csv, 1), band_column(csv, 2), band_column(csv, 3)};
  }
}

void read_lamps(const std::filesystem::path& file, optics::Colorimetry& colorimetry,
                scenario::Problems& problems) {
  const Csv csv = read_csv(file, {"wavelength_nm", "daylight", "indoor"}, problems);
  if (has_bands(csv, file, problems)) {
    colorimetry.lamp = {band_column(csv, 1), band_column(csv, 2)};
  }
}

std::vector<double> distinct(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
  return values;
}

void read_cylinder(const std::filesystem::path& file, appearance::CylinderTable& table,
                   scenario::Problems& problems) {
  const Csv csv =
      read_csv(file, {"reduced_scatter", "absorption", "lateral", "on_white", "on_black"}, problems);
  table.reduced_scatter = distinct(csv.column(0));
  table.absorption = distinct(csv.column(1));
  table.on_white = csv.column(3);
  table.on_black = csv.column(4);
  std::size_t row = 0;
  bool ordered =
      csv.rows.size() == table.reduced_scatter.size() * table.absorption.size() * appearance::lateral_samples;
  for (const double scatter : table.reduced_scatter) {
    for (const double absorption : table.absorption) {
      for (std::size_t lateral = 0; lateral < appearance::lateral_samples && ordered; ++lateral, ++row) {
        const std::vector<double>& cells = csv.rows[row];
        ordered = cells[0] == scatter && cells[1] == absorption && cells[2] == static_cast<double>(lateral);
      }
    }
  }
  if (!ordered) {
    problems.push_back({file.string(), 0, 0, "", "rows that are no full grid",
                        "every pair of reduced_scatter and absorption with lateral 0 to 7, in that order"});
  }
}

} // namespace

void read_optics(const std::filesystem::path& folder, appearance::OpticsTables& optics,
                 scenario::Problems& problems) {
  read_observer(folder / "observer.csv", optics.colorimetry, problems);
  read_lamps(folder / "lamps.csv", optics.colorimetry, problems);
  read_cylinder(folder / "cylinder.csv", optics.cylinder, problems);
}

} // namespace matula::assets
