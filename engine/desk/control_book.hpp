#pragma once

#include "engine/desk/ground.hpp"

#include <memory>
#include <string>
#include <vector>

namespace matula::desk {

/// Weeks of control readings as they stand on the wall: no word of what ails the bottle.
struct ControlChart {
  std::string title;
  std::string story;
  std::vector<std::string> controls;         ///< Labels.
  std::vector<double> means;                 ///< By control, in grades: 0 negative, 1 trace, 2 for 1+.
  std::vector<double> deviations;            ///< By control, in grades.
  std::vector<std::vector<double>> readings; ///< By day, then control.
  std::vector<std::vector<double>> z;        ///< (reading - mean)/deviation.
};

/// What was answered, and what it was worth.
struct ControlVerdict {
  bool day_right = false;
  bool rule_right = false;
  std::string words;
};

/// The exercises of the control record. The bottles' ages stay inside.
class ControlBook {
public:
  [[nodiscard]] static tl::expected<ControlBook, scenario::Problems> load(const Ground& ground);
  ~ControlBook();
  ControlBook(ControlBook&&) noexcept;
  ControlBook& operator=(ControlBook&&) noexcept;

  [[nodiscard]] std::vector<std::string> titles() const;
  /// Rules a day may be stopped by, in words: "1-3s: one value beyond 3 s ...".
  [[nodiscard]] std::vector<std::string> rules() const;
  /// The first call for an exercise does its tests on the bench, which takes seconds.
  [[nodiscard]] const ControlChart& chart(std::size_t exercise);
  /// `day` 0: never; `rule` as an index into rules().
  [[nodiscard]] ControlVerdict judge(std::size_t exercise, int day, std::size_t rule);

private:
  struct Impl;
  explicit ControlBook(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::desk
