#include "engine/window/clock.hpp"

#include <algorithm>
#include <cstdlib>

namespace matula::window {

namespace {
/// A long wait takes this long on the wall, a short one no longer than it would on the bench. A test that
/// works many cases may have less patience.
double longest_wait_wall_s() {
  constexpr double usual = 4.0;
  constexpr double least = 0.1;
  static const char* wish = std::getenv("MATULA_WAIT_WALL_S");
  return wish == nullptr ? usual : std::clamp(std::strtod(wish, nullptr), least, usual);
}

constexpr double longest_frame_s = 0.1; // After a stall the bench does not leap.
} // namespace

void Clock::wait_until(double now_s, double until_s) {
  from_s_ = now_s;
  until_s_ = std::max(until_s, now_s);
  waiting_ = until_s_ > now_s;
}

double Clock::progress(double now_s) const {
  const double span = until_s_ - from_s_;
  return span > 0 ? std::clamp((now_s - from_s_) / span, 0.0, 1.0) : 1.0;
}

double Clock::next(double now_s, double wall_s) {
  const double wall = std::min(wall_s, longest_frame_s);
  if (waiting_) {
    const double speed = std::max(4.0, (until_s_ - from_s_) / longest_wait_wall_s());
    const double then = at_once_ ? until_s_ : std::min(now_s + wall * speed, until_s_);
    waiting_ = then < until_s_;
    return then;
  }
  return running_ ? now_s + wall : now_s;
}

} // namespace matula::window
