#include "engine/strict/nearest.hpp"

#include <algorithm>

namespace matula::strict {

int edit_distance(std::string_view one, std::string_view other) {
  std::vector<int> row(other.size() + 1);
  for (std::size_t j = 0; j < row.size(); ++j) {
    row[j] = static_cast<int>(j);
  }
  for (std::size_t i = 0; i < one.size(); ++i) {
    int diagonal = row[0];
    row[0] = static_cast<int>(i) + 1;
    for (std::size_t j = 0; j < other.size(); ++j) {
      const int replaced = diagonal + (one[i] == other[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({replaced, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row.back();
}

std::string nearest(std::string_view word, const std::vector<std::string>& candidates) {
  std::string best;
  int fewest = static_cast<int>(std::max<std::size_t>(1, word.size() / 3)) + 1;
  for (const std::string& candidate : candidates) {
    const int edits = edit_distance(word, candidate);
    if (edits < fewest) {
      fewest = edits;
      best = candidate;
    }
  }
  return best;
}

std::string suggestion(std::string_view word, const std::vector<std::string>& candidates, std::size_t most) {
  const std::string near = nearest(word, candidates);
  if (!near.empty()) {
    return "did you mean '" + near + "'?";
  }
  std::string all = "one of: ";
  for (std::size_t i = 0; i < candidates.size() && i < most; ++i) {
    all += (i > 0 ? ", " : "") + candidates[i];
  }
  return candidates.size() > most ? all + ", ..." : all;
}

} // namespace matula::strict
