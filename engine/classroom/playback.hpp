#pragma once

#include "engine/classroom/line.hpp"
#include "sim/bench/scene.hpp"

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::classroom {

struct Recording;

/// A stored sitting on the bench again. The bench goes from line to line exactly as it does for the marks;
/// what is shown between two lines is a copy that is let run, so that no looking around changes what comes
/// after.
class Playback {
public:
  explicit Playback(std::shared_ptr<const Recording> recording);
  ~Playback();
  Playback(Playback&&) noexcept;
  Playback& operator=(Playback&&) noexcept;

  [[nodiscard]] const std::vector<Line>& lines() const;
  /// Marks that stand at no line.
  [[nodiscard]] const std::vector<Charged>& elsewhere() const;

  /// Lines taken so far.
  [[nodiscard]] std::size_t done() const;
  [[nodiscard]] bool at_end() const;
  /// The last line taken in which the student did something; nothing before the first.
  [[nodiscard]] std::optional<std::size_t> at() const;
  /// Bench time on show, s.
  [[nodiscard]] double time_s() const;
  [[nodiscard]] double end_s() const; ///< Of the whole sitting.

  void play() { playing_ = !at_end(); }
  void pause() { playing_ = false; }
  [[nodiscard]] bool playing() const { return playing_; }
  /// Bench seconds for a second on the wall, 0.1 to 36000.
  void set_speed(double times);
  [[nodiscard]] double speed() const { return speed_; }

  /// Lets `wall_s` seconds go by, if it is playing. A long frame counts as a quarter of a second.
  void advance(double wall_s);
  void step();      ///< To the next line in which the student did something.
  void step_back(); ///< To the one before that on show, or before the first.
  /// To where so many lines have been taken; more than there are: all.
  void jump(std::size_t done);

  /// How the student looked last, and at what.
  [[nodiscard]] const appearance::View& view() const;
  [[nodiscard]] double eye_mm() const;
  [[nodiscard]] const bench::VesselName& in_hand() const;

  [[nodiscard]] bench::Scene scene(const appearance::View& view) const;
  [[nodiscard]] const std::map<std::string, std::string>& worksheet() const;
  /// What a line of the worksheet, and what stands in it, is called.
  [[nodiscard]] std::string name_of(const std::string& item) const;
  [[nodiscard]] std::string value_of(const std::string& item, const std::string& value) const;
  [[nodiscard]] bool gloves() const;
  [[nodiscard]] bool goggles() const;
  /// Of the bench after the last line taken, not of what is shown since.
  [[nodiscard]] std::uint64_t state_hash() const;

private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
  bool playing_ = false;
  double speed_ = 1;
};

} // namespace matula::classroom
