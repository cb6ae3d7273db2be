#include "engine/assets/csv.hpp"

#include "engine/strict/file.hpp"

#include <cmath>
#include <locale>
#include <sstream>

namespace matula::assets {

namespace {

void complain(scenario::Problems& problems, const std::filesystem::path& file, int line,
              const std::string& text, const std::string& found, const std::string& expected) {
  problems.push_back({file.string(), line, line > 0 ? 1 : 0, text, found, expected});
}

std::vector<std::string> split(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream in(line);
  for (std::string cell; std::getline(in, cell, ',');) {
    cells.push_back(cell);
  }
  return cells;
}

bool parse_number(const std::string& cell, double& number) {
  std::istringstream in(cell);
  in.imbue(std::locale::classic());
  return static_cast<bool>(in >> number) && (in >> std::ws).eof() && std::isfinite(number);
}

bool parse_row(const std::string& line, std::size_t count, std::vector<double>& row) {
  for (const std::string& cell : split(line)) {
    double number = 0;
    if (!parse_number(cell, number)) {
      return false;
    }
    row.push_back(number);
  }
  return row.size() == count;
}

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) {
    all += (all.empty() ? "" : ",") + word;
  }
  return all;
}

} // namespace

std::vector<double> Csv::column(std::size_t index) const {
  std::vector<double> values;
  values.reserve(rows.size());
  for (const std::vector<double>& row : rows) {
    values.push_back(row[index]);
  }
  return values;
}

Csv read_csv(const std::filesystem::path& file, const std::vector<std::string>& columns,
             scenario::Problems& problems) {
  Csv csv;
  std::string text;
  if (!strict::read_text(file, text)) {
    complain(problems, file, 0, "", "no readable file", "a table with the columns " + joined(columns));
    return csv;
  }
  const std::size_t before = problems.size();
  bool headed = false;
  int number = 0;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    ++number;
    if (!line.empty() && line.back() == '\r') {
      line.pop_back();
    }
    if (line.empty() || line.front() == '#') {
      continue;
    }
    if (!headed) {
      headed = true;
      if (split(line) != columns) {
        complain(problems, file, number, line, "columns " + line, "columns " + joined(columns));
      }
      continue;
    }
    std::vector<double> row;
    if (!parse_row(line, columns.size(), row)) {
      complain(problems, file, number, line, "a row that does not fit",
               std::to_string(columns.size()) + " numbers with commas between them");
    }
    csv.rows.push_back(row);
  }
  if (csv.rows.empty()) {
    complain(problems, file, 0, "", "no rows", "numbers under " + joined(columns));
  }
  if (problems.size() > before) {
    csv.rows.clear();
  }
  return csv;
}

optics::Spectrum band_column(const Csv& csv, std::size_t index) {
  optics::Spectrum spectrum{};
  for (std::size_t band = 0; band < spectrum.size(); ++band) {
    spectrum[band] = csv.rows[band][index];
  }
  return spectrum;
}

bool has_bands(const Csv& csv, const std::filesystem::path& file, scenario::Problems& problems) {
  bool right = csv.rows.size() == optics::band_count;
  for (std::size_t band = 0; right && band < optics::band_count; ++band) {
    right = std::abs(csv.rows[band][0] - optics::wavelength_nm(band)) < 0.5;
  }
  if (!right && !csv.rows.empty()) {
    complain(problems, file, 0, "", std::to_string(csv.rows.size()) + " rows that are not the bands",
             "36 rows, 380 to 730 nm in steps of 10 nm");
  }
  return right;
}

} // namespace matula::assets
