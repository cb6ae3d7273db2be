#pragma once

namespace matula::window {

/// Maps wall time to bench time. The bench stands still while the learner thinks; it runs when told to, while
/// something is heated, and, fast, through a wait.
class Clock {
public:
  /// Begins a wait that ends at bench time `until_s`.
  void wait_until(double now_s, double until_s);
  void stop_waiting() { waiting_ = false; }
  void set_running(bool running) { running_ = running; }
  /// Whether a wait is over in one step, without the liquid moving before the eyes.
  void set_at_once(bool at_once) { at_once_ = at_once; }

  [[nodiscard]] bool waiting() const { return waiting_; }
  [[nodiscard]] bool running() const { return running_; }
  [[nodiscard]] double progress(double now_s) const; ///< Of the wait, 0..1.
  [[nodiscard]] double until_s() const { return until_s_; }

  /// Bench time after `wall_s` more seconds on the wall.
  [[nodiscard]] double next(double now_s, double wall_s);

private:
  bool running_ = false;
  bool waiting_ = false;
  bool at_once_ = false;
  double from_s_ = 0;
  double until_s_ = 0;
};

} // namespace matula::window
