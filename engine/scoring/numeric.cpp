#include "engine/scoring/numeric.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <sstream>

namespace matula::scoring {

int credit_per_mille(double error, double full, double none) {
  constexpr double rounding = 1e-9; // 1.026 - 1.025 is a hair more than 0.001 in binary.
  const double e = std::abs(error);
  if (e <= full + rounding) {
    return 1000;
  }
  if (e >= none - rounding) {
    return 0;
  }
  return static_cast<int>(std::lround(1000.0 * (none - e) / (none - full)));
}

double reading_error(double entry, double shown, double division) {
  const double rounded = std::round(shown / division) * division;
  return std::min(std::abs(entry - shown), std::abs(entry - rounded));
}

std::optional<double> number_from_text(const std::string& text) {
  std::string plain = text;
  std::replace(plain.begin(), plain.end(), ',', '.');
  std::istringstream in(plain);
  in.imbue(std::locale::classic());
  double value = 0;
  if (!(in >> value) || !std::isfinite(value)) {
    return std::nullopt;
  }
  std::string unit;
  std::getline(in, unit);
  const bool digits_follow = unit.find_first_of("0123456789") != std::string::npos;
  return digits_follow ? std::nullopt : std::optional<double>(value);
}

int marks_for(int credit, int possible) {
  return (credit * possible + 500) / 1000;
}

std::vector<int> split_marks(int total, const std::vector<int>& shares) {
  const int sum = std::accumulate(shares.begin(), shares.end(), 0);
  std::vector<int> marks(shares.size(), 0);
  if (sum <= 0 || total <= 0) {
    return marks;
  }
  std::vector<std::size_t> order(shares.size());
  std::iota(order.begin(), order.end(), 0U);
  int given = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    marks[i] = total * shares[i] / sum;
    given += marks[i];
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return total * shares[a] % sum > total * shares[b] % sum;
  });
  for (std::size_t i = 0; given < total; i = (i + 1) % order.size()) {
    ++marks[order[i]];
    ++given;
  }
  return marks;
}

} // namespace matula::scoring
