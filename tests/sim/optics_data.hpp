#pragma once

#include "sim/appearance/optics_tables.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// A bare reader of the optical assets for the tests of sim/, which knows no files itself.
namespace matula::tests {

inline std::vector<std::vector<double>> read_table(const std::string& name) {
  std::ifstream in(std::string(MATULA_SOURCE_DIR) + "/assets/" + name);
  if (!in) {
    throw std::runtime_error("missing " + name);
  }
  std::vector<std::vector<double>> rows;
  std::string line;
  bool header = true;
  while (std::getline(in, line)) {
    if (line.empty() || line[0] == '#') {
      continue;
    }
    if (header) {
      header = false;
      continue;
    }
    std::vector<double> row;
    std::stringstream fields(line);
    std::string field;
    while (std::getline(fields, field, ',')) {
      row.push_back(std::stod(field));
    }
    rows.push_back(row);
  }
  return rows;
}

inline optics::Colorimetry load_colorimetry() {
  optics::Colorimetry c;
  const auto observer = read_table("optics/observer.csv");
  const auto lamps = read_table("optics/lamps.csv");
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    for (std::size_t k = 0; k < 3; ++k) {
      c.observer[k][i] = observer.at(i).at(k + 1);
    }
    for (std::size_t k = 0; k < 2; ++k) {
      c.lamp[k][i] = lamps.at(i).at(k + 1);
    }
  }
  return c;
}

inline appearance::CylinderTable load_cylinder() {
  appearance::CylinderTable t;
  for (const auto& row : read_table("optics/cylinder.csv")) {
    if (t.reduced_scatter.empty() || row.at(0) > t.reduced_scatter.back()) {
      t.reduced_scatter.push_back(row.at(0));
    }
    if (t.absorption.empty() || row.at(1) > t.absorption.back()) {
      t.absorption.push_back(row.at(1));
    }
    t.on_white.push_back(row.at(3));
    t.on_black.push_back(row.at(4));
  }
  return t;
}

} // namespace matula::tests
