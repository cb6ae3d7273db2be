#pragma once

#include "engine/desk/ground.hpp"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::desk {

/// What may be done with a float after its morning in water.
enum class FloatDecision { Use, Correct, Discard };

struct FloatLogLine;

/// One line of the float's record.
struct FloatLine {
  int day = 1;
  double water_c = 20;
  double reading = 1; ///< Where the float stands in distilled water.
  bool written = false;
  std::optional<double> error; ///< As written.
  FloatDecision decision = FloatDecision::Use;
  bool error_right = false;
  bool decision_right = false;
  std::string words; ///< Why.
};

/// The record of one float: mornings up to the next one that is to be written.
struct FloatRecord {
  std::string title;
  std::string story;
  double calibration_c = 20;
  std::vector<FloatLine> lines;
  bool closed = false; ///< Every morning is written, or the float is thrown away.
  int earned = 0;
  int possible = 0;
  std::string remedy; ///< Empty until it is closed.
};

/// The daily check of the urinometers. What a float is truly wrong by stays inside.
class FloatBook {
public:
  /// `kept`: file that holds what was written on other days; empty to keep nothing.
  [[nodiscard]] static tl::expected<FloatBook, scenario::Problems>
  load(const Ground& ground, const std::filesystem::path& kept = {});
  ~FloatBook();
  FloatBook(FloatBook&&) noexcept;
  FloatBook& operator=(FloatBook&&) noexcept;

  [[nodiscard]] std::vector<std::string> titles() const;
  [[nodiscard]] FloatRecord record(std::size_t series) const;
  /// Writes the next morning down for good and marks it; nothing happens once the record is closed. False
  /// when the disk refused, and nothing was written.
  bool write(std::size_t series, const std::optional<double>& error, FloatDecision decision);
  /// Starts the record of a float afresh.
  bool clear(std::size_t series);

  /// The float of a case, floated in water on the bench: judged from the reading and temperature the learner
  /// wrote down.
  [[nodiscard]] FloatLine judge_on_bench(double reading, double water_c, double calibration_c,
                                         const std::optional<double>& error, FloatDecision decision) const;

private:
  struct Impl;
  [[nodiscard]] bool keep(const FloatLogLine& line) const;
  void repeat(const FloatLogLine& line);
  explicit FloatBook(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::desk
