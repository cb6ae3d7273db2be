#include "engine/quality/ordinal.hpp"

#include <cstdlib>

namespace matula::quality {

namespace {

enum class Finding { OnTarget, OneOff, FarOff, CrossedZero, TwiceOneSide };

Finding find(int target, const std::vector<int>& readings) {
  if (readings.empty()) {
    return Finding::OnTarget;
  }
  const int off = readings.back() - target;
  if ((readings.back() == 0) != (target == 0)) {
    return Finding::CrossedZero;
  }
  if (std::abs(off) > 1) {
    return Finding::FarOff;
  }
  if (off == 0) {
    return Finding::OnTarget;
  }
  const bool before = readings.size() > 1;
  const int off_before = before ? readings[readings.size() - 2] - target : 0;
  return off_before * off > 0 ? Finding::TwiceOneSide : Finding::OneOff;
}

} // namespace

Verdict judge_grades(int target, const std::vector<int>& readings) {
  switch (find(target, readings)) {
  case Finding::OnTarget:
    return Verdict::Good;
  case Finding::OneOff:
    return Verdict::Warning;
  default:
    return Verdict::Reject;
  }
}

std::string explain_grades(int target, const std::vector<int>& readings) {
  switch (find(target, readings)) {
  case Finding::OnTarget:
    return "On the target.";
  case Finding::OneOff:
    return "One grade off: allowed once; look again and watch the next.";
  case Finding::FarOff:
    return "More than one grade off: stop, repeat once with a fresh control, then change the reagent.";
  case Finding::CrossedZero:
    return target == 0 ? "The negative control reads positive: stop; reagent or glass is dirty."
                       : "The positive control reads negative: stop; the reagent no longer works.";
  case Finding::TwiceOneSide:
    return "Off to the same side twice running: stop; this is drift, not chance.";
  }
  return "";
}

} // namespace matula::quality
