#include "sim/reading/paper.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace matula::reading {

namespace {

constexpr int parts = 20; // Of the way between two neighbours: finer than any eye.

optics::Lab between(const optics::Lab& one, const optics::Lab& other, double share) {
  return {one.l + share * (other.l - one.l), one.a + share * (other.a - one.a),
          one.b + share * (other.b - one.b)};
}

} // namespace

PaperReading read_paper(const optics::Lab& seen, const std::vector<CardEntry>& row) {
  PaperReading best;
  best.off = std::numeric_limits<double>::max();
  const auto last = static_cast<double>(row.size() - 1);
  const int steps = static_cast<int>(row.size() - 1) * parts;
  for (int step = 0; step <= steps; ++step) {
    const double place = steps == 0 ? 0 : last * step / steps;
    const auto below = std::min(static_cast<std::size_t>(place), row.size() - 1);
    const std::size_t above = std::min(below + 1, row.size() - 1);
    const double share = place - static_cast<double>(below);
    const double off = optics::ciede2000(seen, between(row[below].colour, row[above].colour, share));
    if (off < best.off) {
      best.off = off;
      best.place = place;
      best.value = row[below].value + share * (row[above].value - row[below].value);
    }
  }
  best.entry = static_cast<std::size_t>(std::lround(best.place));
  best.word = row[best.entry].word;
  return best;
}

double place_of(double value, const std::vector<double>& values) {
  if (value <= values.front()) {
    return 0;
  }
  for (std::size_t i = 1; i < values.size(); ++i) {
    if (value <= values[i]) {
      return static_cast<double>(i - 1) + (value - values[i - 1]) / (values[i] - values[i - 1]);
    }
  }
  return static_cast<double>(values.size() - 1);
}

} // namespace matula::reading
