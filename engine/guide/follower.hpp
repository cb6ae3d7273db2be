#pragma once

#include "engine/guide/guide.hpp"
#include "engine/sitting/event.hpp"

#include <nlohmann/json_fwd.hpp>

namespace matula::guide {

/// Where a learner is.
struct Place {
  std::size_t part = 0; ///< As many as there are parts: everything is done.
  std::size_t step = 0;
};

/// Follows a learner through a guide by the lines of the log alone, so that a sitting taken up again comes
/// back to the same step. Steps may be done in another order; what was done is done. Must not outlive the
/// guide.
class Follower {
public:
  explicit Follower(const Guide& guide);

  /// Call for every event, in order.
  void see(const sitting::Event& event);

  /// The first step not yet done.
  [[nodiscard]] Place now() const;
  [[nodiscard]] bool done(const Place& at) const { return done_[at.part][at.step]; }
  [[nodiscard]] bool finished() const { return now().part == guide_.parts.size(); }
  [[nodiscard]] std::size_t steps_done() const;
  [[nodiscard]] std::size_t steps() const;
  /// What the last act was too early for, in the guide's words; empty when it was not.
  [[nodiscard]] const std::string& remark() const { return remark_; }
  /// The vessel a "$name" stands for; empty when none does yet.
  [[nodiscard]] std::string vessel(const std::string& name) const;

private:
  [[nodiscard]] bool fits(const Step& step, const nlohmann::json& line) const;
  void finish(const Place& at, const nlohmann::json& line, double time_s);

  const Guide& guide_;
  std::vector<std::vector<bool>> done_;
  std::map<std::string, std::string> vessels_; ///< By "$name".
  double last_done_s_ = 0;
  std::string remark_;
};

/// "Pour 9 mL into $heat" with the vessel's own name in the place of "$heat", or "a free tube" while none has
/// it.
[[nodiscard]] std::string say(const Follower& follower, const std::string& sentence);

} // namespace matula::guide
