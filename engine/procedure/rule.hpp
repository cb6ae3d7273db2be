#pragma once

#include <limits>
#include <string>

namespace matula::procedure {

/// How bad a fault of procedure is.
enum class Rank { Note, Minor, Major, Invalidating };

/// A fact of the learner's own work compared with a range; the sentences are templates with {placeholders}.
struct Rule {
  std::string key;
  std::string part; ///< "look", "gravity", a procedure's key, or "safety".
  std::string fact;
  double min = -std::numeric_limits<double>::infinity();
  double max = std::numeric_limits<double>::infinity();
  Rank rank = Rank::Minor;
  int marks = 0;     ///< Safety rules only.
  bool stop = false; ///< Safety rules only: fails the sitting.
  std::string label;
  std::string below;
  std::string above;
  std::string source;
};

} // namespace matula::procedure
