#pragma once

#include "engine/reception/shown.hpp"
#include "engine/scoring/report.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace matula::desk {

/// What kind of thing lies before the learner.
enum class Posed { Tube, Float, Sum, Delivery };

/// An unknown as it may be seen before it is answered.
struct Question {
  Posed kind = Posed::Tube;
  std::string title;                            ///< "Sulfosalicylic acid"
  std::string prompt;                           ///< What is asked.
  std::vector<std::string> words;               ///< Of a tube's grades, lowest first.
  std::vector<std::string> table;               ///< What is seen at each; empty in a quiz.
  std::vector<reception::WrittenLine> given;    ///< Figures of a calculation.
  std::string rule;                             ///< The laboratory's written rule for it.
  std::vector<std::string> lines;               ///< Lines of a calculation that are to be filled in.
  std::optional<reception::Shown> delivery;     ///< On the counter.
  std::vector<reception::WrittenLine> verdicts; ///< Key and wording.
  std::vector<reception::WrittenLine> reasons;  ///< The same.
  double eye_mm = 0;                            ///< Where the eye begins above a float's surface.
};

/// What an answer was worth, and why.
struct Feedback {
  bool right = false;
  int credit = 0; ///< Per mille.
  std::string written;
  std::string expected;
  std::vector<std::string> words; ///< What was there to see, and why.
  std::vector<scoring::Mark> marks;
};

} // namespace matula::desk
