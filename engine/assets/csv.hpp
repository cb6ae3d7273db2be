#pragma once

#include "engine/scenario/problem.hpp"
#include "sim/optics/spectrum.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace matula::assets {

/// Numbers of a comma-separated file, row by row. Lines that begin with '#' are notes; the first other line
/// names the columns.
struct Csv {
  std::vector<std::vector<double>> rows;
  [[nodiscard]] std::vector<double> column(std::size_t index) const;
};

/// Reads a file that must have exactly these columns. On any problem the rows are left empty.
[[nodiscard]] Csv read_csv(const std::filesystem::path& file, const std::vector<std::string>& columns,
                           scenario::Problems& problems);

/// A column of a wavelength table whose rows are the bands, in order.
[[nodiscard]] optics::Spectrum band_column(const Csv& csv, std::size_t index);

/// Whether the first column is 380, 390 ... 730; reported otherwise.
[[nodiscard]] bool has_bands(const Csv& csv, const std::filesystem::path& file, scenario::Problems& problems);

} // namespace matula::assets
